using System.Collections.Frozen;
using StabilityStudy.Core.Planning;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Rows;

/// <summary>Reads a pilot file: pairs of results that a facility has already, for the spread that a plan supposes. Nothing is concluded from them.</summary>
public static class PilotReader
{
    /// <summary>Reads the pairs.</summary>
    /// <param name="utf8">Content of the file.</param>
    /// <param name="fileName">Its name.</param>
    /// <param name="protocol">The protocol whose codes it may use.</param>
    /// <returns>The pairs, or the queries of which at least one stops.</returns>
    public static Outcome<PilotPairs> Read(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        StudyProtocol protocol
    )
    {
        ArgumentNullException.ThrowIfNull(protocol);
        var queries = new QueryList();
        var pairs = RowTable<PilotPair>
            .Read(
                TablePart.Of(utf8, linesBefore: 0),
                fileName,
                PilotColumns.Table.Columns,
                Known(protocol),
                queries,
                ReadRow,
                _ => default
            )
            .Rows;
        return queries.StopCount > 0
            ? Outcome.Stopped<PilotPairs>(queries.ToImmutable())
            : Outcome.Of(new PilotPairs(pairs), queries.ToImmutable());
    }

    private static PilotPair ReadRow(CsvRow row)
    {
        var analyte = row.Read(PilotColumns.Analyte);
        var group = row.Read(PilotColumns.Group);
        return new(
            analyte.Length > 0 ? analyte : null,
            group.Length > 0 ? group : null,
            row.Read(PilotColumns.TimePoint).TimePoint,
            row.Read(PilotColumns.Baseline) ?? 1,
            row.Read(PilotColumns.Delayed) ?? 1
        );
    }

    private static KnownCodes Known(StudyProtocol protocol)
    {
        ImmutableArray<TimePoint> points =
        [
            .. protocol
                .Analytes.SelectMany(analyte =>
                    protocol.Groups.SelectMany(item => protocol.TimePointsOf(analyte, item.Id))
                )
                .Distinct(),
        ];
        const string where = "protocol.toml";
        return StudyCodes.From(null, null, FlagSet.None) with
        {
            Groups = new("group", where, [.. protocol.Groups.Select(item => item.Id)]),
            Analytes = new("analyte", where, [.. protocol.Analytes.Select(item => item.Id)]),
            TimePoints = points,
            OccasionByWord = points.ToFrozenDictionary(
                point => point.ToString(),
                point => new TestOccasion(point),
                StringComparer.Ordinal
            ),
        };
    }
}

/// <summary>The pairs of a pilot file.</summary>
/// <param name="All">In the order of the file.</param>
public sealed record PilotPairs(ImmutableArray<PilotPair> All);
