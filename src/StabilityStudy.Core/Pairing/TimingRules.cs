using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Pairing;

/// <summary>Whether baseline and delayed tube were spun and tested when the protocol says. Each rule gives its reason in words.</summary>
internal static class TimingRules
{
    /// <summary>Why the baseline is not one; null when it is.</summary>
    public static string? BaselineProblem(
        TubeRow tube,
        ResultRow row,
        StudyProtocol protocol,
        PatientGroup group
    )
    {
        if (row.TestedAt is not { } testedAt)
        {
            return "time of the baseline test not recorded";
        }

        var delay = testedAt - tube.CollectedAt;
        if (delay > protocol.BaselineWithin)
        {
            return $"baseline tested {DurationText.FormatToMinute(delay)} after collection, {DurationText.Format(protocol.BaselineWithin)} allowed";
        }

        if (group.BaselineSpunWithin is not { } spunWithin)
        {
            return null;
        }

        return tube.SpunAt is not { } spunAt ? "time of spinning the baseline tube not recorded"
            : spunAt - tube.CollectedAt > spunWithin
                ? $"baseline tube spun {DurationText.FormatToMinute(spunAt - tube.CollectedAt)} after collection, {DurationText.Format(spunWithin)} allowed"
            : null;
    }

    /// <summary>Why the delayed test does not stand for the planned delay; null when it does.</summary>
    public static string? DelayedProblem(
        TubeRow tube,
        DateTimeOffset testedAt,
        TimePoint planned,
        Tolerance tolerance,
        Storage storage
    )
    {
        var delay = testedAt - tube.CollectedAt;
        if (delay < planned.Delay - tolerance.Early || delay > planned.Delay + tolerance.Late)
        {
            var window =
                $"{DurationText.FormatToMinute(planned.Delay - tolerance.Early)} to {DurationText.FormatToMinute(planned.Delay + tolerance.Late)}";
            return $"tested {DurationText.FormatToMinute(delay)} after collection, planned {window}";
        }

        if (storage.State != StorageState.WholeBlood || storage.SpinToTest is not { } spinToTest)
        {
            return null;
        }

        return tube.SpunAt is not { } spunAt
                ? "time of spinning not recorded, so the time as whole blood is not known"
            : testedAt - spunAt > spinToTest
                ? $"spun {DurationText.FormatToMinute(testedAt - spunAt)} before the test, {DurationText.Format(spinToTest)} allowed: it did not wait as whole blood"
            : null;
    }

    /// <summary>Why a whole-blood tube cannot serve at this time; null when it can.</summary>
    public static string? TubePlanProblem(Draw draw, ResultRow row, StudyProtocol protocol) =>
        protocol.TubePlan != TubePlan.OneTubeRetested
        && draw.Results.Any(other => other.Tube == row.Tube && other.Occasion != row.Occasion)
            ? $"tube {row.Tube} was tested at more than one time"
            : null;
}
