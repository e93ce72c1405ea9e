using System.Collections.Frozen;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Rows;

/// <summary>Checks across rows and files. What could not be read is left out of them, so that one fault is one query.</summary>
internal static class RowChecks
{
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
        var tubeByKey = new TubesByKey(tubes.Rows);
        TubeChecks.Check(tubes, tubeByKey, longest, queries);
        var used = ResultDuplicates.Remove(results, queries);
        FlagChecks.Note(results.FileName, used, queries);
        var told =
            protocol is not null
            && protocol.Root.IsSound(ProtocolKeys.TimePoints)
            && protocol.Root.IsSound(ProtocolKeys.Tolerance)
            && protocol.Root.IsSound(ProtocolKeys.BaselineWithin)
                ? ClockChecks.Check(results.FileName, used, tubeByKey, protocol, queries)
                : FrozenSet<ResultRow>.Empty;
        ResultChecks.Check(tubes, tubeByKey, results.FileName, used, told, longest, queries);
        if (protocol is not null)
        {
            ResultChecks.NoteDecimals(protocol, results.FileName, used, queries);
        }

        if (facts is not null)
        {
            FactsChecks.Check(facts, protocol, tubes, results.FileName, used, queries);
        }

        if (results.KnowsEveryTube)
        {
            TubeChecks.NoteWithoutResults(tubes, results.Keys, queries);
        }

        return used;
    }

    private static TimeSpan LongestPlanned(ProtocolDraft? protocol)
    {
        var planned = (protocol?.TimePoints ?? []).Select(point => point.Delay);
        return planned.Append(TimeOrder.LongestUsual).Max();
    }
}
