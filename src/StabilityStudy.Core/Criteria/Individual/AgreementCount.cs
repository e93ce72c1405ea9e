using System.Runtime.InteropServices;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria.Individual;

/// <summary>How many specimens of a cell stay within the allowable difference.</summary>
/// <param name="Counted">Specimens that count: inside plus outside.</param>
/// <param name="Inside">Within the allowable difference, or beyond the same limit of measurement both times.</param>
/// <param name="OutsideMeasured">Outside, by measurement.</param>
/// <param name="Failed">Outside, because the delayed tube failed.</param>
/// <param name="Undecidable">Counted outside, because a result beyond the measuring interval or missing without a stated reason leaves it open.</param>
/// <param name="OutsideSpecimens">Codes of the specimens that count as outside.</param>
public sealed record AgreementCount(
    int Counted,
    int Inside,
    int OutsideMeasured,
    int Failed,
    int Undecidable,
    ImmutableArray<string> OutsideSpecimens
)
{
    /// <summary>In the order in which they count when a person gave more than one specimen: the worst stands.</summary>
    private enum Place
    {
        Outside,
        Failed,
        Undecidable,
        AgreesBeyond,
        Inside,
    }

    /// <summary>Of those inside, how many lie beyond the same limit of measurement both times: they agree without showing by how much they differ.</summary>
    public int AgreeingBeyond { get; init; }

    /// <summary>Of those that count, how many were measured both times.</summary>
    public int Measured { get; init; }

    /// <summary>By how many percent of the allowable difference the runs could by chance have moved every change; 0 where nothing shows that pairs share anything.</summary>
    public double RunShiftPercent { get; init; }

    /// <summary>The most that would count as outside with every change moved by that, up or down.</summary>
    public int OutsideIfMoved { get; init; } = Counted - Inside;

    /// <summary>The fewest that would surely count as outside, undecidable ones not among them, with every change moved by half of it, up or down.</summary>
    public int SurelyOutsideIfHalfMoved { get; init; } = Counted - Inside - Undecidable;

    /// <summary>Specimens that count as outside, undecidable ones included.</summary>
    public int Outside => Counted - Inside;

    /// <summary>Specimens that count as outside whatever the undecidable ones are.</summary>
    public int SurelyOutside => Outside - Undecidable;

    /// <summary>The same with so many of those inside turned outside; the specimens have no names.</summary>
    internal AgreementCount WithMoreOutside(int more) =>
        this with
        {
            Inside = Inside - more,
            OutsideMeasured = OutsideMeasured + more,
            OutsideIfMoved = Math.Min(OutsideIfMoved + more, Counted),
            SurelyOutsideIfHalfMoved = Math.Min(SurelyOutsideIfHalfMoved + more, Counted),
            AgreeingBeyond = Math.Min(AgreeingBeyond, Inside - more),
        };

    /// <summary>
    /// Counts the pairs of a reading, as they are and moved by what the runs could have added. Results are compared with limits exactly, and a change exactly at the limit is within it. A person
    /// with more than one specimen counts once, as the worst of them.
    /// </summary>
    /// <param name="reading">The reading.</param>
    /// <param name="allowance">The allowable difference.</param>
    /// <param name="context">The imprecision of one result.</param>
    /// <param name="confidenceLevel">One-sided level of the shift; null for none.</param>
    internal static AgreementCount Of(
        PairReading reading,
        Allowance allowance,
        CellContext context,
        double? confidenceLevel
    )
    {
        var use = reading.UseOf(allowance, context, confidenceLevel);
        var persons = new WholeNumbering(reading.Persons.Length);
        var counting = ImmutableArray.CreateBuilder<CountedPair>(reading.Pairs.Length);
        var measured = 0;
        for (var i = 0; i < reading.Pairs.Length; i++)
        {
            var pair = reading.Pairs[i];
            var share = use.ShareAt(measured, pair);
            measured += share is null ? 0 : 1;
            if (pair.CountsForAgreement)
            {
                counting.Add(
                    CountedPair.Of(
                        pair,
                        persons.Of(reading.Persons[i]),
                        reading.WithoutValueAtCollection.Contains(pair.Specimen),
                        allowance,
                        share,
                        use.IsExact
                    )
                );
            }
        }

        AgreementCount At(double shift) => Count(counting, persons.Count, shift);
        var counted = At(0);
        if (use.Shift == 0)
        {
            return counted;
        }

        var half = SharedShift.ShareForRefusal * use.Shift;
        return counted with
        {
            RunShiftPercent = 100 * use.Shift,
            OutsideIfMoved = Math.Max(
                counted.Outside,
                Math.Max(At(use.Shift).Outside, At(-use.Shift).Outside)
            ),
            SurelyOutsideIfHalfMoved = Math.Min(
                counted.SurelyOutside,
                Math.Min(At(half).SurelyOutside, At(-half).SurelyOutside)
            ),
        };
    }

    /// <summary>A pair that counts: where it stands, and which share of its allowance decides that where runs could have moved it.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct CountedPair(
        PairRecord Pair,
        int Person,
        Place Unmoved,
        double? Share,
        bool IsExact
    )
    {
        public static CountedPair Of(
            PairRecord pair,
            int person,
            bool isWithoutValue,
            Allowance allowance,
            (double Share, bool IsOutside)? use,
            bool isExact
        ) =>
            isWithoutValue ? new(pair, person, Place.Outside, null, isExact)
            : use is var (share, isOutside)
                ? new(pair, person, isOutside ? Place.Outside : Place.Inside, share, isExact)
            : new(pair, person, PlaceOf(pair, allowance), null, isExact);

        public Place At(double shift) =>
            Share is { } share && (shift != 0 || !IsExact)
                ? Math.Abs(share + shift) > 1
                    ? Place.Outside
                    : Place.Inside
                : Unmoved;
    }

    private static AgreementCount Count(
        ImmutableArray<CountedPair>.Builder pairs,
        int persons,
        double shift
    )
    {
        // The number of the pair by which each person counts.
        var worst = new int[persons];
        Array.Fill(worst, -1);
        for (var i = 0; i < pairs.Count; i++)
        {
            ref var other = ref worst[pairs[i].Person];
            other = other < 0 || pairs[i].At(shift) < pairs[other].At(shift) ? i : other;
        }

        var numbers = new int[Enum.GetValues<Place>().Length];
        var outside = ImmutableArray.CreateBuilder<string>();
        var measured = 0;
        foreach (var number in worst)
        {
            var item = pairs[number];
            var place = item.At(shift);
            numbers[(int)place]++;
            measured += item.Pair.Status == PairStatus.Compared ? 1 : 0;
            if (place is not (Place.Inside or Place.AgreesBeyond))
            {
                outside.Add(item.Pair.Specimen);
            }
        }

        int Number(Place place) => numbers[(int)place];
        return new AgreementCount(
            persons,
            Number(Place.Inside) + Number(Place.AgreesBeyond),
            Number(Place.Outside),
            Number(Place.Failed),
            Number(Place.Undecidable),
            outside.ToImmutable()
        )
        {
            AgreeingBeyond = Number(Place.AgreesBeyond),
            Measured = measured,
        };
    }

    private static Place PlaceOf(PairRecord pair, Allowance allowance)
    {
        if (pair.Status == PairStatus.Failed)
        {
            return Place.Failed;
        }

        if (pair.IsLost)
        {
            return Place.Undecidable;
        }

        return (pair.Baseline?.Result, pair.Delayed?.Result) switch
        {
            (MeasuredResult x, MeasuredResult y) => IsOutside(x.Value, y.Value, allowance)
                ? Place.Outside
                : Place.Inside,
            (CensoredResult x, CensoredResult y) when (x.Side, x.Limit) == (y.Side, y.Limit) =>
                Place.AgreesBeyond,
            ({ } x, { } y) => ByBounds(
                ResultRange.Of(x) ?? default,
                ResultRange.Of(y) ?? default,
                allowance
            ),
            _ => Place.Failed,
        };
    }

    /// <summary>
    /// A result beyond a limit is a range. When the two ranges do not meet, the change is at least that between their
    /// nearest ends, and relative to a baseline further away it is larger still; when they meet there may be no change.
    /// </summary>
    private static Place ByBounds(ResultRange x, ResultRange y, Allowance allowance)
    {
        var rises =
            x.Highest is { } top && y.Lowest >= top && IsOutside(top, y.Lowest.Value, allowance);
        var falls =
            x.Lowest is { } bottom
            && y.Highest <= bottom
            && IsOutside(bottom, y.Highest.Value, allowance);
        return rises || falls ? Place.Outside : Place.Undecidable;
    }

    private static bool IsOutside(decimal x, decimal y, Allowance allowance) =>
        AllowableDifference.Judge(x, y, allowance) == AllowanceVerdict.Outside;
}
