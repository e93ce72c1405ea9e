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
    private const int DigestShown = 16;

    /// <summary>The whole report.</summary>
    /// <param name="analysis">What the data say.</param>
    /// <param name="paper">Paper size.</param>
    /// <param name="pages">Where the sections start, when that is known; sentences then name the page.</param>
    /// <param name="resultDigest">SHA-256 of analysis.json, lower-case hexadecimal: it ties a page, signed on paper, to what was computed.</param>
    public static ReportModel Build(
        StudyAnalysis analysis,
        PaperSize paper,
        SectionPages? pages = null,
        string? resultDigest = null
    )
    {
        var known = pages ?? SectionPages.Unknown;
        ImmutableArray<Section> decision =
        [
            FirstPage.Of(analysis, known),
            .. FirstPage.InFull(analysis) is { } full ? [full] : ImmutableArray<Section>.Empty,
        ];
        var evidence = Evidence(analysis, known, resultDigest);
        var contents = ContentsSection.Of(analysis, evidence, known) with
        {
            StartsOnNewPage = decision.Length == 1,
        };
        return new(
            analysis.Facts.Title,
            "en-US",
            paper,
            Header(analysis, resultDigest),
            [
                .. decision,
                .. known.HavePages
                    ? [contents, evidence[0] with { StartsOnNewPage = false }, .. evidence[1..]]
                    : evidence,
            ]
        );
    }

    private static ImmutableArray<Section> Evidence(
        StudyAnalysis analysis,
        SectionPages pages,
        string? resultDigest
    ) =>
        [
            ConductSection.Of(analysis),
            CriteriaSection.Of(analysis),
            DispositionSection.Of(analysis),
            .. analysis.Sequences.SelectMany(sequence => CellSections.Of(analysis, sequence)),
            DriftSection.Of(analysis),
            FurtherSection.Of(analysis),
            ConsequenceSection.Of(analysis),
            RobustnessSection.Of(analysis),
            .. ScopeSection.Of(analysis) is { } scope ? [scope] : ImmutableArray<Section>.Empty,
            CoverageSection.Of(analysis),
            ControlSection.Of(analysis),
            DecisionSection.Of(analysis),
            QuerySection.Of(analysis),
            RequirementSection.Of(analysis, pages),
            HandCheckSection.Of(analysis),
            PairSection.Of(analysis),
            MethodsSection.Of(analysis),
            WordsSection.Of(),
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
            $"{invented}{analysis.Protocol.Code} · version {analysis.Protocol.Version}",
            "valid only with its signatures",
            $"inputs {digest}"
                + (resultDigest is null ? "" : $" · results {resultDigest[..DigestShown]}")
        );
    }
}
