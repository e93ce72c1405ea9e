using System.Collections.Concurrent;
using System.Text;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline;
using StabilityStudy.Pipeline.Protocols;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Evidence;
using StabilityStudy.Pipeline.Tests.Evidence.Forging;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Model;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Stamps;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>
/// No file that verify accepts shows other page text in any reader than its first revision does, but for the stamps in the places of the signatures, and these say what verify compared.
/// The usual run tries a small report and six forged files that readers could understand differently; <c>tests/long-proofs.sh readers</c> tries all examples, all released reports and all forged files.
/// </summary>
[Trait("lane", "slow")]
public sealed class DifferentialReadingTests
{
    private const double HeightOfA4 = 841.89;

    /// <summary>How many files a reader that takes long to start gets in the usual run.</summary>
    private const int FilesOfSlow = 3;

    /// <summary>What every reader shows otherwise: that the comparison sees it, shows that it sees anything.</summary>
    private const string Painted = "a page painted over by an unsigned revision";

    /// <summary>The forged files of the usual run: beside that one, those that readers could understand in more than one way.</summary>
    private static readonly string[] s_first =
    [
        Painted,
        "an object listed twice",
        "a comment inside the cross-reference section",
        "bytes of no object",
        "an offset with zeros before it",
        "an end that leads back to the author's revision",
    ];

    private static readonly int s_files = LongProof.Setting("READER_FILES", s_first.Length);

    private static readonly bool s_isUsual = s_files <= s_first.Length;

    /// <summary>The usual run reads the first pages, which hold conclusions, signatures and the first figures.</summary>
    private static readonly string s_lastPage = s_isUsual ? "3" : "9999";

    private static readonly ConcurrentDictionary<string, Recomputation> s_computed = new();

    private static readonly ConcurrentDictionary<string, ImmutableArray<PageRectangle>> s_places =
        new();

    [Fact]
    public async Task No_file_that_verify_accepts_shows_other_page_text_in_any_reader()
    {
        Tried[] honest = [.. Honest()];
        Assert.All(honest, file => Assert.True(file.IsAccepted, file.Name));
        Tried[] files = [.. honest, .. Forged()];
        Assert.All(
            files.Where(file => s_first.Contains(file.Name)),
            file => Assert.False(file.IsAccepted, file.Name)
        );
        var wrong = new List<string>();
        var shown = new List<string>();
        var folder = Directory.CreateTempSubdirectory("readers-");
        try
        {
            foreach (var reader in OutsideReader.All)
            {
                var others = await Others(
                    reader,
                    s_isUsual && reader.IsSlow ? files[..FilesOfSlow] : files,
                    folder.FullName
                );
                Assert.Contains(others, item => item.File.Name == Painted);
                shown.Add($"{reader.Name} {others.Count(item => !item.File.IsAccepted)}");
                wrong.AddRange(
                    others
                        .Where(item => item.File.IsAccepted)
                        .Select(item => $"{item.File.Name}, {reader.Name}: {item.What}")
                );
                foreach (var (file, what) in others)
                {
                    TestContext.Current.TestOutputHelper?.WriteLine(
                        $"{reader.Name}, {file.Name}: {what}"
                    );
                }
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }

        var summary = FormattableString.Invariant(
            $"{files.Length} files, {files.Count(file => file.IsAccepted)} accepted; other text in refused files: {string.Join(", ", shown)}"
        );
        TestContext.Current.TestOutputHelper?.WriteLine(summary);
        if (Environment.GetEnvironmentVariable("READER_SUMMARY") is { } path)
        {
            await File.WriteAllTextAsync(
                path,
                summary + "\n",
                TestContext.Current.CancellationToken
            );
        }

        Assert.Empty(wrong);
    }

    /// <summary>Signed reports as the program makes them: the smallest, and in the long proof every example and every report of a release.</summary>
    private static IEnumerable<Tried> Honest()
    {
        yield return Of("the smallest example", EvidenceExample.SignedTwice);
        if (s_isUsual)
        {
            yield break;
        }

        foreach (
            var folder in Directory
                .GetDirectories(Path.Combine(RepositoryFile.Root, "example-studies"))
                .Where(folder => File.Exists(Path.Combine(folder, StudyBytes.ProtocolName)))
                .Order(StringComparer.Ordinal)
        )
        {
            yield return Of(Path.GetFileName(folder), Signed(Study(folder)));
        }

        foreach (
            var file in Directory
                .GetFiles(
                    Path.Combine(RepositoryFile.Root, "tests/ReferenceData/releases"),
                    "*.pdf",
                    SearchOption.AllDirectories
                )
                .Order(StringComparer.Ordinal)
        )
        {
            yield return Of(
                Path.GetFileName(Path.GetDirectoryName(file)) + "/" + Path.GetFileName(file),
                File.ReadAllBytes(file)
            );
        }
    }

    private static IEnumerable<Tried> Forged() =>
        (
            (IEnumerable<IEnumerable<ForgedFile>>)
                [ForgedTails.All, ForgedRevisions.All, ForgedSigners.All, ForgedStudies.All]
        )
            .SelectMany(all => all)
            .OrderByDescending(file => file.Name == Painted)
            .ThenByDescending(file => s_first.Contains(file.Name))
            .Take(s_files)
            .Select(file => Of(file.Name, file.Make()));

    private static Tried Of(string name, ReadOnlyMemory<byte> file) =>
        new(
            name,
            file,
            ReportVerifier
                .Verify(
                    file,
                    VerificationOptions.WithoutTrust,
                    record: null,
                    study =>
                        s_computed.GetOrAdd(
                            InputDigest.Sha256(study.FirstRevision.Span),
                            _ => Recomputation.Of(study)
                        )
                )
                .Outcome != PartOutcome.Fails
        );

    private static StudyBytes Study(string folder) =>
        StudyBytes.Of(
            Directory
                .GetFiles(folder)
                .Where(file => Path.GetExtension(file) is ".toml" or ".csv" or ".lock")
                .Select(file =>
                    KeyValuePair.Create(
                        Path.GetFileName(file),
                        (ReadOnlyMemory<byte>)File.ReadAllBytes(file)
                    )
                )
        );

    private static ReadOnlyMemory<byte> Signed(StudyBytes files)
    {
        var study = ExampleStudy.Analyze(files);
        var protocol = study.Analysis.Protocol;
        return protocol.Signatories.Aggregate(
            StudyPipeline.Render(study, PaperSize.A4).Pdf,
            (report, signatory) =>
                EvidenceExample.Signed(
                    report,
                    signatory.Role,
                    Signer.Make($"The {signatory.Role}"),
                    protocol.Decides(signatory) ? DecisionRequest.Approval : null
                )
        );
    }

    /// <summary>The files of which a reader shows other text than of their first revisions, and an example of that.</summary>
    private static async Task<List<(Tried File, string What)>> Others(
        OutsideReader reader,
        Tried[] files,
        string folder
    )
    {
        var outputs = new Dictionary<string, string>(StringComparer.Ordinal);
        var inputs = new List<(string, string)>();
        foreach (var bytes in files.SelectMany(file => new[] { file.Bytes, file.First }))
        {
            var digest = InputDigest.Sha256(bytes.Span);
            var pdf = Path.Combine(folder, digest + ".pdf");
            var output = Path.Combine(folder, $"{digest}.{reader.Name}");
            if (outputs.TryAdd(digest, output))
            {
                await File.WriteAllBytesAsync(pdf, bytes, TestContext.Current.CancellationToken);
                inputs.Add((pdf, output));
            }
        }

        await reader.Read(inputs, s_lastPage);
        var shown = new Dictionary<string, List<ShownText>>(StringComparer.Ordinal);
        var others = new List<(Tried, string)>();
        foreach (var file in files)
        {
            if (Other(reader, file, Shown(file.First), Shown(file.Bytes)) is { } what)
            {
                others.Add((file, what));
            }
        }

        return others;

        // Most files have the same first revision.
        List<ShownText> Shown(ReadOnlyMemory<byte> bytes)
        {
            var digest = InputDigest.Sha256(bytes.Span);
            if (!shown.TryGetValue(digest, out var texts))
            {
                texts = File.Exists(outputs[digest])
                    ? [.. reader.Shown(File.ReadAllText(outputs[digest]))]
                    : [];
                shown.Add(digest, texts);
            }

            return texts;
        }
    }

    /// <summary>What is shown otherwise; null for nothing.</summary>
    private static string? Other(
        OutsideReader reader,
        Tried file,
        List<ShownText> before,
        List<ShownText> after
    )
    {
        if (before.Count == 0)
        {
            return "nothing shown of the first revision";
        }

        // A stamp covers the words "not signed" in its place; a reader may leave away what is covered.
        var places = reader.ShowsStamps ? file.Places : [];
        if (Outside(Without(before, after)) is [var lost, ..])
        {
            return $"not shown: {lost}";
        }

        var added = Without(after, before);
        if (Outside(added) is [var more, ..])
        {
            return $"shown besides: {more}";
        }

        if (!reader.ShowsStamps || !file.IsAccepted)
        {
            return null;
        }

        foreach (var (place, words) in file.Stamps)
        {
            var inside = added.Where(text => IsIn(text, place)).ToList();
            var said = string.Concat(
                inside.OrderBy(text => text.Y).ThenBy(text => text.X).Select(text => text.Text)
            );
            if (said != words)
            {
                return $"the stamp says {said} instead of {words}";
            }

            added = [.. added.Except(inside)];
        }

        return added is [var outside, ..] ? $"in the place of nobody: {outside}" : null;

        List<ShownText> Outside(List<ShownText> texts) =>
            [.. texts.Where(text => !places.Any(place => IsIn(text, place)))];
    }

    /// <summary>What stands in one list and not in the other, as often as it does.</summary>
    private static List<ShownText> Without(List<ShownText> all, List<ShownText> others)
    {
        var left = others.CountBy(text => text).ToDictionary();
        return
        [
            .. all.Where(text =>
            {
                var count = left.GetValueOrDefault(text);
                left[text] = count - 1;
                return count <= 0;
            }),
        ];
    }

    /// <summary>The places of signatures are on the first page.</summary>
    private static bool IsIn(ShownText text, PageRectangle place) =>
        text.Page == 1
        && text.X >= place.Left
        && text.X <= place.Right
        && HeightOfA4 - text.Y >= place.Bottom
        && HeightOfA4 - text.Y <= place.Top;

    /// <summary>A file to be read, and whether verify accepts it: exit code 0 or 5.</summary>
    private sealed record Tried(string Name, ReadOnlyMemory<byte> Bytes, bool IsAccepted)
    {
        /// <summary>The bytes up to the first end of a file, found without any parser.</summary>
        public ReadOnlyMemory<byte> First { get; } = UpToEnd(Bytes);

        /// <summary>The places for signatures in the first revision.</summary>
        public ImmutableArray<PageRectangle> Places =>
            s_places.GetOrAdd(
                InputDigest.Sha256(First.Span),
                _ =>
                    [
                        .. Enumerable
                            .Range(0, 9)
                            .Select(i => PdfSigner.PlaceOf(First, SignatoryFields.NameOf(i)))
                            .TakeWhile(place => place is not null)
                            .Select(place => place!),
                    ]
            );

        /// <summary>The places of the signatures and what their stamps say, without spaces, drawn as verify draws them to compare.</summary>
        public ImmutableArray<(PageRectangle Place, string Words)> Stamps => _stamps.Value;

        private readonly Lazy<ImmutableArray<(PageRectangle, string)>> _stamps = new(() =>
            StampsOf(Bytes)
        );

        private static ImmutableArray<(PageRectangle, string)> StampsOf(ReadOnlyMemory<byte> bytes)
        {
            var protocol = ProtocolOf(bytes);
            return
            [
                .. SignatureVerifier
                    .Verify(bytes, VerificationOptions.WithoutTrust)
                    .Signatures.SelectMany(signature => PartsOf(bytes, signature, protocol)),
            ];
        }

        /// <summary>The protocol, with those who sign the report or the protocol document.</summary>
        private static StudyProtocol ProtocolOf(ReadOnlyMemory<byte> bytes)
        {
            if (ProtocolDocumentFile.TryRead(bytes, out var document, out _))
            {
                return document.Protocol;
            }

            Assert.True(AttachedStudy.TryRead(bytes, out var study, out _));
            Assert.True(StudyIntake.Read(study.Inputs).TryGet(out var read));
            return read.Inputs.Protocol;
        }

        private static IEnumerable<(PageRectangle Place, string Words)> PartsOf(
            ReadOnlyMemory<byte> bytes,
            SignatureVerification signature,
            StudyProtocol protocol
        )
        {
            var stamp = StampLines.Stamp(
                protocol,
                SignatoryFields.SignatoryOf(protocol.Signatories, signature.FieldName)!,
                signature.SignerName!,
                signature.ClaimedTime!.Value,
                Assert
                    .IsType<StatementReading.Read>(SignedStatement.Read(signature.Statement))
                    .Statement,
                signature.Signer!,
                signature.Place!,
                PdfSigner.AreasOf(bytes, signature.FieldName)
            );
            return stamp
                .Parts.Select(part => (part.Area, Words(part.Lines)))
                .Prepend((stamp.Box ?? signature.Place!, Words(stamp.Lines)));
        }

        private static string Words(ImmutableArray<StampLine> lines) =>
            string.Concat(lines.SelectMany(line => line.Text).Where(c => !char.IsWhiteSpace(c)));

        private static ReadOnlyMemory<byte> UpToEnd(ReadOnlyMemory<byte> bytes)
        {
            var end = bytes.Span.IndexOf("%%EOF"u8);
            return end < 0 ? bytes : bytes[..(end + "%%EOF\n".Length)];
        }
    }
}
