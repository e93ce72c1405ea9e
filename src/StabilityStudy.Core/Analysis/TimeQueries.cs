namespace StabilityStudy.Core.Analysis;

/// <summary>Times that the rules let pass although they can hardly be those of what happened.</summary>
internal static class TimeQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind CollectedInOneMinute = Kinds.Add("collected-in-one-minute", QueryRank.LaxConduct, "more than three subjects were collected in one minute", "check the times and that the subjects are different people");
    internal static readonly QueryKind TimesAsPlanned = Kinds.Add("times-as-planned", QueryRank.Time, "half or more of the delayed results were tested at the planned delay to the minute", "enter the times of the tests as the instrument recorded them");
    internal static readonly QueryKind NoTimeForSpinning = Kinds.Add("no-time-for-spinning", QueryRank.Time, "results were tested less than five minutes after their tubes were spun", "enter the times at which tubes were spun, not those of their tests");
    internal static readonly QueryKind TestedBeforeReceipt = Kinds.Add("tested-before-receipt", QueryRank.Time, "results were tested before their tubes were received", "correct the time that is wrong");
    internal static readonly QueryKind OffsetsDiffer = Kinds.Add("offsets-differ", QueryRank.Time, "times of one specimen have offsets from UTC that differ by more than an hour", "correct the offsets, or name one time zone and write local times");
    internal static readonly QueryKind DaysOfUtc = Kinds.Add("days-of-utc", QueryRank.Time, "every collection time is written in UTC and no time zone is named, so that collection days are those of UTC", "name the time zone and write local times, or write the offset of the place");
    internal static readonly QueryKind DatedInFuture = Kinds.Add("dated-in-future", QueryRank.Time, "results were tested, or tubes collected, after the moment of the check", "correct the day, or see whether day and month were taken for each other");
    // csharpier-ignore-end

    /// <summary>The clocks of instruments and computers differ by less.</summary>
    private static readonly TimeSpan s_clocksApart = TimeSpan.FromMinutes(15);

    /// <summary>So many to the minute as planned are typed, not measured; so many spun in no time are no slips.</summary>
    private const int FewestOfAKind = 10;

    /// <summary>More people are not collected in one minute.</summary>
    private const int MostInOneMinute = 4;

    private static readonly TimeSpan s_summerTime = TimeSpan.FromHours(1);

    /// <summary>Common practice: ten to fifteen minutes at 1500 g.</summary>
    private static readonly TimeSpan s_shortestSpinning = TimeSpan.FromMinutes(5);

    public static IEnumerable<DataQuery> Of(StudyRows rows) =>
        SideBySide.Of(
            () => ClockCorrectionQueries.Of(rows.Inputs),
            () => CollectedTogether(rows.Inputs),
            () => TestedAsPlanned(rows),
            () => OfNoTimeForSpinning(rows),
            () => OfTestedBeforeReceipt(rows),
            () => OtherOffsets(rows),
            () => OfDaysOfUtc(rows.Inputs)
        );

    /// <summary>What is dated after a moment, at which it cannot have happened yet.</summary>
    /// <param name="inputs">The study.</param>
    /// <param name="now">The moment.</param>
    public static IEnumerable<DataQuery> After(StudyInputs inputs, DateTimeOffset now)
    {
        var late = now + s_clocksApart;
        ImmutableArray<ResultRow> tested = [.. inputs.Results.Where(row => row.TestedAt > late)];
        ImmutableArray<TubeRow> collected =
        [
            .. inputs.Tubes.Where(tube => tube.CollectedAt > late),
        ];
        return
        [
            .. FoundRows.OfTubes(
                DatedInFuture,
                "collected_at",
                collected,
                () =>
                    $"{Counted.Of(collected.Length, "tube")} collected after {now:yyyy-MM-dd HH:mm}, the moment of the check."
            ),
            .. FoundRows.OfResults(
                DatedInFuture,
                "tested_at",
                tested,
                () =>
                    $"{Counted.Of(tested.Length, "result")} tested after {now:yyyy-MM-dd HH:mm}, the moment of the check."
            ),
        ];
    }

    private static IEnumerable<DataQuery> CollectedTogether(StudyInputs inputs)
    {
        var together = inputs
            .Tubes.DistinctBy(tube => (tube.Subject, tube.CollectedAt))
            .GroupBy(tube => tube.CollectedAt.ToUnixTimeSeconds() / 60)
            .Where(same => same.Count() > MostInOneMinute)
            .ToImmutableArray();
        return FoundRows.OfTubes(
            CollectedInOneMinute,
            "collected_at",
            [.. together.SelectMany(same => same)],
            () =>
                $"Up to {together.Max(same => same.Count())} subjects were collected in one and the same minute.",
            "Check that the times are those of each collection, and that the subjects are different people."
        );
    }

    /// <summary>A laboratory system may write every time in UTC: west or east of it a working day then falls into two collection days.</summary>
    private static IEnumerable<DataQuery> OfDaysOfUtc(StudyInputs inputs) =>
        inputs.Facts.TimeZone is null
        && inputs.Tubes.All(tube => tube.CollectedAt.Offset == TimeSpan.Zero)
            ? FoundRows.OfTubes(
                DaysOfUtc,
                "collected_at",
                inputs.Tubes,
                () =>
                    $"All {inputs.Tubes.Length} collection times are written in UTC, and study.toml names no time zone: collection days are days of UTC, and a day at a place elsewhere can count as two.",
                "Name time_zone in study.toml and write local times, or write times with the offset of the place."
            )
            : [];

    private static IEnumerable<DataQuery> TestedAsPlanned(StudyRows rows)
    {
        var delays = FoundRows.Tested(rows).Where(item => !item.Row.Occasion.IsBaseline);
        var (all, exact) = (0, 0);
        foreach (var (row, testedAt, tube) in delays)
        {
            all++;
            exact +=
                testedAt - rows.Inputs.Protocol.StartOf(tube) == row.Occasion.TimePoint!.Value.Delay
                    ? 1
                    : 0;
        }

        return FoundRows.OfResults(
            TimesAsPlanned,
            "tested_at",
            exact >= FewestOfAKind && 2 * exact >= all ? [.. delays.Select(item => item.Row)] : [],
            () =>
                $"{exact} of {all} delayed results were tested at the planned delay to the minute.",
            "Enter the times of the tests as the analyzer recorded them, not as they were planned."
        );
    }

    private static IEnumerable<DataQuery> OfNoTimeForSpinning(StudyRows rows)
    {
        var (spun, hasty) = (0, 0);
        foreach (var (_, testedAt, tube) in FoundRows.Tested(rows))
        {
            if (tube.SpunAt is { } spunAt)
            {
                spun++;
                hasty += testedAt - spunAt < s_shortestSpinning ? 1 : 0;
            }
        }

        return hasty < FewestOfAKind || 10 * hasty < spun
            ? []
            :
            [
                FoundRows.Attention(
                    NoTimeForSpinning,
                    DataFiles.SpecimensAt(null, "spun_at"),
                    $"{hasty} of {spun} results were tested less than {s_shortestSpinning.TotalMinutes:0} minutes after the tube was put into the centrifuge, too soon to spin it."
                ),
            ];
    }

    private static IEnumerable<DataQuery> OfTestedBeforeReceipt(StudyRows rows)
    {
        if (rows.Inputs.Tubes.All(tube => tube.ReceivedAt is null))
        {
            return [];
        }

        var early = FoundRows
            .Tested(rows)
            .Where(item => item.TestedAt < item.Tube.ReceivedAt)
            .Select(item => item.Row)
            .ToImmutableArray();
        return FoundRows.OfResults(
            TestedBeforeReceipt,
            "tested_at",
            early,
            () => $"{Counted.Of(early.Length, "result")} tested before the tube was received."
        );
    }

    /// <summary>Times of one specimen with different offsets, but for the change to or from summer time, make delays shorter or longer than they were.</summary>
    private static IEnumerable<DataQuery> OtherOffsets(StudyRows rows)
    {
        var differing = rows
            .Specimens.Where(specimen => OffsetsApart(specimen) > s_summerTime)
            .ToImmutableArray();
        return FoundRows.OfResults(
            OffsetsDiffer,
            "tested_at",
            [
                .. differing.SelectMany(specimen =>
                    specimen.Results.ToArray().Where(row => row.TestedAt is not null)
                ),
            ],
            () =>
                $"{Counted.Of(differing.Length, "specimen")} with times whose offsets from UTC differ by more than an hour; their delays are only as right as these offsets.",
            "Correct the offsets, or name one time zone in study.toml and write local times."
        );
    }

    /// <summary>How far the offsets of the times of a specimen lie apart; zero where nothing was tested.</summary>
    private static TimeSpan OffsetsApart(SpecimenRows specimen)
    {
        var (least, most) = (TimeSpan.MaxValue, TimeSpan.MinValue);
        foreach (var row in specimen.Results.Span)
        {
            if (row.TestedAt is { Offset: var offset })
            {
                (least, most) = (Shorter(least, offset), Longer(most, offset));
            }
        }

        if (most < least)
        {
            return TimeSpan.Zero;
        }

        foreach (var tube in specimen.Tubes.Span)
        {
            (least, most) = (
                Shorter(least, tube.CollectedAt.Offset),
                Longer(most, tube.CollectedAt.Offset)
            );
        }

        return most - least;
    }

    private static TimeSpan Shorter(TimeSpan one, TimeSpan other) => one < other ? one : other;

    private static TimeSpan Longer(TimeSpan one, TimeSpan other) => one > other ? one : other;
}
