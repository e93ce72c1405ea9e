using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>Pairs made of numbers.</summary>
internal static class SimulatedPairs
{
    /// <summary>So many decimals that rounding plays no part.</summary>
    public const int Unrounded = 5;

    /// <summary>Time from collection to the baseline test.</summary>
    public const double BaselineHours = 0.5;

    private const int MostSpecimens = 200;

    private static readonly DateOnly s_firstDay = new(2026, 3, 2);

    private static readonly DateTimeOffset s_firstTime = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    private static readonly ImmutableArray<string> s_codes =
    [
        .. Enumerable.Range(0, MostSpecimens).Select(SmallRows.Code),
    ];

    private static readonly ImmutableArray<string> s_runs =
    [
        .. Enumerable
            .Range(0, MostSpecimens)
            .Select(run => run.ToString(CultureInfo.InvariantCulture)),
    ];

    private static readonly MissingResult s_clot = new("CLOT", MissingReason.Clot);

    private static readonly MissingResult s_tooLittle = new(
        "QNS",
        MissingReason.QuantityNotSufficient
    );

    /// <summary>A specimen measured both times.</summary>
    public static PairRecord Compared(
        int number,
        double baseline,
        double delayed,
        Collection collection,
        int decimals = Unrounded,
        double hours = 6,
        double baselineHours = BaselineHours
    ) =>
        Of(
            number,
            PairStatus.Compared,
            Number(baseline, decimals),
            Number(delayed, decimals),
            collection,
            hours,
            baselineHours
        );

    /// <summary>A specimen whose delayed tube clotted.</summary>
    public static PairRecord Failed(int number, double baseline, Collection collection) =>
        Of(
            number,
            PairStatus.Failed,
            Number(baseline, Unrounded),
            s_clot,
            collection,
            6,
            BaselineHours
        );

    /// <summary>A specimen whose delayed tube is said to have held too little.</summary>
    public static PairRecord SaidTooLittle(int number, double baseline, Collection collection) =>
        Of(
            number,
            PairStatus.NoDelayedResult,
            Number(baseline, Unrounded),
            s_tooLittle,
            collection,
            6,
            BaselineHours
        );

    private static MeasuredResult Number(double value, int decimals) =>
        new("", Math.Round((decimal)value, decimals));

    private static PairRecord Of(
        int number,
        PairStatus status,
        ReportedResult baseline,
        ReportedResult delayed,
        Collection collection,
        double hours,
        double baselineHours
    )
    {
        var day = collection.Day[number];
        var collected = s_firstTime.AddDays(day);
        // Tested together, as from the freezer, when pairs are in one run.
        var (baselineRun, delayedRun) = collection.OneRun
            ? (s_runs[collection.BaselineRun[number]], s_runs[collection.BaselineRun[number]])
            : (
                "B" + s_runs[collection.BaselineRun[number]],
                "D" + s_runs[collection.DelayedRun[number]]
            );
        var testedLast = collected.AddHours(hours);
        var testedFirst = collection.OneRun ? testedLast : collected.AddHours(baselineHours);
        return new PairRecord(
            new(s_codes[number], s_codes[number], collected),
            status,
            "",
            new(
                "B",
                baseline,
                testedFirst,
                TimeSpan.FromHours(baselineHours),
                TestConditions.OfRun(baselineRun),
                2
            ),
            new(
                "D",
                delayed,
                testedLast,
                TimeSpan.FromHours(hours),
                TestConditions.OfRun(delayedRun),
                3
            ),
            false
        );
    }
}
