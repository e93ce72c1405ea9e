using StabilityStudy.Reporting.Report.Certainty;
using StabilityStudy.Reporting.Report.Conduct;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Decision;
using StabilityStudy.Reporting.Report.Drift;
using StabilityStudy.Reporting.Report.Record;
using StabilityStudy.Reporting.Report.TimePoints;

namespace StabilityStudy.Reporting.Report;

/// <summary>From the analysis to finished sentences, tables and figures. Each section is a file named after it.</summary>
public static class ReportBuilder
{
    internal const int DigestShown = 16;

    /// <summary>The whole report.</summary>
    /// <param name="analysis">What the data say.</param>
    /// <param name="paper">Paper size.</param>
    /// <param name="pages">Where the sections start, when that is known; sentences then name the page.</param>
    /// <param name="resultDigest">SHA-256 of analysis.json, lower-case hexadecimal: it ties a page, signed on paper, to what was computed.</param>
    /// <param name="full">Whether also what neither decides nor is asked for is shown.</param>
    public static ReportModel Build(
        StudyAnalysis analysis,
        PaperSize paper,
        SectionPages? pages = null,
        string? resultDigest = null,
        bool full = false
    )
    {
        var known = pages ?? SectionPages.Unknown;
        ImmutableArray<Section> decision =
        [
            Read(FirstPage.Of(analysis, known)),
            .. FirstPage.InFull(analysis) is { } figures
                ? [Read(figures)]
                : ImmutableArray<Section>.Empty,
        ];
        ImmutableArray<Section> core = [.. Core(analysis, known, full).Select(Read)];
        var appendix = Appendix(analysis, known, resultDigest, full);
        appendix = appendix.Insert(
            appendix.Length - 2,
            WordsSection.Of(ModelText.Of([.. decision, .. core, .. appendix]))
        );
        ImmutableArray<Section> evidence =
        [
            .. core,
            .. known.HavePages && analysis.Sequences.Length > 1
                ? [ContentsSection.Of(core, appendix, known)]
                : ImmutableArray<Section>.Empty,
            .. appendix.Select(Close),
        ];
        return new(
            analysis.Facts.Title,
            "en-US",
            paper,
            Header(analysis, resultDigest),
            [decision[0], .. Numbered.Of([.. decision[1..], .. evidence])]
        );
    }

    /// <summary>What is read: the study, each group, its drift, what could overturn the decision, and what is open.</summary>
    private static ImmutableArray<Section> Core(
        StudyAnalysis analysis,
        SectionPages pages,
        bool full
    ) =>
        [
            .. new[] { ProtocolSection.Of(analysis), DispositionSection.Of(analysis) }.Select(
                Close
            ),
            .. GroupSections.Of(analysis),
            .. new[]
            {
                DriftSection.Of(analysis, full),
                ConsequenceSection.Of(analysis),
                RobustnessSection.Of(analysis, full),
                ScopeSection.Of(analysis),
                CoverageSection.Of(analysis),
                QuerySection.Of(analysis, full),
                RequirementSection.Of(analysis, pages, full),
            }
                .OfType<Section>()
                .Select(Close),
        ];

    private static Section Read(Section section) => section with { IsInBrief = true };

    private static Section Close(Section section) => section with { IsLookedUp = true };

    /// <summary>What is looked up: how the study was run, criteria and rules, estimates, specimens, controls, methods, files.</summary>
    private static ImmutableArray<Section> Appendix(
        StudyAnalysis analysis,
        SectionPages pages,
        string? resultDigest,
        bool full
    ) =>
        [
            DecisionSection.Of(analysis),
            ConductSection.Of(analysis),
            RulesSection.Of(analysis, full),
            EstimateSection.Of(analysis, full),
            .. full ? [FurtherSection.Of(analysis)] : ImmutableArray<Section>.Empty,
            PairSection.Of(analysis, full),
            ControlSection.Of(analysis),
            .. OwnFileSection.Of(analysis) is { } own ? [own] : ImmutableArray<Section>.Empty,
            HandCheckSection.Of(analysis),
            RequirementSection.Clauses(analysis, pages, full),
            MethodsSection.Of(analysis, full),
            RecordSection.Of(analysis, resultDigest),
            CautionSection.Of(),
        ];

    /// <summary>The first page alone, for the terminal.</summary>
    public static ReportModel BuildSummary(StudyAnalysis analysis) =>
        new(
            analysis.Facts.Title,
            "en-US",
            PaperSize.A4,
            Header(analysis),
            SummarySections(analysis)
        );

    /// <summary>How many specimens are there, and no figure of any change.</summary>
    public static ReportModel BuildCounts(StudyAnalysis analysis) =>
        new(
            analysis.Facts.Title,
            "en-US",
            PaperSize.A4,
            Header(analysis),
            [CountsSection.Of(analysis)]
        );

    /// <summary>What an amendment changed: whether the criteria are the same, and then each difference.</summary>
    public static ImmutableArray<string> AmendmentLines(Core.Locking.ProtocolLock amendment) =>
        [AmendmentWords.Headline(amendment), .. AmendmentWords.Lines(amendment)];

    /// <summary>The conclusions alone, one sentence a patient group.</summary>
    public static ReportModel BuildHeadline(StudyAnalysis analysis) =>
        new(
            analysis.Facts.Title,
            "en-US",
            PaperSize.A4,
            Header(analysis),
            [
                new Section(
                    "Decision",
                    StartsOnNewPage: false,
                    [FirstPage.Conclusions(analysis, withFigures: true)]
                ),
            ]
        );

    /// <summary>Each conclusion in a line: "Supported to 8 h: aPTT · No anticoagulant".</summary>
    public static ImmutableArray<string> ConclusionLines(StudyAnalysis analysis) =>
        [
            .. FirstPage
                .Conclusions(analysis, withFigures: false)
                .Lines.Select(line => $"{line.Word}: {line.Subject}"),
        ];

    /// <summary>Whether the criteria came before the data, as page 1 says it.</summary>
    public static string LockSentence(Core.Locking.LockEvidence evidence) => LockWords.Of(evidence);

    private static ImmutableArray<Section> SummarySections(StudyAnalysis analysis) =>
        [
            FirstPage.Summary(analysis),
            .. analysis.Sequences.Select(sequence => SummaryTables.Of(analysis, sequence)),
            .. analysis.Power is { } power
                ? [PowerSection.Of(analysis, power)]
                : ImmutableArray<Section>.Empty,
        ];

    private static RunningHeader Header(StudyAnalysis analysis, string? resultDigest = null)
    {
        var digest = analysis.Identity.InputDigest[..DigestShown];
        var invented = analysis.Facts.Invented ? "INVENTED EXAMPLE · " : "";
        return new RunningHeader(
            $"{invented}{analysis.Protocol.Code} · version {analysis.Protocol.Version}{RevisionWords.InHeader(analysis)}",
            "valid only with all signatures of page 1",
            $"inputs {digest}"
                + (resultDigest is null ? "" : $" · results {resultDigest[..DigestShown]}")
        );
    }
}
