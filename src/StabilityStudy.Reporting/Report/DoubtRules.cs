using System.Collections.Immutable;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Reporting.Report;

/// <summary>Every rule beside the limits that bears on a verdict, so that a reader can come to each verdict by hand.</summary>
internal static class DoubtRules
{
    /// <summary>What counts as outside, what makes a criterion inconclusive, and what holds a time point back.</summary>
    public static ImmutableArray<string> Of(StudyProtocol protocol) =>
        [
            .. OfBias(protocol),
            .. OfShares(protocol),
            .. OfLevels(protocol),
            .. OfTimePoints(protocol),
        ];

    private static IEnumerable<string> OfBias(StudyProtocol protocol)
    {
        if (!protocol.Criteria.Any(criterion => criterion is BiasCriterion))
        {
            yield break;
        }

        yield return $"Mean, days: inconclusive with fewer than {NumberText.Count(protocol.MinimumDays)} collection days, unless baseline and delayed tube of every pair were tested in one recorded run, at most {DurationText.Format(protocol.OneRunWithin)} apart; a run's error does not average out over specimens.";
        yield return "Mean, skewness: inconclusive with skewness beyond 1 toward the limit that is nearer to the mean, and with fewer than three changes, from which skewness cannot be computed; the interval would be too short.";
        yield return "Mean, zero spread: inconclusive when all changes are the same to the last reported digit.";
        yield return "Mean, uncounted pairs: inconclusive when specimens failed, lie beyond the measuring interval or lack a delayed result without a reason, and no other criterion counts them.";
    }

    private static IEnumerable<string> OfShares(StudyProtocol protocol)
    {
        if (
            !protocol.Criteria.Any(criterion =>
                criterion
                    is IndividualCriterion
                        or ReclassificationCriterion
                        or ClassificationCriterion
            )
        )
        {
            yield break;
        }

        yield return "Single specimens, outside: a change beyond the limit (a change exactly at it is within); a delayed tube that failed; and every undecidable specimen, that is one whose result beyond the measuring interval, or missing without a stated reason, leaves the answer open. \"Not tested\" and too little plasma, when stated as the reason, are left out and are no failures.";
        yield return $"Single specimens, runs: what a run adds moves all results of its day alike, so specimens of a day are not independent. Where the changes in percent differ between collection days (one-way analysis of variance, p below 0.25), a criterion is met only if it still is with every change moved, up as well as down, by what the runs could by chance have added to the mean (\"{MethodsSection.Title}\" has the formula), and is inconclusive otherwise. When baseline and delayed tube of every pair were tested in one run, nothing is moved.";
        yield return "Single specimens, agreeing beyond a limit of measurement: two results beyond the same limit agree without showing by how much they differ, so the share is judged with such pairs as within and without them; both must say the same, and enough pairs must be measured both times, else it is inconclusive.";
    }

    private static IEnumerable<string> OfLevels(StudyProtocol protocol)
    {
        if (protocol.Criteria.Any(criterion => criterion is DecisionLevelCriterion))
        {
            yield return "Decision levels: inconclusive at a level without at least 3 baselines on either side, or with a between-specimen SD of less than 5 times the analytical SD; and when the changes, as shares of the limit, have a skewness beyond 1 toward the limit that is nearer to the predicted change.";
        }

        if (
            protocol.Criteria.OfType<ClassificationCriterion>().FirstOrDefault() is
            { } classification
        )
        {
            yield return $"Classes: inconclusive with fewer than {NumberText.Count(classification.WeakPositivesMinimum)} specimens whose baseline is in the class just above the lowest.";
        }
    }

    private static IEnumerable<string> OfTimePoints(StudyProtocol protocol)
    {
        yield return $"Time point, left out: at best inconclusive when more than {NumberText.Plain(protocol.LeftOutPercentMaximum)} % of the received specimens meant to be tested there are left out, for whatever reason; what is left out may be what speaks against the window.";
        yield return protocol.Controls == ControlRule.KeptElsewhere
            ? "Time point, controls: not checked; the protocol keeps control results elsewhere."
            : "Time point, controls: not assessed unless every run in which its pairs were tested has a control result, and every control of that run lies within its range.";
        yield return "Time point: supported when every criterion is met and nothing above holds it back; not supported when any is not met; not assessed without one; otherwise inconclusive.";
    }
}
