using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;

namespace StabilityStudy.Reporting.Report;

/// <summary>When a criterion is met and when it is not met; between the two it is inconclusive.</summary>
internal static class CriterionRules
{
    public static string MetWhen(Criterion criterion) =>
        criterion switch
        {
            BiasCriterion { Rule: DecisionRule.PointOnly } =>
                $"the mean change lies strictly inside the limit ({CriterionAsks.NoErrorControl}).",
            BiasCriterion bias =>
                $"the {Level(criterion)} interval of the mean change{Scale(bias.Scale)} lies strictly inside the limit. The interval spans both that by specimens and that by collection days: from the lower of the two lower ends to the higher of the two upper ends.",
            IndividualCriterion { Rule: DecisionRule.PointOnly } individual =>
                $"the share of specimens within the limit reaches {NumberText.Plain(individual.SharePercentMinimum)} % ({CriterionAsks.NoErrorControl}); what counts as outside: see below.",
            IndividualCriterion individual =>
                $"the exact one-sided {Level(criterion)} lower bound of the share of specimens within the limit reaches {NumberText.Plain(individual.SharePercentMinimum)} %, also with every change moved by what the days' runs could have added; for that, and for what counts as outside, see below.",
            DecisionLevelCriterion =>
                $"at every level the {Level(criterion)} interval of the change that the weighted Deming line predicts lies strictly inside the limit. The interval is the wider of that by specimens and that by collection days.",
            ReclassificationCriterion moved =>
                $"at every level the exact one-sided {Level(criterion)} upper bound of the share of specimens that change its side is at most {NumberText.Plain(moved.SharePercentMaximum)} %, also with every change moved (see below); a result at the level is on its upper side.",
            ClassificationCriterion kept =>
                $"the exact one-sided {Level(criterion)} lower bound of the share of specimens that keep their class reaches {NumberText.Plain(kept.SharePercentMinimum)} %{(kept.Cutoffs.IsEmpty ? ". Words show nothing of what a run adds to all results of a day; the required collection days stand against that" : ", also with every change moved (see below)")}.",
            DriftCriterion drift =>
                $"the {Level(criterion)} interval of the fitted mean change at the planned delay lies strictly inside the limit under every declared shape: {string.Join("; ", drift.Shapes.Select(TradeWords.Of))}.",
            _ => "",
        };

    public static string NotMetWhen(Criterion criterion) =>
        criterion switch
        {
            BiasCriterion { Rule: DecisionRule.PointOnly } =>
                "the mean change is at the limit or beyond.",
            BiasCriterion => "the whole interval is at the limit or beyond.",
            IndividualCriterion { Rule: DecisionRule.PointOnly } => "the share is below it.",
            IndividualCriterion =>
                "the one-sided upper bound is below it, even with every undecidable specimen counted inside.",
            DecisionLevelCriterion => "at any level the whole interval is at the limit or beyond.",
            ReclassificationCriterion =>
                "at any level the one-sided lower bound is above it, even with every undecidable specimen counted as unchanged.",
            ClassificationCriterion =>
                "the one-sided upper bound is below it, even with every undecidable specimen counted as kept.",
            DriftCriterion => "under any shape the whole interval is at the limit or beyond.",
            _ => "",
        };

    private static string Level(Criterion criterion) =>
        NumberText.Percent(criterion.ConfidenceLevel);

    private static string Scale(ChangeScale scale) =>
        scale switch
        {
            ChangeScale.Absolute => " in the unit",
            ChangeScale.Share => " as a share of each specimen's allowance",
            ChangeScale.LogRatio => " of 100 ln(delayed / baseline)",
            _ => " in percent of the baseline",
        };
}
