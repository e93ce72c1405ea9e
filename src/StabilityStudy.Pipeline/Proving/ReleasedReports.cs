using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Proving;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Proving;

/// <summary>A signed report of each earlier release: it must verify as it always does, and no longer once a byte is changed.</summary>
internal static class ReleasedReports
{
    private const string Folder = "signed/";
    private const string Report = "small-paired-sheet.pdf";

    /// <summary>The releases of which the program carries a report, oldest first.</summary>
    public static ImmutableArray<string> Versions { get; } =
    [
        .. ProofResource
            .In(Folder)
            .Where(name => name.EndsWith('/' + Report, StringComparison.Ordinal))
            .Select(name => name[Folder.Length..^(Report.Length + 1)])
            .OrderBy(Version.Parse),
    ];

    /// <summary>The report of a release.</summary>
    public static ReadOnlyMemory<byte> Of(string version) =>
        ProofResource.Bytes($"{Folder}{version}/{Report}");

    /// <summary>What comes of each part of the verification: pages of another version are not drawn again, and the lock of the example is dated by a computer's clock alone.</summary>
    public static ImmutableArray<PartOutcome> Known(string version) =>
        [
            PartOutcome.Holds,
            PartOutcome.Holds,
            version == ToolVersion.Current ? PartOutcome.Holds : PartOutcome.NotChecked,
            PartOutcome.NotChecked,
        ];

    /// <summary>Verifies all of them.</summary>
    public static ImmutableArray<ProofCase> Verify() =>
        [
            .. Versions
                .AsParallel()
                .AsOrdered()
                .Select(version => new ProofCase(
                    "Report of release " + version,
                    "an invented study, analyzed, drawn and signed by that release; kept since then, with the certificates of those who signed.",
                    "none. The lock of the study is dated by a computer's clock alone, and pages of another version are not drawn again: these parts are never more than not fully checked.",
                    Verify(version, Of(version))
                )),
        ];

    /// <summary>Verifies one as it is, and each time with another byte changed.</summary>
    internal static ImmutableArray<ProofFigure> Verify(string version, ReadOnlyMemory<byte> report)
    {
        var trusting = new VerificationOptions(Anchors(version), []);
        // What is inside is computed again where a byte of it was changed, and not where one of a signature was.
        var computed = new List<(ReadOnlyMemory<byte> First, Recomputation Again)>();
        var parts = Verified(report).Parts;
        return
        [
            .. Known(version)
                .Select(
                    (expected, i) =>
                        ProofFigure.Equal(
                            i < parts.Length ? parts[i].Question : "a further part",
                            Word(expected),
                            i < parts.Length ? Word(parts[i].Outcome) : "not there"
                        )
                ),
            .. ChangedByte
                .Of(report)
                .Select(changed =>
                    ProofFigure.Equal(
                        $"one byte changed {changed.Place}",
                        Word(PartOutcome.Fails),
                        Word(Verified(changed.Report).Outcome)
                    )
                ),
        ];

        ReportVerification Verified(ReadOnlyMemory<byte> file) =>
            ReportVerifier.Verify(file, trusting, record: null, Recomputed);

        Recomputation Recomputed(AttachedStudy attached)
        {
            var known = computed.FindIndex(item =>
                item.First.Span.SequenceEqual(attached.FirstRevision.Span)
            );
            if (known < 0)
            {
                known = computed.Count;
                computed.Add((attached.FirstRevision, Recomputation.Of(attached)));
            }

            return computed[known].Again;
        }
    }

    private static TrustAnchors Anchors(string version) =>
        TrustAnchors.Of(
            ProofResource
                .In($"{Folder}{version}/trust/")
                .SelectMany(name =>
                    TrustFile.Read(ProofResource.Bytes(name)).TryGet(out var file, out _)
                        ? new[] { file }
                        : []
                )
        );

    private static string Word(PartOutcome outcome) =>
        outcome switch
        {
            PartOutcome.Fails => "fails",
            PartOutcome.NotChecked => "not fully checked",
            PartOutcome.Holds => "holds",
        };
}
