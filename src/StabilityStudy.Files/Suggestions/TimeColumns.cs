using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts the columns of times of a file, and how its times are written.</summary>
internal static class TimeColumns
{
    /// <summary>The meaning of a time that is not the one that is asked for.</summary>
    public const string Printed = "printed";

    /// <summary>Maps each column of times that the file has.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="wanted">Our columns of times, in the order in which they are asked for.</param>
    /// <param name="plain">The one that a mere date or time means.</param>
    /// <returns>The columns of the file for each of ours.</returns>
    public static Dictionary<string, ImmutableArray<ColumnProfile>> Map(
        SectionDraft draft,
        IEnumerable<string> wanted,
        string plain
    )
    {
        var found = new Dictionary<string, ImmutableArray<ColumnProfile>>(StringComparer.Ordinal);
        foreach (var ours in wanted)
        {
            ImmutableArray<ColumnProfile> named = [.. Of(draft, ours)];
            var isPlain = named.IsEmpty && ours == plain;
            ImmutableArray<ColumnProfile> columns = isPlain ? [.. Of(draft, "")] : named;
            if (
                columns.FirstOrDefault(column => column.Header == ours && HasClock(column)) is
                { } own
            )
            {
                columns = [own];
            }

            if (columns.IsEmpty)
            {
                continue;
            }

            if (Chosen(columns) is { } chosen)
            {
                draft.Map(ours, chosen);
                found.Add(ours, chosen);
                draft.Say(
                    chosen,
                    ours,
                    isPlain ? HowSure.Likely : HowSure.Sure,
                    isPlain
                        ? "could be the time of printing: ask whoever set up the export"
                        : "by its name, and dates with times stand in it"
                );
                continue;
            }

            Ask(draft, ours, columns);
        }

        foreach (var column in Of(draft, Printed).ToArray())
        {
            draft.Say(
                column,
                "not read",
                HowSure.Sure,
                "a time of printing or release is not that of the test"
            );
            if (!found.ContainsKey(plain) && !draft.Has(plain))
            {
                draft.Lines.Add(
                    ReadLine
                        .Column(plain, column.Header)
                        .Answering(
                            draft.Ask(
                                $"{draft.Table.File} has no time of {(plain == "tested_at" ? "testing" : "collection")}; {column.Shown} is another time. Have the export set up with the right one. Only if this one is it, uncomment the line.",
                                couldChangeNumbers: true
                            ),
                            isTried: true
                        )
                );
                found.Add(plain, [column]);
            }
        }

        return found;
    }

    /// <summary>The texts of columns that are joined, in each row, and whether all of them are dates of the spreadsheet.</summary>
    public static IEnumerable<(string Text, bool IsTyped)> Texts(
        ImmutableArray<ColumnProfile> columns
    )
    {
        for (var row = 0; row < columns[0].Cells.Length; row++)
        {
            var cells = columns
                .Select(column => column.Cells[row])
                .Where(cell => !cell.IsEmpty)
                .ToArray();
            yield return (
                string.Join(' ', cells.Select(cell => cell.Text.Trim())),
                cells.Length > 0 && cells.All(cell => cell.Kind != CellKind.Text)
            );
        }
    }

    /// <summary>When each row was tested or collected; null where it cannot be read.</summary>
    public static ImmutableArray<DateTime?> Read(
        ImmutableArray<ColumnProfile> columns,
        TimeReading reading
    ) =>
        [
            .. Texts(columns)
                .Select(item =>
                    item.IsTyped ? TimeReading.Plain.Read(item.Text) : reading.Read(item.Text)
                ),
        ];

    private static IEnumerable<ColumnProfile> Of(SectionDraft draft, string what) =>
        draft.Rest.Where(column => column.IsTimes && draft.EventOf(column) == what);

    // One column of dates with times, or one of dates and one of times.
    private static ImmutableArray<ColumnProfile>? Chosen(ImmutableArray<ColumnProfile> columns)
    {
        var clocks = columns.Where(column => column.IsClock).ToArray();
        var days = columns.Where(column => !column.IsClock && !HasClock(column)).ToArray();
        var whole = columns.Where(HasClock).ToArray();
        return (whole, days, clocks) switch
        {
            ([var only], [], []) => [only],
            ([], [var day], [var clock]) => [day, clock],
            _ => null,
        };
    }

    private static bool HasClock(ColumnProfile column) =>
        !column.IsClock
        && column.Filled.Any(cell => cell.Text.Contains(':', StringComparison.Ordinal));

    private static void Ask(SectionDraft draft, string ours, ImmutableArray<ColumnProfile> columns)
    {
        var isOnlyDay = columns.All(column => !column.IsClock && !HasClock(column));
        var question = draft.Ask(
            isOnlyDay
                ? $"{string.Join(" and ", columns.Select(column => column.Shown))} of {draft.Table.File} have no time of day. Have the export set up with it."
                : $"Which columns of {draft.Table.File} are {ours}: {string.Join(", ", columns.Select(column => column.Shown))}? Uncomment one line, or write date and time in brackets.",
            couldChangeNumbers: true
        );
        foreach (var column in columns)
        {
            draft.Say(
                column,
                "",
                HowSure.Ask,
                isOnlyDay ? "a day without a time" : $"one of several that may be {ours}"
            );
            if (!isOnlyDay)
            {
                draft.Lines.Add(
                    ReadLine.Column(ours, column.Header).Answering(question, isTried: false)
                );
            }
        }
    }
}
