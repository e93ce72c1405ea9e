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

    public static IEnumerable<DataQuery> Of(StudyInputs inputs) =>
        SideBySide.Of(
            () => ClockCorrectionQueries.Of(inputs),
            () => CollectedTogether(inputs),
            () => TestedAsPlanned(inputs),
            () => OfNoTimeForSpinning(inputs),
            () => OfTestedBeforeReceipt(inputs),
            () => OtherOffsets(inputs),
            () => OfDaysOfUtc(inputs)
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

    private static IEnumerable<DataQuery> TestedAsPlanned(StudyInputs inputs)
    {
        var starts = inputs
            .Tubes.DistinctBy(tube => (tube.Specimen, tube.Tube))
            .ToDictionary(
                tube => (tube.Specimen, tube.Tube),
                tube => inputs.Protocol.StartOf(tube)
            );
        var delays = inputs
            .Results.Where(row =>
                row is { Occasion.IsBaseline: false, TestedAt: not null }
                && starts.ContainsKey((row.Specimen, row.Tube))
            )
            .ToImmutableArray();
        var exact = delays.Count(row =>
            row.TestedAt!.Value - starts[(row.Specimen, row.Tube)]
            == row.Occasion.TimePoint!.Value.Delay
        );
        return FoundRows.OfResults(
            TimesAsPlanned,
            "tested_at",
            exact >= FewestOfAKind && 2 * exact >= delays.Length ? delays : [],
            () =>
                $"{exact} of {delays.Length} delayed results were tested at the planned delay to the minute.",
            "Enter the times of the tests as the analyzer recorded them, not as they were planned."
        );
    }

    private static IEnumerable<DataQuery> OfNoTimeForSpinning(StudyInputs inputs)
    {
        var spun = FoundRows
            .Tested(inputs)
            .Where(item => item.Tube.SpunAt is not null)
            .ToImmutableArray();
        var hasty = spun.Count(item => item.TestedAt - item.Tube.SpunAt < s_shortestSpinning);
        return hasty < FewestOfAKind || 10 * hasty < spun.Length
            ? []
            :
            [
                FoundRows.Attention(
                    NoTimeForSpinning,
                    DataFiles.SpecimensAt(null, "spun_at"),
                    $"{hasty} of {spun.Length} results were tested less than {s_shortestSpinning.TotalMinutes:0} minutes after the tube was put into the centrifuge, too soon to spin it."
                ),
            ];
    }

    private static IEnumerable<DataQuery> OfTestedBeforeReceipt(StudyInputs inputs)
    {
        var early = FoundRows
            .Tested(inputs)
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
    private static IEnumerable<DataQuery> OtherOffsets(StudyInputs inputs)
    {
        var collected = inputs.Tubes.ToLookup(tube => tube.Specimen, tube => tube.CollectedAt);
        var differing = inputs
            .Results.Where(row => row.TestedAt is not null)
            .GroupBy(row => row.Specimen)
            .Where(rows =>
            {
                var offsets = rows.Select(row => row.TestedAt!.Value)
                    .Concat(collected[rows.Key])
                    .Select(at => at.Offset)
                    .ToArray();
                return offsets.Max() - offsets.Min() > s_summerTime;
            })
            .ToImmutableArray();
        return FoundRows.OfResults(
            OffsetsDiffer,
            "tested_at",
            [.. differing.SelectMany(rows => rows)],
            () =>
                $"{Counted.Of(differing.Length, "specimen")} with times whose offsets from UTC differ by more than an hour; their delays are only as right as these offsets.",
            "Correct the offsets, or name one time zone in study.toml and write local times."
        );
    }
}
