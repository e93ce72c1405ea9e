using System.Text;
using StabilityStudy.Core.Inspection;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Inspection;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Pipeline.Versions;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Inspection;

/// <summary>What was found about an inspection folder.</summary>
/// <param name="Parts">Each question with its answer.</param>
/// <param name="IndexSha256">SHA-256 of the index as it lies there, to be compared with the one noted when the folder was made; null where there is none.</param>
public sealed record InspectionVerification(ImmutableArray<VerifiedPart> Parts, string? IndexSha256)
{
    /// <summary>The worst of the parts.</summary>
    public PartOutcome Outcome => Parts.Min(part => part.Outcome);
}

/// <summary>
/// Checks an inspection folder by making it again from the signed files in it, at the time that it states and by the certificates that the checker trusts, and
/// verifies the signed files as of now besides.
/// </summary>
public static class InspectionCheck
{
    private const int MostLines = 20;

    private const string OtherTrust =
        "You trust other certificates than those with which the folder was made; they stand at the end of the index.";

    private const string FilesQuestion = "Are the files those of the list?";
    private const string SignedQuestion = "Do the signed files verify now as they did then?";
    private const string RegisterQuestion = "Does the register follow from the signed files?";
    private const string DrawnQuestion =
        "Are index, bench documents and verification texts those that follow from them?";

    /// <summary>Checks a folder.</summary>
    /// <param name="files">Every file in it.</param>
    /// <param name="sources">Its folder of signed files.</param>
    /// <param name="options">Whom to trust, and the time now.</param>
    /// <param name="progress">Is told what is being done.</param>
    public static InspectionVerification Of(
        ImmutableArray<InspectionFile> files,
        RegisterFiles sources,
        VerificationOptions options,
        Action<string> progress
    )
    {
        ArgumentNullException.ThrowIfNull(options);
        var found = files.ToDictionary(file => file.Name, file => file.Bytes);
        var index = found.TryGetValue(InspectionFiles.Index, out var bytes)
            ? InputDigest.Sha256(bytes.Span)
            : null;
        var listed = Listed(found);
        if (
            !found.TryGetValue(InspectionToml.Name, out var stated)
            || !InspectionToml.Read(stated).TryGet(out var terms)
        )
        {
            return new(
                [
                    listed,
                    VerifiedPart.Fails(
                        DrawnQuestion,
                        $"{InspectionToml.Name}, which says how the folder was made, is missing or cannot be read, so that nothing can be made again."
                    ),
                ],
                index
            );
        }

        var recomputed = new RememberedRecomputation();
        var made = InspectionPack.Of(
            sources,
            terms,
            options with
            {
                Now = terms.MadeAt,
            },
            progress,
            recomputed
        );
        var again = made.Files.ToDictionary(file => file.Name, file => file.Bytes);
        var sameTrust =
            InspectionPack.Certificates(options.Anchors).SequenceEqual(terms.Trusted)
            && InspectionPack.Certificates(options.TimeAnchors).SequenceEqual(terms.TrustedForTime);
        return new(
            [
                listed,
                Signed(made, sources, terms, options, recomputed),
                Register(found, again, options, sameTrust),
                Drawn(found, again, terms, sameTrust),
            ],
            index
        );
    }

    /// <summary>Digests against the list, and which files are missing or were added.</summary>
    private static VerifiedPart Listed(Dictionary<string, ReadOnlyMemory<byte>> found)
    {
        if (
            !found.TryGetValue(InspectionFiles.List, out var bytes)
            || InspectionFiles.ReadList(bytes.Span) is not { } list
        )
        {
            return VerifiedPart.Fails(
                FilesQuestion,
                $"{InspectionFiles.List} is missing, or is no list of files."
            );
        }

        var names = list.Select(file => file.Name).ToHashSet(StringComparer.Ordinal);
        string[] wrong =
        [
            .. list.Where(file => !found.ContainsKey(file.Name))
                .Select(file => $"{file.Name} is missing."),
            .. list.Where(file =>
                    found.TryGetValue(file.Name, out var content)
                    && InputDigest.Sha256(content.Span) != file.Sha256
                )
                .Select(file => $"{file.Name} is not the listed file: its SHA-256 is another."),
            .. found
                .Keys.Where(name =>
                    name is not (InspectionFiles.List or InspectionFiles.Index)
                    && !names.Contains(name)
                )
                .Order(StringComparer.Ordinal)
                .Select(name => $"{name} is not in the list: it was added."),
            .. found.ContainsKey(InspectionFiles.Index)
                ? Array.Empty<string>()
                : [$"{InspectionFiles.Index} is missing."],
            .. names.Count < list.Length ? new[] { "The list names a file twice." } : [],
        ];
        return wrong.Length > 0
            ? VerifiedPart.Fails(FilesQuestion, Capped(wrong))
            : VerifiedPart.Holds(
                FilesQuestion,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"All {list.Length} listed files are there as listed, and no other."
                )
            );
    }

    /// <summary>Each signed file verified as of now, against the same as of the time that the folder states.</summary>
    private static VerifiedPart Signed(
        InspectionPack made,
        RegisterFiles sources,
        InspectionTerms terms,
        VerificationOptions options,
        RememberedRecomputation recomputed
    )
    {
        if (sources.Pdfs.IsEmpty)
        {
            return VerifiedPart.Fails(
                SignedQuestion,
                $"There is no signed file in {InspectionFiles.SignedFolder}."
            );
        }

        var now = sources
            .Pdfs.OrderBy(file => file.Name, StringComparer.Ordinal)
            .Select(file => recomputed.Verify(file, options))
            .ToArray();
        string[] worse =
        [
            .. made
                .Verified.Zip(now)
                .Where(pair => pair.Second.Outcome < pair.First.Found.Outcome)
                .Select(pair =>
                    $"{pair.First.Name}: {VerificationText.Word(pair.Second.Outcome).ToLowerInvariant()} now, and {VerificationText.Word(pair.First.Found.Outcome).ToLowerInvariant()} at the time stated. {WorstOf(pair.Second)}"
                ),
            .. terms.MadeAt > options.Now
                ? new[] { "By its own statement the folder was made later than now." }
                : [],
        ];
        string[] left =
        [
            .. made
                .Verified.Zip(now)
                .Where(pair =>
                    pair.Second.Outcome != PartOutcome.Holds
                    && pair.Second.Outcome >= pair.First.Found.Outcome
                )
                .Select(pair =>
                    $"{pair.First.Name}: {VerificationText.Word(pair.Second.Outcome).ToLowerInvariant()}, as then. {WorstOf(pair.Second)}"
                ),
        ];
        return worse.Length > 0
                ? new(
                    SignedQuestion,
                    now.Zip(made.Verified)
                        .Any(pair =>
                            pair.First.Outcome == PartOutcome.Fails
                            && pair.Second.Found.Outcome != PartOutcome.Fails
                        )
                        ? PartOutcome.Fails
                        : PartOutcome.NotChecked,
                    Capped([.. worse, .. left])
                )
            : options.Anchors is null
                ? new(
                    SignedQuestion,
                    PartOutcome.NotChecked,
                    Capped(["Nobody is trusted: add --trust.", .. left])
                )
            : VerifiedPart.Holds(
                SignedQuestion,
                Capped([
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{now.Length} signed files were verified anew."
                    ),
                    .. left,
                ])
            );
    }

    private static string WorstOf(ReportVerification found) =>
        found.Parts.MinBy(part => part.Outcome)!.Sentences[0];

    /// <summary>The register row by row.</summary>
    private static VerifiedPart Register(
        Dictionary<string, ReadOnlyMemory<byte>> found,
        Dictionary<string, ReadOnlyMemory<byte>> again,
        VerificationOptions options,
        bool sameTrust
    )
    {
        if (!found.TryGetValue(InspectionFiles.Register, out var stated))
        {
            return VerifiedPart.Fails(RegisterQuestion, $"{InspectionFiles.Register} is missing.");
        }

        string[] before = Lines(stated);
        string[] after = Lines(again[InspectionFiles.Register]);
        string[] differences =
        [
            .. before.Except(after).Select(line => "Stated and not found again: " + line),
            .. after.Except(before).Select(line => "Found and not stated: " + line),
            .. before.Length != before.Distinct().Count() ? new[] { "A row stands twice." } : [],
        ];
        return differences.Length == 0
            ? stated.Span.SequenceEqual(again[InspectionFiles.Register].Span)
                ? VerifiedPart.Holds(
                    RegisterQuestion,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Computed anew, all {after.Length - 1} rows are the same."
                    )
                )
                : VerifiedPart.Fails(RegisterQuestion, "Its rows stand in another order.")
            : options.Anchors is null
                ? new(
                    RegisterQuestion,
                    PartOutcome.NotChecked,
                    ["Nobody is trusted, so that no report counts: add --trust."]
                )
                : VerifiedPart.Fails(
                    RegisterQuestion,
                    Capped([.. Enumerable.Repeat(OtherTrust, sameTrust ? 0 : 1), .. differences])
                );
    }

    /// <summary>What the program makes from the signed files, byte for byte.</summary>
    private static VerifiedPart Drawn(
        Dictionary<string, ReadOnlyMemory<byte>> found,
        Dictionary<string, ReadOnlyMemory<byte>> again,
        InspectionTerms terms,
        bool sameTrust
    )
    {
        if (terms.ToolVersion is var version && version != ToolVersion.Current)
        {
            return new(
                DrawnQuestion,
                ReleasedVersion.IsLater(version) || ReleasedVersion.TryFind(version, out _)
                    ? PartOutcome.NotChecked
                    : PartOutcome.Fails,
                [
                    $"Not made again: the folder was made by version {version}, and this is version {ToolVersion.Current}. What counts is in the signed files.",
                ]
            );
        }

        string[] other =
        [
            .. again
                .Keys.Where(name =>
                    !found.TryGetValue(name, out var content)
                    || !content.Span.SequenceEqual(again[name].Span)
                )
                .Order(StringComparer.Ordinal)
                .Select(name => $"{name} is not what follows from the signed files."),
            .. found
                .Keys.Where(name => !again.ContainsKey(name))
                .Order(StringComparer.Ordinal)
                .Select(name => $"{name} follows from none of them."),
        ];
        return other.Length == 0
                ? VerifiedPart.Holds(
                    DrawnQuestion,
                    "All were made again and are the same, byte for byte."
                )
            : sameTrust ? VerifiedPart.Fails(DrawnQuestion, Capped(other))
            : new(
                DrawnQuestion,
                PartOutcome.NotChecked,
                Capped([
                    "The folder was made with other trusted certificates than yours; they stand at the end of the index. What they change is other here:",
                    .. other,
                ])
            );
    }

    private static string[] Lines(ReadOnlyMemory<byte> csv) =>
        Encoding.UTF8.GetString(csv.Span).TrimEnd('\n').Split('\n');

    private static ImmutableArray<string> Capped(string[] lines) =>
        lines.Length <= MostLines
            ? [.. lines]
            :
            [
                .. lines.Take(MostLines),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"And {lines.Length - MostLines} more."
                ),
            ];
}
