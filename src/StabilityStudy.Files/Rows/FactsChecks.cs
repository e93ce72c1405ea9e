using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Rows;

/// <summary>Checks what study.toml says against the protocol and the rows.</summary>
internal static class FactsChecks
{
    /// <summary>Checks what study.toml names; the queries are raised through its tables.</summary>
    public static void CheckReferences(
        FactsDraft? facts,
        ProtocolDraft? protocol,
        RowTable<TubeRow> tubes
    )
    {
        if (facts is null)
        {
            return;
        }

        var analytes = protocol?.Analytes.Codes(AnalyteKeys.Id, analyte => analyte.Id);
        foreach (var (table, lot) in facts.Lots.Items)
        {
            References.Check(table, LotKeys.Analyte, lot.Analyte, "analyte", analytes);
        }

        var timePoints =
            protocol is not null && protocol.Root.IsSound(ProtocolKeys.TimePoints)
                ? protocol.TimePoints.Select(point => point.ToString()).ToImmutableArray()
                : (ImmutableArray<string>?)null;
        var namesSpecimens =
            !facts.Exclusions.Items.IsEmpty
            || !facts.NotDrawn.Items.IsEmpty
            || !facts.Reruns.Items.IsEmpty;
        var specimens =
            namesSpecimens && tubes.KnowsEveryTube
                ? tubes.Keys.Select(key => key.Specimen).Distinct().ToImmutableArray()
                : (ImmutableArray<string>?)null;
        foreach (var (table, exclusion) in facts.Exclusions.Items)
        {
            References.Check(
                table,
                ExclusionKeys.Specimen,
                exclusion.Specimen,
                "specimen",
                specimens
            );
            References.Check(
                table,
                ExclusionKeys.Analyte,
                exclusion.Analyte ?? "",
                "analyte",
                analytes
            );
            References.Check(
                table,
                ExclusionKeys.TimePoint,
                exclusion.TimePoint?.ToString() ?? "",
                "time point",
                timePoints
            );
        }

        var storages = protocol?.Storages.Codes(StorageKeys.Id, storage => storage.Id);
        foreach (var (table, notDrawn) in facts.NotDrawn.Items)
        {
            References.Check(
                table,
                NotDrawnKeys.Specimen,
                notDrawn.Specimen,
                "specimen",
                specimens
            );
            References.Check(
                table,
                NotDrawnKeys.TimePoint,
                notDrawn.TimePoint.ToString(),
                "time point",
                timePoints
            );
            References.Check(
                table,
                NotDrawnKeys.Storage,
                notDrawn.Storage ?? "",
                "storage",
                storages
            );
        }

        RerunChecks.Check(facts, protocol, specimens, analytes, timePoints);
        HandlingChecks.Check(facts, protocol);
    }

    /// <summary>Raises a query about each lot that was used after its last day.</summary>
    public static void CheckExpiry(
        FactsDraft? facts,
        string file,
        ImmutableArray<ResultRow> results,
        QueryList queries
    )
    {
        if (facts is null)
        {
            return;
        }

        var late = LateIn(facts, results);
        foreach (var lot in facts.Lots.Values)
        {
            var first = late.Where(row => row.Lot == lot.Id && IsAfter(row, lot.Expires))
                .MinBy(row => row.SourceRow);
            if (first is not null)
            {
                queries.Add(
                    RowQueries.LotExpired,
                    new QuerySource(file, first.SourceRow, ResultColumns.Lot.Name),
                    lot.Id,
                    FormattableString.Invariant(
                        $"The lot \"{lot.Id}\" was used after its last day, {lot.Expires:yyyy-MM-dd}."
                    )
                );
            }
        }
    }

    // Nearly always there are none, whatever the number of lots.
    private static ImmutableArray<ResultRow> LateIn(
        FactsDraft facts,
        ImmutableArray<ResultRow> results
    )
    {
        var lastDays = facts
            .Lots.Values.GroupBy(lot => lot.Id)
            .ToDictionary(lots => lots.Key, lots => lots.Min(lot => lot.Expires));
        var late = ImmutableArray.CreateBuilder<ResultRow>();
        foreach (var row in results)
        {
            if (lastDays.TryGetValue(row.Lot, out var lastDay) && IsAfter(row, lastDay))
            {
                late.Add(row);
            }
        }

        return late.DrainToImmutable();
    }

    private static bool IsAfter(ResultRow row, DateOnly? lastDay) =>
        row.TestedAt is { } tested && DateOnly.FromDateTime(tested.DateTime) > lastDay;
}
