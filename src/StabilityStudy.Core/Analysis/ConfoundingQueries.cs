namespace StabilityStudy.Core.Analysis;

/// <summary>What changed between baseline and delayed result besides the delay.</summary>
internal static class ConfoundingQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind InstrumentDiffersWithinPair = Kinds.Add("instrument-differs-within-pair", QueryRank.Confounding, "baseline and delayed result have another instrument, whose effect cannot be told from that of the delay", "test both with the same instrument, or show that it makes no difference", point: "Another instrument tested the delayed tubes.");
    internal static readonly QueryKind LotDiffersWithinPair = Kinds.Add("lot-differs-within-pair", QueryRank.Confounding, "baseline and delayed result have another lot, whose effect cannot be told from that of the delay", "test both with the same lot, or show that it makes no difference", point: "Another lot tested the delayed tubes.");
    internal static readonly QueryKind OperatorConfoundedWithDelay = Kinds.Add("operator-confounded-with-delay", QueryRank.Confounding, "nobody tested both baselines and delayed tubes, so what a person adds cannot be told from the delay", "let each person test at both times, or show that persons agree", point: "Another operator tested every delayed tube.");
    internal static readonly QueryKind CalibrationDiffersWithinPair = Kinds.Add("calibration-differs-within-pair", QueryRank.Confounding, "baseline and delayed result have another calibration, whose effect cannot be told from that of the delay", "test both with the same calibration, or show that it makes no difference", point: "Another calibration for the delayed tubes.");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(CellKey key, ImmutableArray<PairRecord> pairs)
    {
        var compared = pairs.Keep(pair => pair.Status == PairStatus.Compared);
        return
        [
            .. Confounded(
                InstrumentDiffersWithinPair,
                key,
                compared,
                "instrument",
                item => item.Instrument
            ),
            .. Confounded(LotDiffersWithinPair, key, compared, "lot", item => item.Lot),
            .. Confounded(
                CalibrationDiffersWithinPair,
                key,
                compared,
                "calibration",
                item => item.Calibration
            ),
            .. OtherPersons(key, compared),
        ];
    }

    /// <summary>Persons differ between shifts, and that alone is usual; but where nobody tested at both times, person and delay are one.</summary>
    private static IEnumerable<DataQuery> OtherPersons(
        CellKey key,
        ImmutableArray<PairRecord> compared
    )
    {
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
                OperatorConfoundedWithDelay,
                DataFiles.ResultsAt(compared[0].Delayed!.SourceRow, "operator"),
                compared[0].Delayed!.Operator,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"every delayed tube was tested by {string.Join(" or ", late.Order(StringComparer.Ordinal))}, every baseline by {string.Join(" or ", early.Order(StringComparer.Ordinal))}; what a person adds cannot be told from the delay."
                ),
                "Let each person test at both times in the next study, or show that persons agree."
            )
            {
                Scope = QueryScope.Of(key),
            };
        }
    }

    private static IEnumerable<DataQuery> Confounded(
        QueryKind kind,
        CellKey key,
        ImmutableArray<PairRecord> compared,
        string what,
        Func<Measurement, string> of
    )
    {
        var differing = compared.Keep(pair => of(pair.Baseline!) != of(pair.Delayed!));
        if (!differing.IsEmpty)
        {
            yield return new(
                kind,
                DataFiles.ResultsAt(differing[0].Delayed!.SourceRow, what),
                of(differing[0].Delayed!),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"in {differing.Length} of {compared.Length} pairs baseline and delayed result have another {what}; its effect cannot be told from that of the delay."
                ),
                $"Test baseline and delayed tubes with the same {what}, or show that it makes no difference."
            )
            {
                Scope = QueryScope.Of(key),
            };
        }
    }
}
