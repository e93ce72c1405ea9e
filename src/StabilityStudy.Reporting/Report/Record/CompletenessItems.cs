using StabilityStudy.Reporting.Report.Certainty;
using StabilityStudy.Reporting.Report.Conduct;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Decision;
using StabilityStudy.Reporting.Report.Drift;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>What a report of a stability study should tell: twenty items after a published checklist, from memory.</summary>
internal static class CompletenessItems
{
    /// <summary>The items of a list of numbers of which something is missing.</summary>
    public static string? Lacking(StudyAnalysis analysis, int first, int last)
    {
        int[] open =
        [
            .. Enumerable
                .Range(first, last - first + 1)
                .Zip(Of(analysis).Skip(first - 1))
                .Where(item => item.Second.Missing is not null)
                .Select(item => item.First),
        ];
        return open switch
        {
            [] => null,
            [var one] => $"what item {NumberText.Count(one)} of the checklist lacks",
            [var lowest, _, .., var highest] when highest - lowest == open.Length - 1 =>
                $"what items {NumberText.Count(lowest)} to {NumberText.Count(highest)} of the checklist lack",
            _ =>
                $"what items {ScopeWords.List(open.Select(NumberText.Count))} of the checklist lack",
        };
    }

    public static ImmutableArray<Requirement> Of(StudyAnalysis analysis)
    {
        var analytes = analysis.Protocol.Analytes;
        return
        [
            new("1 Title", "Names analyte, specimen, storage and time", FirstPage.Title),
            new(
                "2 Background",
                "What is known: today's rule, the manufacturer's limit; published drift stands under Drift with time",
                ConductSection.Title,
                Lacking(
                    analytes,
                    analyte => analyte.ManufacturerLimit is null,
                    "the manufacturer's limit of "
                )
            ),
            new("3 Question", "What was asked, before data", FirstPage.Title),
            new(
                "4 Analytes",
                "Quantity, unit, method, use in care",
                ConductSection.Title,
                Requirement.Together(LackingMethod(analytes), LackingMeanings(analysis.Protocol))
            ),
            new(
                "5 Subjects",
                "Who gave specimens, in which groups; consent or ethics as local rules ask",
                ConductSection.Title,
                HandlingGaps.OfSubjects(analysis)
            ),
            new(
                "6 Number",
                "How many specimens, planned and received, and why so many",
                DispositionSection.Title,
                HandlingGaps.OfNumbers(analysis)
            ),
            new(
                "7 Collection",
                "Tube, additive, fill, order of draw, eligibility",
                ConductSection.Title,
                HandlingGaps.OfCollection(analysis)
            ),
            new(
                "8 Processing",
                "Spinning: when, how fast, how long",
                ConductSection.Title,
                HandlingGaps.OfProcessing(analysis)
            ),
            new(
                "9 Storage",
                "State, container, cap, temperature and how it was watched",
                ConductSection.Title,
                HandlingGaps.OfStorage(analysis)
            ),
            new(
                "10 Time points",
                "Planned and actual times, and what counts as time zero",
                PairSection.Title
            ),
            new(
                "11 Method",
                "Instruments, reagents, lots",
                ConductSection.Title,
                analysis.Facts.Instruments.IsEmpty || analysis.Facts.Lots.IsEmpty
                    ? "instruments or lots are not named"
                    : null
            ),
            new(
                "12 Imprecision",
                "Imprecision of the method and control of the runs",
                ControlSection.Title,
                analysis.Protocol.Controls == ControlRule.KeptElsewhere
                    ? "control results are kept elsewhere"
                    : LackingCv(analytes)
            ),
            new(
                "13 Runs",
                "Replicates; which results share a run or a day",
                ConductSection.Title,
                HandlingGaps.OfRuns(analysis)
            ),
            new(
                "14 Limits",
                "Allowable change with its source, fixed before data",
                ProtocolSection.Title,
                Requirement.Together(
                    Requirement.NotLockedBefore(analysis),
                    Requirement.NotApprovedBefore(analysis),
                    LackingDocuments(analysis.Protocol),
                    MissingRationales.Of(analysis.Protocol)
                )
            ),
            new("15 Statistics", "Methods, outliers, software", MethodsSection.Title),
            new(
                "16 Left out",
                "Each specimen that does not count, with reason and, where a person decided, by whom",
                DispositionSection.Title
            ),
            new(
                "17 Results",
                "Change at each time with its uncertainty, and of single specimens",
                Requirement.EachTimePoint
            ),
            new(
                "18 Drift",
                "Change as a function of time, and when it reaches the limit",
                DriftSection.Title
            ),
            new(
                "19 Limits of the study",
                "To what the conclusion does not extend",
                CoverageSection.Title
            ),
            new(
                "20 Data",
                "Where the data are, whether rows drawn at random were compared with the instrument's printout, who paid, whose interest",
                RecordSection.Title,
                Requirement.Together(
                    analysis.Facts.TranscriptionChecks.IsEmpty
                        ? "transcription was not checked"
                        : null,
                    HandlingGaps.OfMoney(analysis)
                )
            ),
        ];
    }

    private static string? LackingDocuments(StudyProtocol protocol)
    {
        string[] limits =
        [
            .. protocol
                .Limits.Select(NamedSource.OfLimit)
                .Where(source => source.IsNoDocument)
                .Select(source => source.Of),
        ];
        return limits.Length == 0 ? null : $"a document for {string.Join(", ", limits)}";
    }

    private static string? LackingMethod(ImmutableArray<Analyte> analytes) =>
        Lacking(analytes, analyte => analyte.Method is null, "the method of ");

    private static string? LackingMeanings(StudyProtocol protocol)
    {
        string[] levels =
        [
            .. from analyte in protocol.Analytes
            let missing = LevelMeaningWords.Missing(analyte, protocol)
            where missing is not null
            group analyte.Id by missing into alike
            select $"{string.Join(", ", alike)} {alike.Key}",
        ];
        return levels.Length == 0
            ? null
            : $"what the wrong side of a decision level means for a patient: {string.Join("; ", levels)}";
    }

    private static string? LackingCv(ImmutableArray<Analyte> analytes) =>
        Lacking(
            analytes,
            analyte => analyte.BetweenRunCvPercent is null && !analyte.IsQualitative,
            "the between-run CV of "
        );

    private static string? Lacking(
        ImmutableArray<Analyte> analytes,
        Func<Analyte, bool> lacks,
        string what
    )
    {
        var lacking = analytes.Where(lacks).Select(analyte => analyte.Id).ToImmutableArray();
        return lacking.IsEmpty ? null : what + string.Join(", ", lacking);
    }
}
