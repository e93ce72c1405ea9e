using System.Collections.Frozen;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Rows;

/// <summary>Checks across rows and files. What could not be read is left out of them, so that one fault is one query.</summary>
internal static class RowChecks
{
    /// <summary>The checks of results of which the queries stand above those about study.toml.</summary>
    private const int AheadOfReferences = 3;

    /// <summary>Checks tubes and results, and drops results that stand twice.</summary>
    /// <returns>The results that are used.</returns>
    public static ImmutableArray<ResultRow> Check(
        RowTable<TubeRow> tubes,
        RowTable<ResultRow> results,
        ProtocolDraft? protocol,
        FactsDraft? facts,
        QueryList queries
    )
    {
        var longest = LongestPlanned(protocol);
        var (file, rows) = (results.FileName, results.Rows.Length);
        var (tubeByKey, used) = (new TubesByKey([]), results.Rows);
        queries.AddAll(
            ApartChecks.Do(
                rows,
                queries,
                list =>
                {
                    tubeByKey = new TubesByKey(tubes.Rows);
                    TubeChecks.Check(tubes, tubeByKey, longest, list);
                },
                list => used = ResultDuplicates.Remove(results, list)
            )
        );
        var found = ApartChecks.Do(
            rows,
            queries,
            list => FlagChecks.Note(file, used, list),
            list =>
            {
                var told = CheckClocks(file, used, tubeByKey, protocol, list);
                ResultChecks.Check(tubes, tubeByKey, file, used, told, longest, list);
            },
            list => ResultChecks.NoteDecimals(protocol, file, used, list),
            list => FactsChecks.CheckExpiry(facts, file, used, list),
            list => TubeChecks.NoteWithoutResults(tubes, results, list)
        );
        queries.AddAll(found[..AheadOfReferences]);
        // Queries about study.toml are raised through its tables.
        FactsChecks.CheckReferences(facts, protocol, tubes);
        queries.AddAll(found[AheadOfReferences..]);
        return used;
    }

    private static IReadOnlySet<ResultRow> CheckClocks(
        string file,
        ImmutableArray<ResultRow> results,
        TubesByKey tubeByKey,
        ProtocolDraft? protocol,
        QueryList queries
    ) =>
        protocol is not null
        && protocol.Root.IsSound(ProtocolKeys.TimePoints)
        && protocol.Root.IsSound(ProtocolKeys.Tolerance)
        && protocol.Root.IsSound(ProtocolKeys.BaselineWithin)
            ? ClockChecks.Check(file, results, tubeByKey, protocol, queries)
            : FrozenSet<ResultRow>.Empty;

    private static TimeSpan LongestPlanned(ProtocolDraft? protocol)
    {
        var planned = (protocol?.TimePoints ?? []).Select(point => point.Delay);
        return planned.Append(TimeOrder.LongestUsual).Max();
    }
}
