using System.Collections.Frozen;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.OwnTables;

namespace StabilityStudy.Files.Rows;

/// <summary>The key of a tube.</summary>
internal readonly record struct TubeKey(string Specimen, string Tube);

/// <summary>The rows of a file as far as they could be read.</summary>
/// <param name="FileName">The file.</param>
/// <param name="KnowsEveryTube">Whether <paramref name="Keys"/> names every tube of the file, so that a tube can be called unknown.</param>
/// <param name="Rows">The sound rows, in the order of the file.</param>
/// <param name="Keys">The tubes of all rows, sound or not.</param>
internal sealed record RowTable<T>(
    string FileName,
    bool KnowsEveryTube,
    ImmutableArray<T> Rows,
    IReadOnlySet<TubeKey> Keys
)
{
    /// <summary>A file that is not there.</summary>
    public static RowTable<T> Absent(string fileName) =>
        new(fileName, false, [], FrozenSet<TubeKey>.Empty);

    /// <summary>The same with the rows of a further file of the kind.</summary>
    public RowTable<T> With(RowTable<T> more)
    {
        var keys = new HashSet<TubeKey>(Keys);
        keys.UnionWith(more.Keys);
        return new(FileName, KnowsEveryTube && more.KnowsEveryTube, Rows.AddRange(more.Rows), keys);
    }

    /// <summary>Reads the rows that can be read, with a query when there are none at all.</summary>
    /// <param name="part">The file, or a part of it.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <param name="columns">What the file must and may have.</param>
    /// <param name="known">What the rows may refer to.</param>
    /// <param name="queries">Takes what does not fit.</param>
    /// <param name="readRow">Reads one row.</param>
    /// <param name="keyOf">The key of a row, sound or not.</param>
    public static RowTable<T> Read(
        TablePart part,
        string fileName,
        CsvColumns columns,
        KnownCodes known,
        QueryList queries,
        Func<CsvRow, T> readRow,
        Func<T, TubeKey> keyOf
    )
    {
        // Without a layout a line is a row, and several results are of one tube.
        var lines = columns.Layout is null ? Math.Min(part.Rows, StudyLimits.TableLines) : 0;
        var rows = ImmutableArray.CreateBuilder<T>(lines);
        var keys = new HashSet<TubeKey>(lines / 8);
        TubeKey? last = null;
        var reach = DataTable.Read(
            part.Bytes,
            fileName,
            columns,
            known,
            queries,
            row =>
            {
                var read = readRow(row);
                if (keyOf(read) is var key && key != last)
                {
                    last = key;
                    keys.Add(key);
                }

                if (row.IsSound)
                {
                    rows.Add(read);
                }
            },
            part.LinesBefore,
            part.Header
        );
        return Of(fileName, reach, rows, keys, queries);
    }

    /// <summary>The rows, with a query when there are none at all.</summary>
    public static RowTable<T> Of(
        string fileName,
        CsvReach reach,
        ImmutableArray<T>.Builder rows,
        HashSet<TubeKey> keys,
        QueryList queries
    )
    {
        if (reach == CsvReach.EveryRow && keys.Count == 0 && !queries.IsCollecting)
        {
            queries.Add(
                CsvQueries.NoDataYet,
                new QuerySource(fileName, null, null),
                "",
                "No data yet: the file has a header line and no rows.",
                "Collect data, then check again."
            );
        }

        var knowsEveryTube =
            reach == CsvReach.EveryRow
            && keys.All(key => key is { Specimen.Length: > 0, Tube.Length: > 0 });
        return new(fileName, knowsEveryTube, rows.DrainToImmutable(), keys);
    }
}
