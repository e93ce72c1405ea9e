using StabilityStudy.Reporting.Report.Figures;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>The parts of a pair as tables print them.</summary>
internal static class PairTexts
{
    public static string Change(PairRecord pair)
    {
        var (baseline, delayed) = pair.Values();
        var change = delayed - baseline;
        return (change > 0 ? "+" : "")
            + change.ToString(CultureInfo.InvariantCulture).Replace('-', '\u2212');
    }

    /// <summary>In decimal figures, so that a half is rounded as with a calculator.</summary>
    public static string Percent(PairRecord pair)
    {
        var (baseline, delayed) = pair.Values();
        var percent = 100 * (delayed - baseline) / baseline;
        return NumberText.Change(
            (double)decimal.Round(percent, 1, MidpointRounding.AwayFromZero),
            1
        );
    }

    public static string Spinning(PairRecord pair) =>
        string.Join(
            ", ",
            new[] { pair.TimeBeforeSpinning, pair.TimeAfterSpinning }
                .OfType<TimeSpan>()
                .Select(Clock)
        );

    public static string Delay(Measurement? measurement) =>
        measurement?.Delay is { } delay ? Clock(delay) : "";

    /// <summary>Hours and minutes, "12:05"; from three days on with the days, "14 d 2:05", held on one line.</summary>
    public static string Clock(TimeSpan delay)
    {
        var minutes = (long)Math.Floor(delay.TotalMinutes);
        var days = minutes > 72 * 60 ? minutes / 1440 : 0;
        var rest = minutes - (days * 1440);
        var clock = string.Create(CultureInfo.InvariantCulture, $"{rest / 60}:{rest % 60:00}");
        return days == 0
            ? clock
            : string.Create(CultureInfo.InvariantCulture, $"{days}\u00A0d\u00A0{clock}");
    }

    public static string Remark(Cell cell, PairRecord pair) =>
        string.Join("; ", Remarks(cell, pair));

    /// <summary>Why a pair is not compared; else what is remarkable about it, each by itself.</summary>
    public static ImmutableArray<string> Remarks(Cell cell, PairRecord pair) =>
        pair.Status != PairStatus.Compared
            ? [TradeWords.Short(pair)]
            :
            [
                .. CellAxes.IsOutside(cell, pair) ? ["outside"] : Array.Empty<string>(),
                .. pair.IsOutlier ? ["stands out"] : Array.Empty<string>(),
                .. cell
                    .SideChanges.Where(change =>
                        change.Up.Contains(pair.Specimen) || change.Down.Contains(pair.Specimen)
                    )
                    .Select(change => $"across {NumberText.Plain(change.Level)}"),
            ];
}
