using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Core.Conclusions;

/// <summary>What the conclusion would be if the pairs that were left out counted: as outside, or at the values that were measured.</summary>
internal static class LeftOutPairs
{
    /// <summary>Each question with the pairs as they would be.</summary>
    public static IEnumerable<(RobustnessQuestion Question, ImmutableArray<PairRecord> Pairs)> Of(
        ImmutableArray<PairRecord> pairs,
        CellContext context
    )
    {
        var leftOut = pairs.Count(pair => pair.IsLeftOut);
        if (leftOut == 0)
        {
            yield break;
        }

        yield return (
            new RobustnessQuestion(RobustnessKind.LeftOutCountedOutside, leftOut),
            pairs.Map(pair => pair.IsLeftOut ? pair with { Status = PairStatus.Failed } : pair)
        );
        var measured = pairs.Keep(IsMeasured);
        if (!measured.IsEmpty)
        {
            yield return (
                new RobustnessQuestion(RobustnessKind.LeftOutAtMeasuredValues, measured.Length)
                {
                    Excluded = OfTheExcluded(measured, context),
                },
                pairs.Map(pair =>
                    IsMeasured(pair) ? pair with { Status = PairStatus.Compared } : pair
                )
            );
        }
    }

    private static bool IsMeasured(PairRecord pair) =>
        pair.IsLeftOut
        && pair is { Baseline.Result: MeasuredResult, Delayed.Result: MeasuredResult };

    private static ExcludedPairs? OfTheExcluded(
        ImmutableArray<PairRecord> measured,
        CellContext context
    )
    {
        var excluded = measured
            .Where(pair => pair.Status == PairStatus.Excluded)
            .ToImmutableArray();
        var limit = context
            .Applying.FirstOrDefault(item => item.Criterion is IndividualCriterion)
            .Limit;
        if (excluded.IsEmpty || limit is null)
        {
            return null;
        }

        var allowance = ChangeOnScale.AllowanceOf(limit);
        var outside = excluded.Count(pair =>
            pair
                is {
                    Baseline.Result: MeasuredResult { Value: var x },
                    Delayed.Result: MeasuredResult { Value: var y }
                }
            && AllowableDifference.Judge(x, y, allowance) == AllowanceVerdict.Outside
        );
        return new ExcludedPairs(excluded.Length, outside);
    }
}
