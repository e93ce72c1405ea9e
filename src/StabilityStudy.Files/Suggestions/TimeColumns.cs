using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts the columns of times of a file, and how its times are written.</summary>
internal static class TimeColumns
{
    /// <summary>The meaning of a time that is not the one that is asked for.</summary>
    public const string Printed = "printed";

    private const int NoonAndAfter = 12;
    private const int FewestForClock = 20;

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

    /// <summary>Drafts how the times are written.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="columns">The columns of times.</param>
    /// <param name="study">What is known of the study.</param>
    /// <param name="fits">How many rows fit what else is known, by a reading; null where nothing is known.</param>
    /// <returns>The reading that is tried, and another one that is in question.</returns>
    public static (TimeReading Reading, TimeReading? Other) DraftForm(
        SectionDraft draft,
        IEnumerable<ImmutableArray<ColumnProfile>> columns,
        Surroundings study,
        Func<TimeReading, int>? fits
    )
    {
        var all = columns.ToImmutableArray();
        ImmutableArray<string> texts =
        [
            .. all.SelectMany(Texts)
                .Where(item => !item.IsTyped && item.Text.Length > 0)
                .Select(item => item.Text),
        ];
        if (texts.IsEmpty)
        {
            if (!all.IsEmpty)
            {
                draft.Settings.Add(
                    new("dates", "as stored", HowSure.Sure, "dates of the spreadsheet")
                );
            }

            return (TimeReading.Plain, null);
        }

        draft.TimesRead = all.FirstOrDefault(found =>
            Texts(found).Any(item => !item.IsTyped && item.Text.Length > 0)
        );
        if (draft.Stated.Text("date_format") is { } stated)
        {
            draft.Settings.Add(new("dates", stated, HowSure.Sure, "stated in study.toml"));
            return (new(stated, stated, !stated.Contains("yyyy", StringComparison.Ordinal)), null);
        }

        var readings = TimeReading.Of(texts, study.AsOf);
        if (readings.IsEmpty)
        {
            draft.Settings.Add(
                new("dates", "", HowSure.Ask, "in no form that is known here: write date_format")
            );
            draft.Ask(
                $"How are the times of {draft.Table.File} written? Write date_format.",
                couldChangeNumbers: true
            );
            return (TimeReading.Plain, null);
        }

        ImmutableArray<(TimeReading Reading, int Fits, int Known)> ranked =
        [
            .. readings
                .Select(item => (item.Reading, item.Fits, Known: fits?.Invoke(item.Reading) ?? 0))
                .OrderByDescending(item => item.Known)
                .ThenBy(item =>
                    texts.Count(text => item.Reading.Read(text) > study.AsOf.AddDays(1))
                ),
        ];
        var best = ranked[0].Reading;
        if (best.HasShortYear)
        {
            draft.Lines.Add(ReadLine.Number("century", TimeReading.Century));
        }

        if (ranked.Length == 1)
        {
            if (best.Format is { } format)
            {
                var line = ReadLine.Text("date_format", format);
                var rows = all[0][0].Cells.Length;
                draft.Lines.Add(
                    fits is null || ranked[0].Known * 2 >= rows
                        ? line
                        : line.Answering(
                            draft.Ask(
                                FormattableString.Invariant(
                                    $"Only {ranked[0].Known} of {rows} tests of {draft.Table.File} lie between collection and the last time point. Is it the clock of another zone (time_zone), a clock of 12 hours, or another time than that of the test? Uncomment date_format if it is right all the same."
                                ),
                                couldChangeNumbers: true
                            ),
                            isTried: true
                        )
                );
            }

            draft.Settings.Add(
                new(
                    "dates",
                    best.Format is null ? "ISO 8601"
                        : best.HasShortYear ? $"{best.Order}, 2 digits"
                        : best.Order,
                    ranked[0].Fits == texts.Length ? HowSure.Sure : HowSure.Likely,
                    Why(texts, best, ranked[0].Fits)
                )
            );
            return (best, null);
        }

        var orders = ranked.Select(item => item.Reading.Order).ToArray();
        var example =
            texts.FirstOrDefault(text => best.Read(text) != ranked[1].Reading.Read(text))
            ?? texts[0];
        draft.Settings.Add(
            new(
                "dates",
                best.HasShortYear ? $"{best.Order}, 2 digits" : best.Order,
                HowSure.Ask,
                $"{(ranked.All(item => item.Fits == texts.Length) ? "all days are 12 or less" : "nearly all days are 12 or less")}: {example} may be {InWords(best, example)} or {InWords(ranked[1].Reading, example)}"
            )
        );
        var question = draft.Ask(
            $"{string.Join(" or ", orders)} in {draft.Table.File}? "
                + (
                    fits is null
                        ? ""
                        : string.Join(
                            ", ",
                            ranked.Select(
                                (item, i) =>
                                    FormattableString.Invariant(
                                        $"{(i == 0 ? Capital(item.Reading.Order) : item.Reading.Order)} fits the collection times of {Count(item.Known)} rows"
                                    )
                            )
                        ) + ". "
                )
                + "Uncomment the line that is right.",
            couldChangeNumbers: true
        );
        foreach (var (reading, _, _) in ranked)
        {
            if (reading.Format is { } format)
            {
                draft.Lines.Add(
                    ReadLine
                        .Text("date_format", format)
                        .Answering(question, isTried: reading == best)
                );
            }
        }

        return (best, ranked[1].Reading);
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

    private static string Why(ImmutableArray<string> texts, TimeReading reading, int fits)
    {
        var read = texts.Select(reading.Read).OfType<DateTime>().ToArray();
        var isMorning =
            reading.Format?.Contains('t', StringComparison.Ordinal) != true
            && read.Length >= FewestForClock
            && read.All(time => time.Hour is >= 1 and <= NoonAndAfter);
        var example =
            texts.FirstOrDefault(text => reading.Read(text) is { Day: > NoonAndAfter }) ?? texts[0];
        return FormattableString.Invariant(
                $"\"{example}\" in {(fits == texts.Length ? $"all {fits}" : $"{fits} of {texts.Length}")}"
            ) + (isMorning ? "; none is after 12:59: does the clock have 12 hours?" : "");
    }

    private static string InWords(TimeReading reading, string text) =>
        reading.Read(text) is { } time
            ? time.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)
            : "none";

    private static string Count(int count) =>
        count == 0 ? "no" : count.ToString(CultureInfo.InvariantCulture);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
