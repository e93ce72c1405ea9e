using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Reporting.Report;

/// <summary>What a criterion asks of a time point, in one sentence.</summary>
internal static class CriterionAsks
{
    /// <summary>What is said of a rule on the estimate alone.</summary>
    public const string NoErrorControl = "the estimate alone, no error control";

    public static string Of(CriterionResult result, StudyProtocol protocol, SequenceNames names) =>
        result switch
        {
            BiasResult bias when CriterionFigures.IsPointOnly(bias, protocol) =>
                $"The mean change lies strictly inside {CriterionWords.Allowed(bias, names)} ({NoErrorControl}).",
            BiasResult bias =>
                $"The {Percent(bias.ConfidenceLevel)} interval of the mean change lies strictly inside {CriterionWords.Allowed(bias, names)}.",
            IndividualResult individual when CriterionFigures.IsPointOnly(individual, protocol) =>
                $"At least {Percent(individual.RequiredShare)} of specimens within {Limit(individual.Limit, names)} ({NoErrorControl}).",
            IndividualResult individual =>
                $"At least {Percent(individual.RequiredShare)} of specimens within {Limit(individual.Limit, names)}, by the exact one-sided {Percent(individual.ConfidenceLevel)} lower bound.",
            DecisionLevelResult levels =>
                $"At {Levels(levels.Levels.Select(item => item.Level), names)} the {Percent(levels.ConfidenceLevel)} interval of the predicted change lies strictly inside {Limit(levels.Limit, names)}.",
            ReclassificationResult moved =>
                $"At most {Percent(moved.LargestShare)} of specimens change the side of {Levels(moved.Levels.Select(item => item.Level), names)}, by the exact one-sided {Percent(moved.ConfidenceLevel)} upper bound.",
            ClassificationResult kept =>
                $"At least {Percent(kept.RequiredShare)} of specimens keep their class, by the exact one-sided {Percent(kept.ConfidenceLevel)} lower bound, with at least {NumberText.Count(kept.WeakPositivesMinimum)} weak positives.",
            DriftCriterionResult drift =>
                $"Under every declared shape the {Percent(drift.ConfidenceLevel)} interval of the fitted change at the planned delay lies strictly inside {Limit(drift.Limit, names)}.",
            _ => "",
        };

    private static string Percent(double share) => NumberText.Percent(share);

    private static string Limit(Limit limit, SequenceNames names) =>
        TradeWords.Of(limit, names.Analyte.ShownUnit);

    private static string Levels(IEnumerable<decimal> levels, SequenceNames names) =>
        $"{string.Join(", ", levels.Select(NumberText.Plain))} {names.Analyte.ShownUnit}".TrimEnd();
}
