using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.OwnTables;

/// <summary>Reads times in the form that study.toml states, from one field or from several that are joined by a space.</summary>
internal static class TimeForms
{
    private const string Local = "yyyy-MM-ddTHH:mm:ss";
    private const string WithOffset = "yyyy-MM-ddTHH:mm:sszzz";

    /// <summary>The time as a file without any setting has it; what does not fit is left as it stands.</summary>
    public static string Translate(
        FileLayout layout,
        string column,
        ImmutableArray<TableCell> cells
    )
    {
        var text = Joined(cells);
        if (layout.WordFor(column, text) is { } word)
        {
            return word;
        }

        if (text.Length == 0 || layout.DateFormat is not { } format)
        {
            return IsTyped(cells) ? text.Replace(' ', 'T') : text;
        }

        if (cells is [{ Kind: CellKind.Date, Text: var day }, .. var others])
        {
            // A date of the spreadsheet, with the time in a field of its own.
            var clock = Joined(others);
            return others is [{ Kind: CellKind.TimeOfDay }] || clock.Length == 0
                    ? Trimmed(day, clock)
                : ClockOf(format) is { } ofClock
                && Parse($"2000-01-01 {clock}", "yyyy-MM-dd " + ofClock, layout.Century) is { } time
                    ? day + time[10..]
                : $"{day} {clock}";
        }

        return IsTyped(cells) ? text : Parse(layout.Trimmed(text), format, layout.Century) ?? text;
    }

    /// <summary>A time of the stated form; null when it is none.</summary>
    public static string? Parse(string text, string format, int? century)
    {
        var hasOffset = format.Contains('z', StringComparison.Ordinal);
        return DateTimeOffset.TryParseExact(
            text,
            format,
            CultureOf(century),
            DateTimeStyles.AssumeUniversal,
            out var time
        )
            ? time.ToString(hasOffset ? WithOffset : Local, CultureInfo.InvariantCulture)
            : null;
    }

    private static string Trimmed(string day, string clock) =>
        clock.Length == 0 ? day : $"{day}T{clock}";

    private static string Joined(ReadOnlySpan<TableCell> cells)
    {
        var texts = new List<string>(cells.Length);
        foreach (var cell in cells)
        {
            if (!cell.IsEmpty)
            {
                texts.Add(cell.Text);
            }
        }

        return string.Join(' ', texts);
    }

    private static string Joined(ImmutableArray<TableCell> cells) => Joined(cells.AsSpan());

    private static bool IsTyped(ImmutableArray<TableCell> cells) =>
        !cells.IsEmpty && cells.All(cell => cell.Kind != CellKind.Text);

    private static string? ClockOf(string format)
    {
        var at = format.AsSpan().IndexOfAny('h', 'H');
        return at < 0 ? null : format[at..];
    }

    // The two digits of a year mean the one of the hundred years that begin with the stated one.
    private static CultureInfo CultureOf(int? century)
    {
        if (century is not { } first)
        {
            return CultureInfo.InvariantCulture;
        }

        return s_cultures.GetOrAdd(
            first,
            year =>
            {
                var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
                culture.DateTimeFormat.Calendar = new GregorianCalendar
                {
                    TwoDigitYearMax = year + 99,
                };
                return culture;
            }
        );
    }

    private static readonly System.Collections.Concurrent.ConcurrentDictionary<
        int,
        CultureInfo
    > s_cultures = new();
}
