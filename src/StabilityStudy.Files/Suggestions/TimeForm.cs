namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts how the times of a file are written.</summary>
internal static class TimeForm
{
    private const int NoonAndAfter = 12;
    private const int FewestForClock = 20;

    /// <summary>Drafts how the times are written.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="columns">The columns of times.</param>
    /// <param name="study">What is known of the study.</param>
    /// <param name="fits">How many rows fit what else is known, by a reading; null where nothing is known.</param>
    /// <returns>The reading that is tried, and another one that is in question.</returns>
    public static (TimeReading Reading, TimeReading? Other) Draft(
        SectionDraft draft,
        IEnumerable<ImmutableArray<ColumnProfile>> columns,
        Surroundings study,
        Func<TimeReading, int>? fits
    )
    {
        var all = columns.ToImmutableArray();
        ImmutableArray<string> texts =
        [
            .. all.SelectMany(TimeColumns.Texts)
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
            TimeColumns.Texts(found).Any(item => !item.IsTyped && item.Text.Length > 0)
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
