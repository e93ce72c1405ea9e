using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Tests.Studies;

/// <summary>Pairs without rows behind them, for what is decided from pairs alone.</summary>
internal static class SmallPairs
{
    private const int Days = 10;

    private static readonly DateOnly s_firstDay = new(2026, 3, 2);

    /// <summary>A compared pair.</summary>
    public static PairRecord Compared(int number, string baseline, string delayed, int day = 0) =>
        Of(number, PairStatus.Compared, baseline, delayed, day);

    /// <summary>A pair of which a result lies beyond a limit.</summary>
    public static PairRecord Beyond(int number, string baseline, string delayed) =>
        Of(number, PairStatus.BeyondInterval, baseline, delayed, number % Days);

    /// <summary>So many pairs without change, and then so many that change by a third.</summary>
    public static ImmutableArray<PairRecord> InsideAndOutside(int inside, int outside) =>
        [
            .. Enumerable
                .Range(0, inside + outside)
                .Select(i => Compared(i, "30.0", i < inside ? "30.0" : "40.0", i % Days)),
        ];

    private static PairRecord Of(
        int number,
        PairStatus status,
        string baseline,
        string delayed,
        int day
    ) =>
        new(
            new(SmallRows.Code(number), SmallRows.Code(number), At(day, 0)),
            status,
            "",
            Measured(baseline, 0, day),
            Measured(delayed, 6, day),
            false
        );

    private static Measurement Measured(string text, int hour, int day) =>
        new(
            "T",
            SmallRows.Reported(text),
            At(day, hour),
            TimeSpan.FromHours(hour),
            TestConditions.OfRun(""),
            2
        );

    private static DateTimeOffset At(int day, int hour) =>
        new(s_firstDay.AddDays(day), new TimeOnly(8 + hour, 0), TimeSpan.Zero);
}
