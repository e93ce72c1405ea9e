namespace StabilityStudy.Core.Pairing;

/// <summary>Whether baseline and delayed tube were spun and tested when the protocol says. Each rule gives its reason in words.</summary>
internal static class TimingRules
{
    private const string NoThawing = "time of thawing not recorded";

    private static string Origin(PairContext context) =>
        context.Protocol.TimeOrigin == TimeOrigin.Thawing ? "thawing" : "collection";

    /// <summary>Why the baseline is not one; null when it is.</summary>
    public static string? BaselineProblem(TubeRow tube, ResultRow row, PairContext context)
    {
        if (row.TestedAt is not { } testedAt)
        {
            return "time of the baseline test not recorded";
        }

        if (context.Protocol.StartOf(tube) is not { } start)
        {
            return NoThawing;
        }

        var (delay, origin) = (testedAt - start, Origin(context));
        if (delay < TimeSpan.Zero)
        {
            return $"baseline tested before its {origin}";
        }

        return delay > context.Protocol.BaselineWithin
            ? $"baseline tested {DurationText.FormatToMinute(delay)} after {origin}, {DurationText.Format(context.Protocol.BaselineWithin)} allowed"
            : BaselineSpinProblem(tube, testedAt, context.Group.BaselineSpunWithin);
    }

    /// <summary>Why the delayed test does not stand for the planned delay; null when it does.</summary>
    public static string? DelayedProblem(
        TubeRow tube,
        DateTimeOffset testedAt,
        TimePoint planned,
        PairContext context
    )
    {
        if (context.Protocol.StartOf(tube) is not { } start)
        {
            return NoThawing;
        }

        var (delay, origin) = (testedAt - start, Origin(context));
        if (delay < TimeSpan.Zero)
        {
            return $"tested before its {origin}";
        }

        var (earliest, latest) = Planned(planned, context.Protocol);
        return delay < earliest || delay > latest
            ? $"tested {DurationText.FormatToMinute(delay)} after {origin}, planned {DurationText.FormatToMinute(earliest)} to {DurationText.FormatToMinute(latest)}"
            : StorageRules.Problem(tube, testedAt, context);
    }

    /// <summary>Between which delays since collection a test stands for the planned one.</summary>
    public static (TimeSpan Earliest, TimeSpan Latest) Planned(
        TimePoint planned,
        StudyProtocol protocol
    ) =>
        (
            planned.Delay - protocol.Tolerance.Early,
            planned.Delay + protocol.Tolerance.LateAt(planned)
        );

    /// <summary>Why a tube cannot serve at this time; null when it can.</summary>
    /// <remarks>Testing spins a tube and so ends its time as whole blood, whatever the tube plan says.</remarks>
    public static string? TubePlanProblem(Draw draw, TubeRow tube, PairContext context) =>
        (
            context.Protocol.TubePlan != TubePlan.OneTubeRetested
            || context.Storage.State == StorageState.WholeBlood
        ) && draw.Drawn.RetestedTubes.Contains(tube.Tube)
            ? $"tube {tube.Tube} was tested at more than one time"
            : null;

    private static string? BaselineSpinProblem(
        TubeRow tube,
        DateTimeOffset testedAt,
        TimeSpan? spunWithin
    )
    {
        if (tube.SpunAt is not { } spunAt)
        {
            return spunWithin is null ? null : "time of spinning the baseline tube not recorded";
        }

        if (spunAt < tube.CollectedAt || spunAt > testedAt)
        {
            return "baseline tube spun before its collection or after its test";
        }

        return spunAt - tube.CollectedAt > spunWithin
            ? $"baseline tube spun {DurationText.FormatToMinute(spunAt - tube.CollectedAt)} after collection, {DurationText.Format(spunWithin.Value)} allowed"
            : null;
    }
}
