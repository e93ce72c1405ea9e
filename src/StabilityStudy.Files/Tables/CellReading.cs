using ExcelDataReader;

namespace StabilityStudy.Files.Tables;

/// <summary>Reads a cell of a workbook: the value that is stored, and how it is shown.</summary>
internal static class CellReading
{
    private const string SecondsForm = "HH:mm:ss";
    private const string MinutesForm = "HH:mm";

    /// <summary>The cell at a place of the current row.</summary>
    public static TableCell Read(IExcelDataReader row, int place)
    {
        return row.GetValue(place) switch
        {
            null => new(""),
            string text => new(text.Replace("\r\n", "\n", StringComparison.Ordinal)),
            bool truth => new(truth ? "TRUE" : "FALSE"),
            DateTime time => OfTime(time, row.GetNumberFormatString(place)),
            TimeSpan span => new(
                span.ToString("c", CultureInfo.InvariantCulture),
                CellKind.Duration
            ),
            int number => OfNumber(number, row.GetNumberFormatString(place)),
            double number => OfNumber(number, row.GetNumberFormatString(place)),
            var other => new(
                Convert.ToString(other, CultureInfo.InvariantCulture) ?? "",
                CellKind.DisguisedNumber,
                "a value of an unknown type"
            ),
        };
    }

    private static TableCell OfNumber(double number, string? format)
    {
        if (NumberFormat.Stored(number) is not { } stored)
        {
            return new("not a number", CellKind.Error);
        }

        if (NumberFormat.Of(format, number) is not { } known)
        {
            return new(stored, CellKind.DisguisedNumber, format ?? "");
        }

        var shown = known.Shown(stored);
        return IsSame(shown, stored)
            ? new(shown, CellKind.Number)
            : new(shown, CellKind.RoundedNumber, stored);
    }

    private static bool IsSame(string shown, string stored) =>
        string.Equals(shown, stored, StringComparison.Ordinal)
        || (
            decimal.TryParse(shown, NumberStyles.Float, CultureInfo.InvariantCulture, out var first)
            && decimal.TryParse(
                stored,
                NumberStyles.Float,
                CultureInfo.InvariantCulture,
                out var second
            )
            && first == second
        );

    // A time is stored as a share of a day, so that 07:50 may come out some thousandths of a second early.
    private static TableCell OfTime(DateTime time, string? format)
    {
        var nearest = new DateTime(
            (time.Ticks + TimeSpan.TicksPerSecond / 2)
                / TimeSpan.TicksPerSecond
                * TimeSpan.TicksPerSecond
        );
        var clock = nearest.ToString(
            nearest.Second == 0 ? MinutesForm : SecondsForm,
            CultureInfo.InvariantCulture
        );
        var parts = FormatParts(format);
        var day = nearest.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return !parts.HasDay && parts.HasClock ? new(clock, CellKind.TimeOfDay)
            : nearest.TimeOfDay == TimeSpan.Zero && !parts.HasClock ? new(day, CellKind.Date)
            : new($"{day}T{clock}", CellKind.DateAndTime);
    }

    private static (bool HasDay, bool HasClock) FormatParts(string? format)
    {
        var (hasDay, hasClock, isQuoted, isBracketed) = (false, false, false, false);
        foreach (var c in (format ?? "").ToLowerInvariant())
        {
            isQuoted ^= c == '"';
            isBracketed = c == '[' || (isBracketed && c != ']');
            if (!isQuoted && !isBracketed)
            {
                hasDay |= c is 'd' or 'y';
                hasClock |= c is 'h' or 's';
            }
        }

        return (hasDay, hasClock);
    }
}
