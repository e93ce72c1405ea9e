using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Queries;

namespace StabilityStudy.Core.Analysis;

/// <summary>What changed between baseline and delayed result besides the delay.</summary>
internal static class ConfoundingQueries
{
    public static IEnumerable<DataQuery> Of(CellKey key, ImmutableArray<PairRecord> pairs) =>
        [
            .. Confounded(
                "instrument-differs-within-pair",
                key,
                pairs,
                "instrument",
                item => item.Instrument
            ),
            .. Confounded("lot-differs-within-pair", key, pairs, "lot", item => item.Lot),
            .. Confounded(
                "calibration-differs-within-pair",
                key,
                pairs,
                "calibration",
                item => item.Calibration
            ),
            .. OtherPersons(key, pairs),
        ];

    /// <summary>Persons differ between shifts, and that alone is usual; but where nobody tested at both times, person and delay are one.</summary>
    private static IEnumerable<DataQuery> OtherPersons(
        CellKey key,
        ImmutableArray<PairRecord> pairs
    )
    {
        var compared = pairs.Where(pair => pair.Status == PairStatus.Compared).ToImmutableArray();
        var early = compared.Select(pair => pair.Baseline!.Operator).ToHashSet();
        var late = compared.Select(pair => pair.Delayed!.Operator).ToHashSet();
        if (
            compared.Length > 1
            && !early.Contains("")
            && !late.Contains("")
            && !early.Overlaps(late)
        )
        {
            yield return new(
                "operator-confounded-with-delay",
                Severity.Attention,
                DataFiles.ResultsAt(compared[0].Delayed!.SourceRow, "operator"),
                compared[0].Delayed!.Operator,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{key}: every delayed tube was tested by {string.Join(" or ", late.Order(StringComparer.Ordinal))}, every baseline by {string.Join(" or ", early.Order(StringComparer.Ordinal))}; what a person adds cannot be told from the delay."
                ),
                "Let each person test at both times in the next study, or show that persons agree."
            );
        }
    }

    private static IEnumerable<DataQuery> Confounded(
        string code,
        CellKey key,
        ImmutableArray<PairRecord> pairs,
        string what,
        Func<Measurement, string> of
    )
    {
        var compared = pairs.Where(pair => pair.Status == PairStatus.Compared).ToImmutableArray();
        var differing = compared
            .Where(pair => of(pair.Baseline!) != of(pair.Delayed!))
            .ToImmutableArray();
        if (!differing.IsEmpty)
        {
            yield return new(
                code,
                Severity.Attention,
                DataFiles.ResultsAt(differing[0].Delayed!.SourceRow, what),
                of(differing[0].Delayed!),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{key}: in {differing.Length} of {compared.Length} pairs baseline and delayed result have another {what}; its effect cannot be told from that of the delay."
                ),
                $"Test baseline and delayed tubes with the same {what}, or show that it makes no difference."
            );
        }
    }
}
