using System.Diagnostics;
using StabilityStudy.Core.Study;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Analysis;

/// <summary>What the drift over all time points shows and no single time point does, in words.</summary>
public static class SequenceQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind SupportBelowStandardWindow = Kinds.Add("support-below-standard-window", QueryRank.ShorterThanToday, "the supported window is shorter than today's", "have the medical director look at today's window");
    internal static readonly QueryKind DriftCrossesBeforeStandardWindow = Kinds.Add("drift-crosses-before-standard-window", QueryRank.Drift, "the bound of the drift reaches the allowable bias before today's window ends", "have the medical director look at today's window", point: "The drift may reach the limit before today's window ends.");
    /// <summary>The change before the baseline would take away support.</summary>
    public static readonly QueryKind ChangeBeforeBaseline = Kinds.Add("change-before-baseline", QueryRank.EarlyChange, "what the declared shape puts before the baseline would take the mean change of a supported time point over the limit", "weigh it before the window is approved; test baselines sooner in the next study");
    internal static readonly QueryKind ChangeTurnsBack = Kinds.Add("change-turns-back", QueryRank.Drift, "the mean change is smaller at a later time point: opposite effects may cancel", "read nothing into the smaller change", point: "The change turns back.");
    // csharpier-ignore-end

    /// <summary>A mean change that falls back by less than this share of the limit may be chance.</summary>
    private const double LeastTurn = 0.25;

    internal static IEnumerable<DataQuery> Of(Sequence sequence, StudyProtocol protocol)
    {
        var standard = protocol
            .Analytes.Single(item => item.Id == sequence.Analyte)
            .StandardWindowOf(sequence.Group, sequence.Storage);
        return
        [
            .. Shorter(sequence, standard),
            .. Drifting(sequence, standard),
            .. protocol.IsSinceCollection(
                protocol.Storages.Single(item => item.Id == sequence.Storage)
            )
                ? []
                : BeforeBaseline(sequence, protocol.TimeOrigin),
            .. TurnsBack(sequence),
        ];
    }

    private static IEnumerable<DataQuery> Shorter(Sequence sequence, WindowRule standard)
    {
        if (sequence.Window is not { } window || window.Time >= standard.Time)
        {
            yield break;
        }

        yield return Query(
            sequence,
            SupportBelowStandardWindow,
            $"supported to {DurationText.FormatWindow(window.Time)} only, less than today's window of {DurationText.Format(standard.Time)}.",
            "Look at today's window: this study does not confirm it."
        );
    }

    private static IEnumerable<DataQuery> Drifting(Sequence sequence, WindowRule standard)
    {
        var hours = sequence.Drift.Crossing switch
        {
            CrossingTime.At at => at.Hours,
            CrossingTime.AlreadyOutside => 0,
            CrossingTime.Never or null => double.PositiveInfinity,
            _ => throw new UnreachableException(),
        };
        if (hours >= standard.Time.TotalHours)
        {
            yield break;
        }

        yield return Query(
            sequence,
            DriftCrossesBeforeStandardWindow,
            $"the bound of the drift reaches the allowable bias at {DurationText.FormatComputed(hours)}, before today's window of {DurationText.Format(standard.Time)} ends.",
            "Look at today's window too: its own results may drift further than is allowed."
        );
    }

    /// <summary>
    /// A window counts from collection and a change from the baseline. Where what the declared shape puts before the
    /// baseline would take the interval of a supported mean over the limit, the reader must know.
    /// </summary>
    private static IEnumerable<DataQuery> BeforeBaseline(Sequence sequence, TimeOrigin origin)
    {
        if (EarlyChange.Of(sequence) is { Reached.IsEmpty: false } early)
        {
            yield return Query(
                sequence,
                ChangeBeforeBaseline,
                $"baselines were tested {early.BaselineMinutes:0} min (mean) after {(origin == TimeOrigin.Thawing ? "thawing" : "collection")}. With the {early.Percent:+0.00;−0.00;0.00} % that the declared shape puts before them, unmeasured, the interval reaches {string.Join(", ", early.Reached.Select(place => FormattableString.Invariant($"{place.Percent:+0.00;−0.00;0.00} % at {place.TimePoint}")))}: not inside ±{early.LimitPercent:0.##} %."
            );
        }
    }

    /// <summary>Two opposite effects, such as loss of a factor and neutralization of a drug, can cancel at a later time.</summary>
    private static IEnumerable<DataQuery> TurnsBack(Sequence sequence)
    {
        if (sequence.Drift.LimitPercent is not { } limit)
        {
            yield break;
        }

        foreach (var (earlier, later) in sequence.Cells.Zip(sequence.Cells.Skip(1)))
        {
            if (
                earlier.Estimates.MeanPercent.TryGet(out var first)
                && later.Estimates.MeanPercent.TryGet(out var second)
                && first.Lower * first.Upper > 0
                && Math.Sign(first.Mean) * (first.Mean - second.Mean) > limit * LeastTurn
            )
            {
                yield return Query(
                    sequence,
                    ChangeTurnsBack,
                    $"the mean change is {first.Mean:+0.0;−0.0;0.0} % at {earlier.Key.TimePoint} and {second.Mean:+0.0;−0.0;0.0} % at {later.Key.TimePoint}. Opposite effects may cancel.",
                    "Read nothing into the smaller change: a later time point cannot make up for an earlier one."
                );
            }
        }
    }

    private static DataQuery Query(
        Sequence sequence,
        QueryKind kind,
        FormattableString text,
        string? action = null
    ) =>
        FoundRows.Attention(kind, new(StudyFileNames.Usual.Results, null, null), text, action) with
        {
            Scope = new(sequence.Analyte, sequence.Group, sequence.Storage, null),
        };
}
