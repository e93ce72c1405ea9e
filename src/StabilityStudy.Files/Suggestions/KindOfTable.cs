using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Rows;

namespace StabilityStudy.Files.Suggestions;

/// <summary>What a delivered table holds, declared once: how it is drafted, read and shown.</summary>
/// <param name="Columns">The columns that such a file may have.</param>
/// <param name="Shown">Those that are shown of the rows.</param>
/// <param name="Draft">Drafts its table of [read].</param>
/// <param name="Read">Reads its rows, for the queries.</param>
/// <param name="Now">The file of this kind that is read now.</param>
internal sealed record KindOfTable(
    CsvColumns Columns,
    ImmutableArray<string> Shown,
    Func<SectionDraft, Surroundings, (TimeReading Reading, TimeReading? Other)> Draft,
    Action<ProposedFile> Read,
    Func<DataFileSet, DataFile> Now
)
{
    public static readonly KindOfTable Specimens = new(
        TubeColumns.Table.Columns,
        ["specimen", "tube", "group", "collected_at", "spun_at"],
        TubesDraft.Draft,
        file => SpecimenReader.Read(file.Bytes, file.Name, file.Columns, file.Known, file.Queries),
        data => data.Specimens
    );

    public static readonly KindOfTable Pairs = new(
        PairColumns.Columns,
        ["specimen", "analyte", "time_point", "baseline_result", "delayed_result"],
        PairsDraft.Draft,
        file =>
            PairReader.Read(
                file.Bytes,
                file.Name,
                file.Columns,
                file.Known,
                file.Protocol,
                file.Queries,
                0
            ),
        data => data.Pairs ?? data.Results
    );

    public static readonly KindOfTable Results = new(
        ResultColumns.Table.Columns,
        ["specimen", "tube", "analyte", "time_point", "tested_at", "result"],
        ResultsDraft.Draft,
        file => ResultReader.Read(file.Bytes, file.Name, file.Columns, file.Known, file.Queries),
        data => data.Results
    );

    public static readonly KindOfTable Controls = new(
        ControlColumns.Table.Columns,
        ["control", "analyte", "run", "tested_at", "result"],
        ControlsDraft.Draft,
        file => ControlReader.Read(file.Bytes, file.Name, file.Columns, file.Known, file.Queries),
        data => data.Controls
    );

    /// <summary>Every kind, in the order in which they are drafted: results refer to tubes.</summary>
    public static ImmutableArray<KindOfTable> All { get; } = [Specimens, Pairs, Results, Controls];

    /// <summary>The name of its table below [read].</summary>
    public string Section => Columns.Section;

    /// <summary>The kind; null where nothing shows it.</summary>
    public static KindOfTable? Of(ImmutableArray<ColumnProfile> columns, bool hasSeveralResults)
    {
        var names = columns
            .Select(column => HeaderWords.ColumnOf(column.Header))
            .OfType<string>()
            .ToHashSet();
        var events = columns
            .Where(column => column.IsTimes)
            .Select(column => HeaderWords.EventOf(column.Header))
            .OfType<string>()
            .ToHashSet();
        var hasResult = names.Contains("result") || hasSeveralResults;
        return hasResult && names.Contains("control") && !names.Contains("tube") ? Controls
            : hasResult ? Results
            : events.Contains("collected_at")
            || (names.Contains("fill_percent") && names.Contains("tube"))
                ? Specimens
            : null;
    }

    /// <summary>Whether a table that is of no kind holds temperatures of a storage.</summary>
    public static bool IsOfTemperatures(ImmutableArray<ColumnProfile> columns) =>
        columns.Any(column => HeaderWords.IsTemperature(column.Header))
        && columns.Any(column => column.IsTimes);
}

/// <summary>A file with the columns that are proposed for it.</summary>
/// <param name="Bytes">What it holds.</param>
/// <param name="Name">Its name.</param>
/// <param name="Columns">Its columns as they would be read.</param>
/// <param name="Known">Codes that rows may refer to.</param>
/// <param name="Protocol">The protocol.</param>
/// <param name="Queries">Takes what would be asked.</param>
internal sealed record ProposedFile(
    ReadOnlyMemory<byte> Bytes,
    string Name,
    CsvColumns Columns,
    KnownCodes Known,
    ProtocolDraft Protocol,
    QueryList Queries
);
