using System.Collections.Immutable;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Reporting.Report;

/// <summary>One figure that a criterion decided by, beside what it was held to, as short as page 1 needs it.</summary>
/// <param name="IsShare">Whether it counts specimens; otherwise it is a change.</param>
/// <param name="Found">The figure with its interval or bound.</param>
/// <param name="Required">The limit or the required share.</param>
/// <param name="Shape">Shape of what it says.</param>
internal sealed record CriterionFigure(
    bool IsShare,
    string Found,
    string Required,
    VerdictShape Shape
);

/// <summary>The deciding figures of every kind of criterion.</summary>
internal static class CriterionFigures
{
    private const string WhicheverIsGreater = ", whichever is greater";

    /// <summary>What a criterion without an interval or bound is labelled.</summary>
    public const string NoErrorControl = "no error control";

    /// <summary>One figure, or one a level or shape where a criterion has several.</summary>
    /// <param name="result">What the criterion says.</param>
    /// <param name="names">What the cell's keys stand for.</param>
    /// <param name="protocol">The protocol.</param>
    /// <param name="withLimits">Whether the allowable difference of single specimens stands beside the required share.</param>
    public static ImmutableArray<CriterionFigure> Of(
        CriterionResult result,
        SequenceNames names,
        StudyProtocol protocol,
        bool withLimits
    )
    {
        var control = IsPointOnly(result, protocol) ? ", " + NoErrorControl : "";
        return result switch
        {
            BiasResult bias =>
            [
                new(
                    false,
                    CriterionWords.MeanWithInterval(bias, names),
                    $"{Allowed(bias, names)}{control}",
                    TradeWords.ShapeOf(bias.Verdict)
                ),
            ],
            IndividualResult individual =>
            [
                new(
                    true,
                    CriterionWords.ShareWithBound(individual),
                    NumberText.Percent(individual.RequiredShare)
                        + (withLimits ? " within " + Limit(individual.Limit, names) : "")
                        + control,
                    TradeWords.ShapeOf(individual.Verdict)
                ),
            ],
            DecisionLevelResult levels =>
            [
                .. levels.Levels.Select(level => new CriterionFigure(
                    false,
                    $"at {NumberText.Plain(level.Level)}: {Change(level, names)}",
                    $"±{NumberText.Plain((decimal)Math.Round(level.Allowed, 4))} {names.Analyte.ShownUnit}",
                    TradeWords.ShapeOf(level.Verdict)
                )),
            ],
            DriftCriterionResult drift =>
            [
                .. drift.Shapes.Select(shape => new CriterionFigure(
                    false,
                    $"by drift in {TradeWords.Of(shape.Shape)}: {Predicted(shape)}",
                    $"±{NumberText.Plain((decimal)Math.Round(shape.LimitPercent, 4))} %",
                    TradeWords.ShapeOf(shape.Verdict)
                )),
            ],
            ReclassificationResult reclassification =>
            [
                .. reclassification.Levels.Select(level => new CriterionFigure(
                    true,
                    $"{NumberText.Count(CriterionWords.Changed(level))} of {NumberText.Count(level.Counted)} change side of {NumberText.Plain(level.Level)} ({Upper(level, reclassification.LargestShare)})",
                    $"at most {NumberText.Percent(reclassification.LargestShare)}",
                    TradeWords.ShapeOf(level.Verdict)
                )),
            ],
            ClassificationResult classes =>
            [
                new(
                    true,
                    $"{NumberText.Count(classes.Kept)} of {NumberText.Count(classes.Counted)} keep class ({Lower(classes)})",
                    NumberText.Percent(classes.RequiredShare),
                    TradeWords.ShapeOf(classes.Verdict)
                ),
            ],
            _ => [],
        };
    }

    /// <summary>Whether the estimate alone was held to the limit.</summary>
    public static bool IsPointOnly(CriterionResult result, StudyProtocol protocol) =>
        protocol.Criteria.FirstOrDefault(item => item.Id == result.Criterion)
            is BiasCriterion { Rule: DecisionRule.PointOnly }
                or IndividualCriterion { Rule: DecisionRule.PointOnly };

    /// <summary>A limit without "whichever is greater": "±15 % or ±2 s".</summary>
    public static string Limit(Limit limit, SequenceNames names) =>
        Shortened(TradeWords.Of(limit, names.Analyte.ShownUnit));

    /// <summary>What the mean change is held to: "±7.5 %".</summary>
    public static string Allowed(BiasResult bias, SequenceNames names) =>
        Shortened(CriterionWords.Allowed(bias, names));

    /// <summary>"±15 %, at least ±2 s" for "±15 % or ±2 s, whichever is greater".</summary>
    private static string Shortened(string limit) =>
        limit.Contains(WhicheverIsGreater, StringComparison.Ordinal)
            ? limit
                .Replace(WhicheverIsGreater, "", StringComparison.Ordinal)
                .Replace(" or ±", ", at least ±", StringComparison.Ordinal)
            : limit;

    private static string Change(LevelResult level, SequenceNames names) =>
        CriterionWords.Predicted(level, names) is { } change
            ? $"{change} {names.Analyte.ShownUnit}"
            : "not covered";

    private static string Predicted(ShapeResult shape) =>
        CriterionWords.Predicted(shape) is { } change ? $"{change} %" : "not computable";

    private static string Lower(ClassificationResult classes) =>
        classes.Bounds.TryGet(out var found)
            ? CriterionWords.Bound(found, classes.RequiredShare, classes.Verdict)
            : "none counted";

    /// <summary>The share that changes: the bounds are the other way round.</summary>
    private static string Upper(LevelReclassification level, double largest) =>
        !level.Bounds.TryGet(out var found) ? "none counted"
        : level.Verdict == Verdict.NotMet && found.OneSidedLower > largest
            ? "≥\u00A0" + CriterionWords.LowerBound(found, largest)
        : "≤\u00A0" + CriterionWords.UpperBound(found, largest);
}
