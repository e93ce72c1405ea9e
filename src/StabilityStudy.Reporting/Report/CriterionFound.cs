using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;

namespace StabilityStudy.Reporting.Report;

/// <summary>The figure that decided a criterion.</summary>
internal static class CriterionFound
{
    public static string Of(CriterionResult result, SequenceNames names) =>
        result switch
        {
            BiasResult bias => CriterionWords.MeanWithInterval(bias, names),
            IndividualResult individual => CriterionWords.ShareWithBound(individual),
            DecisionLevelResult levels => string.Join(
                "; ",
                levels.Levels.Select(level =>
                    $"{At(level.Level, names)}: {CriterionWords.Predicted(level, names) ?? "not covered"}"
                )
            ),
            ReclassificationResult moved => string.Join(
                "; ",
                moved.Levels.Select(level => Moved(level, moved.LargestShare, names))
            ),
            ClassificationResult kept when kept.Bounds.TryGet(out var bounds) =>
                $"{NumberText.Count(kept.Kept)} of {NumberText.Count(kept.Counted)} ({CriterionWords.LowerBound(bounds, kept.RequiredShare)})",
            DriftCriterionResult drift => string.Join(
                "; ",
                drift.Shapes.Select(shape =>
                    $"{TradeWords.Of(shape.Shape)}: {(CriterionWords.Predicted(shape) is { } change ? change + " %" : "not computable")}"
                )
            ),
            _ => "none counted",
        };

    /// <summary>"60 s: 4 of 40 (≤ 21.4 %)", with the upper bound that was held to the largest share.</summary>
    private static string Moved(
        LevelReclassification level,
        double largestShare,
        SequenceNames names
    )
    {
        var bound = level.Bounds.TryGet(out var bounds)
            ? $" (≤\u00A0{CriterionWords.UpperBound(bounds, largestShare)})"
            : "";
        return $"{At(level.Level, names)}: {NumberText.Count(CriterionWords.Changed(level))} of {NumberText.Count(level.Counted)}{bound}";
    }

    private static string At(decimal level, SequenceNames names) =>
        $"{NumberText.Plain(level)} {names.Analyte.ShownUnit}".TrimEnd();
}
