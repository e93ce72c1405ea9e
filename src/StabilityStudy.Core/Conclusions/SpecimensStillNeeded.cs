using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// The number of specimens with which a new study would decide an inconclusive time point, were the truth what was
/// observed. A criterion that is met already counts too, because the new study has to meet it again.
/// </summary>
internal static class SpecimensStillNeeded
{
    /// <summary>Wanted chance of meeting every criterion, a usual one in planning.</summary>
    private const double Power = 0.80;

    /// <summary>A mean has an interval from here on.</summary>
    private const int FewestSpecimens = 2;

    /// <summary>The number or why there is none; null when the conclusion is another, or a criterion is open that no number can be computed for.</summary>
    /// <param name="own">What the time point's data alone conclude.</param>
    /// <param name="criteria">What each criterion says.</param>
    /// <param name="doubts">What keeps the time point from a conclusion beside its criteria.</param>
    /// <param name="compared">Number of compared pairs.</param>
    /// <param name="days">Number of collection days among them.</param>
    public static MoreSpecimens? Of(
        Conclusion own,
        ImmutableArray<CriterionResult> criteria,
        ImmutableArray<VerdictReason> doubts,
        int compared,
        int days
    )
    {
        var open = criteria.Where(result => result.Verdict != Verdict.Met).ToImmutableArray();
        if (
            own != Conclusion.Inconclusive
            || open.Any(result => result.Sized(compared, days).IsEmpty)
        )
        {
            return null;
        }

        var openFigures = open.SelectMany(result => result.Sized(compared, days))
            .ToImmutableArray();
        if (openFigures.FirstOrDefault(figure => figure.IsBeyond) is { } beyond)
        {
            return new(null, true) { Deciding = beyond.Figure };
        }

        ImmutableArray<VerdictReason> beside =
        [
            .. open.SelectMany(result => result.Reasons)
                .Where(reason => reason.StaysWithMore)
                .Concat(doubts),
        ];
        if (!openFigures.Any(figure => figure is { IsOpen: true, PowerAt: not null }))
        {
            return beside.IsEmpty ? null : new(null, true) { Beside = beside };
        }

        // The figures of one criterion are of the same data and are met together; criteria are taken as if each were met by a chance of its own.
        var computable = criteria
            .Select(result =>
                result.Sized(compared, days).Where(figure => figure.PowerAt is not null)
            )
            .Where(figures => figures.Any())
            .Select(figures => figures.ToImmutableArray())
            .ToImmutableArray();
        double PowerAt(int count) =>
            computable
                .Select(figures => figures.Min(figure => figure.PowerAt!(count)))
                .Aggregate(1.0, (all, power) => all * power);
        var specimens = SmallestN.Reaching(
            Power,
            PowerAt,
            FewestSpecimens,
            SizedFigure.MostSpecimens
        );
        var deciding = computable
            .SelectMany(figures => figures)
            .MinBy(figure => figure.PowerAt!(specimens ?? SizedFigure.MostSpecimens));
        return new(specimens, false) { Deciding = deciding!.Figure, Beside = beside };
    }
}
