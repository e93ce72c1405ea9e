namespace StabilityStudy.Core.Analysis;

/// <summary>Tubes that the rules let pass and that a reader should know of: what was in them, and where they waited.</summary>
internal static class TubeQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind HemolysisAtBaseline = Kinds.Add("hemolysis-at-baseline", QueryRank.LaxConduct, "baseline tubes were moderately or grossly hemolyzed", "check that the laboratory would report such specimens");
    internal static readonly QueryKind WaitedMostlySpun = Kinds.Add("waited-mostly-spun", QueryRank.Specimen, "half of the delayed tubes of whole blood waited unspun for less than three quarters of their delay", "spin delayed tubes shortly before their test");
    internal static readonly QueryKind OriginNotNative = Kinds.Add("origin-not-native", QueryRank.Specimen, "specimens are of pooled or spiked plasma", "repeat the study with patients' specimens, or limit the conclusion to such plasma");
    internal static readonly QueryKind FrozenBriefly = Kinds.Add("frozen-briefly", QueryRank.Time, "tubes were frozen for less than three quarters of their delay", "correct frozen_at and thawed_at");
    // csharpier-ignore-end

    /// <summary>Share of its delay that a tube has to spend in the storage it stands for.</summary>
    private const double LeastShareInStorage = 0.75;

    public static IEnumerable<DataQuery> Of(StudyRows rows) =>
        [.. HemolyzedBaselines(rows), .. NotNative(rows.Inputs), .. OfFrozenBriefly(rows)];

    private static IEnumerable<DataQuery> HemolyzedBaselines(StudyRows rows)
    {
        var hemolyzed = rows
            .Inputs.Tubes.Where(tube =>
                tube.Hemolysis >= Hemolysis.Moderate
                && rows.HasResult(tube, row => row.Occasion.IsBaseline)
            )
            .ToImmutableArray();
        return FoundRows.OfTubes(
            HemolysisAtBaseline,
            "hemolysis",
            hemolyzed,
            () =>
                $"{Counted.Of(hemolyzed.Length, "baseline tube")} with moderate or gross hemolysis; only hemolysis that is new in a delayed tube counts against it."
        );
    }

    /// <summary>Whole blood of such origin never supports a conclusion; other storages say so only here.</summary>
    private static IEnumerable<DataQuery> NotNative(StudyInputs inputs)
    {
        var other = inputs
            .Tubes.Where(tube => tube.Origin is Origin.Pool or Origin.Spiked)
            .ToImmutableArray();
        return FoundRows.OfTubes(
            OriginNotNative,
            "origin",
            other,
            () =>
                $"{Counted.Of(other.Select(tube => tube.Specimen).Distinct().Count(), "specimen")} of pooled or spiked plasma; what holds for it need not hold for patients' specimens."
        );
    }

    /// <summary>A storage in the freezer that was not spent there.</summary>
    private static IEnumerable<DataQuery> OfFrozenBriefly(StudyRows rows)
    {
        if (rows.Inputs.Tubes.All(tube => tube.FrozenAt is null))
        {
            return [];
        }

        var brief = FoundRows
            .Tested(rows)
            .Where(item =>
                item.Row.Occasion.TimePoint is { } timePoint
                && item.Tube.ThawedAt - item.Tube.FrozenAt < LeastShareInStorage * timePoint.Delay
            )
            .Select(item => item.Row)
            .ToImmutableArray();
        return FoundRows.OfResults(
            FrozenBriefly,
            "time_point",
            brief,
            () =>
                $"{Counted.Of(brief.Length, "result")} of tubes that were frozen for less than three quarters of their delay; they say little about frozen plasma.",
            "Correct frozen_at and thawed_at, or study the other storage as one of its own."
        );
    }

    /// <summary>Blood that waited mostly after it was spun says little about blood that waits unspun.</summary>
    public static IEnumerable<DataQuery> MostlySpun(Cell cell, StudyProtocol protocol)
    {
        var isBlood = protocol.Storages.Any(storage =>
            storage.Id == cell.Key.Storage && storage.State == StorageState.WholeBlood
        );
        var shares = cell
            .Pairs.Where(pair => pair.Status == PairStatus.Compared)
            .Select(pair =>
                pair.TimeBeforeSpinning / (pair.TimeBeforeSpinning + pair.TimeAfterSpinning)
            )
            .OfType<double>()
            .Order()
            .ToImmutableArray();
        if (
            !isBlood
            || shares.IsEmpty
            || shares[shares.Length / 2] is not (< LeastShareInStorage and var middle)
        )
        {
            return [];
        }

        return
        [
            FoundRows.Attention(
                WaitedMostlySpun,
                new("protocol.toml", null, "spin_to_test"),
                $"half of the delayed tubes waited unspun for at most {100 * middle:0} % of their delay; the study says little about whole blood that waits so long.",
                "Spin delayed tubes shortly before their test, or study plasma as a storage of its own."
            ) with
            {
                Scope = QueryScope.Of(cell.Key),
            },
        ];
    }
}
