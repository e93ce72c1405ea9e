using StabilityStudy.Core.Text;

namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>How many specimens of a time point count, how many are left out and why. What counts as outside is not left out.</summary>
internal static class LeftOut
{
    /// <summary>"38 of 40": those that count for a share, of those received and meant for this time point; "40 of 40, mean 39" where the mean rests on fewer.</summary>
    public static string CountedOfReceived(Cell cell)
    {
        var meant = Meant(cell);
        var counted = meant - Number(cell);
        var compared = cell.Estimates.Compared;
        return $"{NumberText.Count(counted)} of {NumberText.Count(meant)}"
            + (compared > 0 && compared < counted ? $", mean {NumberText.Count(compared)}" : "");
    }

    /// <summary>Number left out.</summary>
    public static int Number(Cell cell) => cell.Pairs.Count(pair => pair.IsLeftOut);

    /// <summary>The numbers of a time point with their reasons, never shortened: "12 h 2 of 40 (1 time wrong or unknown, 1 not eligible)"; empty when none is left out.</summary>
    public static string InWords(Cell cell)
    {
        var pairs = Pairs(cell);
        if (pairs.IsEmpty)
        {
            return "";
        }

        var reasons = pairs
            .GroupBy(Reason)
            .Select(group => (Count: group.Count(), Reason: group.Key))
            .ToImmutableArray();
        var why =
            reasons.Length == 1
                ? reasons[0].Reason
                : string.Join(
                    ", ",
                    reasons.Select(item => $"{NumberText.Count(item.Count)} {item.Reason}")
                );
        return $"{cell.Key.TimePoint} {NumberText.Count(pairs.Length)} of {NumberText.Count(Meant(cell))} ({why})";
    }

    private static int Meant(Cell cell) => cell.Pairs.Count(pair => pair.IsDue);

    private static ImmutableArray<PairRecord> Pairs(Cell cell) =>
        cell.Pairs.Keep(pair => pair.IsLeftOut);

    private static string Reason(PairRecord pair) =>
        pair.Status switch
        {
            PairStatus.Excluded => "documented decision",
            PairStatus.BaselineInvalid => "no valid baseline",
            PairStatus.OutsideTiming => "time wrong or unknown",
            PairStatus.RunNotInControl => "run not in control",
            PairStatus.Ineligible
            or PairStatus.NoDelayedResult
            or PairStatus.NotAssigned
            or PairStatus.NotDrawn
            or PairStatus.AddedAfterLook
            or PairStatus.BeyondPlanned
            or PairStatus.Failed
            or PairStatus.BeyondInterval
            or PairStatus.Compared => "not eligible",
        };
}
