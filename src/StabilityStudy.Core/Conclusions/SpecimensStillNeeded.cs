using System.Collections.Immutable;
using StabilityStudy.Core.Criteria;

namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// The number of specimens with which a new study would decide an inconclusive time point, were the truth what was
/// observed. A criterion that is met already counts too, because the new study has to meet it again.
/// </summary>
internal static class SpecimensStillNeeded
{
    /// <summary>Wanted chance of meeting every criterion, a usual one in planning.</summary>
    private const double Power = 0.80;

    /// <summary>Reasons for which a criterion stays open however many specimens there are.</summary>
    private static readonly ImmutableArray<string> s_notOfNumber =
    [
        "too-few-days",
        "zero-spread",
        "uncounted-pairs",
        "skewed",
        "too-few-measured",
        "agreeing-beyond-limit",
        "open-if-runs-moved",
        "level-outside-coverage",
        "too-few-weak-positives",
        "repeat-draws-as-independent",
    ];

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
        if (openFigures.FirstOrDefault(figure => figure.Beyond is not null) is { } beyond)
        {
            return new(null, true, beyond.Beyond!);
        }

        var beside = open.SelectMany(result => result.Reasons)
            .Where(reason => s_notOfNumber.Contains(reason.Code))
            .Concat(doubts)
            .Select(reason => reason.Text)
            .Distinct()
            .ToImmutableArray();
        if (!openFigures.Any(figure => figure is { IsOpen: true, SmallestFor: not null }))
        {
            return beside.IsEmpty ? null : new(null, true, string.Join("; ", beside));
        }

        // Each of k figures may fail with a k-th of the chance, so that all are met with the wanted one, however they go together.
        var computable = criteria
            .SelectMany(result => result.Sized(compared, days))
            .Where(figure => figure.SmallestFor is not null)
            .ToImmutableArray();
        var each = 1 - ((1 - Power) / computable.Length);
        var (criterion, specimens) = computable
            .Select(figure => (figure.Criterion, Specimens: figure.SmallestFor!(each)))
            .MaxBy(item => item.Specimens ?? int.MaxValue);
        return new(
            specimens,
            false,
            string.Join("; besides, ", [$"criterion {criterion} decides", .. beside])
        );
    }
}
