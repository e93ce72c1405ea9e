using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>Every rule beside the limits that bears on a verdict, so that a reader can come to each verdict by hand.</summary>
internal static class DoubtRules
{
    /// <summary>What counts as outside, what makes a criterion inconclusive, and what holds a time point back.</summary>
    public static ImmutableArray<string> Of(StudyProtocol protocol) =>
        [
            .. protocol
                .Criteria.GroupBy(criterion => criterion.Kind)
                .OrderBy(kind => kind.Key)
                .SelectMany(kind =>
                    kind.SelectMany(rule => CriterionWords.OfRule(rule, protocol).Doubts)
                )
                .Distinct(),
            .. OfShares(protocol),
            .. OfTimePoints(protocol),
        ];

    private static IEnumerable<string> OfShares(StudyProtocol protocol)
    {
        if (protocol.Criteria.All(criterion => criterion.JudgesMean))
        {
            yield break;
        }

        yield return "Single specimens: met only if the one-sided lower bound reaches the required share; not met only if the upper bound is below it, even with every undecidable specimen counted inside; otherwise inconclusive. Outside: a change beyond the limit (a change exactly at it is within); a delayed tube that failed; a delayed tube that gave no result, whatever the reason; a pair excluded when its result could be known; and every undecidable specimen, that is one whose result beyond the measuring interval leaves the answer open. Those without a result, excluded or undecidable count as inside for a refusal. A tube stated on the day of collection not to have been drawn is no loss.";
        yield return $"Single specimens, runs: a run moves all its results alike. A criterion is met only if it still is with every change moved, up as well as down, by what days, runs of either side or persons could by chance have added to the mean (\"{MethodsSection.Title}\" of the report has the formula), and not met only if it still is with half of that. As with the mean, it must be met as measured, since collection and corrected by the bridging plasma, as far as these apply.";
        yield return "Single specimens, agreeing beyond a limit of measurement: two results beyond the same limit agree without showing by how much they differ, so the share is judged with such pairs as within and without them; both must say the same, and enough pairs must be measured both times, else it is inconclusive.";
    }

    private static IEnumerable<string> OfTimePoints(StudyProtocol protocol)
    {
        yield return $"Time point, left out: at best inconclusive when more than {NumberText.Plain(protocol.LeftOutPercentMaximum)} % of the received specimens meant to be tested there are left out, for whatever reason.";
        yield return "Time point, first test: at best inconclusive when the analyte is first tested in its group beyond twice what today's rule allows there.";
        if (!protocol.Instruments.IsEmpty)
        {
            yield return "Time point, several instruments: at best inconclusive for all of them together unless each, on its own specimens, supports it; where they differ a window is stated for each by itself. A specimen belongs to the instrument of its baseline. No instrument supports anything by itself with pairs that were tested on two, or while specimens name none.";
        }

        yield return protocol.Controls == ControlRule.KeptElsewhere
            ? "Time point, controls: not checked; the protocol keeps control results elsewhere."
            : "Time point, controls: the pairs of a run without a control result, or with a control outside its range, are left out and counted; not assessed when fewer days or runs remain than a criterion needs.";
        yield return "Time point: supported when every criterion is met and nothing above holds it back; not supported when any is not met; not assessed without one; otherwise inconclusive.";
    }
}
