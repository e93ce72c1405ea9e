using System.Collections.Immutable;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Core.Conclusions;

/// <summary>How many specimens of a cell stay within the allowable difference.</summary>
/// <param name="Counted">Specimens that count: inside plus outside.</param>
/// <param name="Inside">Within the allowable difference, or beyond the same end of the measuring interval both times.</param>
/// <param name="OutsideMeasured">Outside, by measurement.</param>
/// <param name="Failed">Outside, because the delayed tube failed.</param>
/// <param name="Undecidable">Counted outside, because a result beyond the measuring interval leaves it open.</param>
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
    private enum Place
    {
        Outside,
        Failed,
        Undecidable,
        Inside,
    }

    /// <summary>Counts the pairs of a cell; limits are compared exactly, and a change exactly at the limit is within it.</summary>
    public static AgreementCount Of(ImmutableArray<PairRecord> pairs, Allowance allowance)
    {
        var places = pairs
            .Where(pair => pair.CountsForAgreement)
            .Select(pair => (pair.Specimen, Place: PlaceOf(pair, allowance)))
            .ToImmutableArray();
        int Number(Place place) => places.Count(item => item.Place == place);
        return new AgreementCount(
            places.Length,
            Number(Place.Inside),
            Number(Place.Outside),
            Number(Place.Failed),
            Number(Place.Undecidable),
            [.. places.Where(item => item.Place != Place.Inside).Select(item => item.Specimen)]
        );
    }

    private static Place PlaceOf(PairRecord pair, Allowance allowance)
    {
        if (pair.Status == PairStatus.Failed)
        {
            return Place.Failed;
        }

        return (pair.Baseline?.Result, pair.Delayed?.Result) switch
        {
            (MeasuredResult x, MeasuredResult y) => Judge(
                x.Value,
                y.Value,
                allowance,
                Place.Inside
            ),
            (CensoredResult x, CensoredResult y) when x.Side == y.Side => Place.Inside,
            // The true value lies beyond its limit, so the change is at least the one to that limit.
            (MeasuredResult x, CensoredResult y) => Judge(
                x.Value,
                y.Limit,
                allowance,
                Place.Undecidable
            ),
            (CensoredResult x, MeasuredResult y) => Judge(
                x.Limit,
                y.Value,
                allowance,
                Place.Undecidable
            ),
            (CensoredResult x, CensoredResult y) => Judge(
                x.Limit,
                y.Limit,
                allowance,
                Place.Undecidable
            ),
            _ => Place.Failed,
        };
    }

    private static Place Judge(decimal x, decimal y, Allowance allowance, Place otherwise) =>
        AllowableDifference.Judge(x, y, allowance) == AllowanceVerdict.Outside
            ? Place.Outside
            : otherwise;
}
