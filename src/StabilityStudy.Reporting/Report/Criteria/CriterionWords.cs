using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The words of each kind of criterion, chosen here and nowhere else.</summary>
internal static class CriterionWords
{
    /// <summary>What a criterion without an interval or bound is labelled.</summary>
    public const string NoErrorControl = "no error control";

    /// <summary>What is said of a rule on the estimate alone.</summary>
    public const string EstimateAlone = "the estimate alone, no error control";

    private const string WhicheverIsGreater = ", whichever is greater";

    /// <summary>The words for what a criterion says about a time point.</summary>
    public static ICriterionWords Of(
        CriterionResult result,
        SequenceNames names,
        StudyProtocol protocol
    ) =>
        result.Kind switch
        {
            CriterionKind.Bias => new BiasWords((BiasResult)result, names, protocol),
            CriterionKind.Individual => new IndividualWords(
                (IndividualResult)result,
                names,
                protocol
            ),
            CriterionKind.DecisionLevel => new DecisionLevelWords(
                (DecisionLevelResult)result,
                names
            ),
            CriterionKind.Reclassification => new ReclassificationWords(
                (ReclassificationResult)result,
                names
            ),
            CriterionKind.Classification => new ClassificationWords((ClassificationResult)result),
            CriterionKind.Drift => new DriftWords((DriftCriterionResult)result, names),
        };

    /// <summary>The words for its rule.</summary>
    public static CriterionRuleWords OfRule(Criterion criterion, StudyProtocol protocol) =>
        criterion.Kind switch
        {
            CriterionKind.Bias => BiasWords.OfRule((BiasCriterion)criterion, protocol),
            CriterionKind.Individual => IndividualWords.OfRule((IndividualCriterion)criterion),
            CriterionKind.DecisionLevel => DecisionLevelWords.OfRule(
                (DecisionLevelCriterion)criterion
            ),
            CriterionKind.Reclassification => ReclassificationWords.OfRule(
                (ReclassificationCriterion)criterion
            ),
            CriterionKind.Classification => ClassificationWords.OfRule(
                (ClassificationCriterion)criterion
            ),
            CriterionKind.Drift => DriftWords.OfRule((DriftCriterion)criterion),
        };

    /// <summary>That a figure is beyond what it is held to.</summary>
    public static string IsBeyond(JudgedFigure figure) =>
        figure.Kind switch
        {
            CriterionKind.Bias =>
                $"the mean change of criterion {figure.Criterion} is at or beyond its limit",
            CriterionKind.Individual =>
                $"the share within of criterion {figure.Criterion} is at or below the required one",
            CriterionKind.DecisionLevel =>
                $"the change predicted at {LevelOf(figure)} of criterion {figure.Criterion} is at or beyond its limit",
            CriterionKind.Reclassification =>
                $"the share that changes the side of {LevelOf(figure)} of criterion {figure.Criterion} is at or above the largest allowed",
            CriterionKind.Classification =>
                $"the share that keeps its class of criterion {figure.Criterion} is at or below the required one",
            CriterionKind.Drift =>
                $"the change that criterion {figure.Criterion} predicts is at or beyond its limit",
        };

    private static string LevelOf(JudgedFigure figure) =>
        figure.Level is { } level ? NumberText.Plain(level) : "any of the levels";

    /// <summary>Whether the estimate alone was held to the limit.</summary>
    public static bool IsEstimateAlone(CriterionResult result, StudyProtocol protocol) =>
        protocol.Criteria.Any(item => item.Id == result.Criterion && item.IsEstimateAlone);

    /// <summary>A limit without "whichever is greater": "±15 %, at least ±2 s" for "±15 % or ±2 s, whichever is greater".</summary>
    public static string Shortened(string limit) =>
        limit.Contains(WhicheverIsGreater, StringComparison.Ordinal)
            ? limit
                .Replace(WhicheverIsGreater, "", StringComparison.Ordinal)
                .Replace(" or ±", ", at least ±", StringComparison.Ordinal)
            : limit;

    /// <summary>The same of a limit of the protocol.</summary>
    public static string Shortened(Limit limit, SequenceNames names) =>
        Shortened(TradeWords.Of(limit, names.Analyte.ShownUnit));

    /// <summary>The reason of a criterion, and the figures that say what it says.</summary>
    public static string ReasonWith(
        ImmutableArray<CriterionFigure> figures,
        CriterionResult result
    ) =>
        ReasonWords.Of(result.Reasons[0])
        + Joined(
            ": ",
            figures
                .Where(figure => figure.Verdict == result.Verdict)
                .Select(figure => $"{figure.Found} against {figure.Required}")
        );

    /// <summary>Texts after what stands before them; nothing without any.</summary>
    public static string Joined(string before, IEnumerable<string> texts)
    {
        var joined = string.Join("; ", texts);
        return joined.Length == 0 ? "" : before + joined;
    }

    /// <summary>"60, 80 s".</summary>
    public static string Levels(IEnumerable<decimal> levels, SequenceNames names) =>
        $"{string.Join(", ", levels.Select(NumberText.Plain))} {names.Analyte.ShownUnit}".TrimEnd();

    /// <summary>A change with its interval, without unit; neither rounds across the limit.</summary>
    public static string WithInterval(
        (double Value, double Lower, double Upper) change,
        double limit,
        int decimals
    ) =>
        $"{NumberText.ChangeAgainstLimits(change.Value, -limit, limit, decimals)} ({NumberText.IntervalAgainstLimits(change.Lower, change.Upper, -limit, limit, decimals)})";
}
