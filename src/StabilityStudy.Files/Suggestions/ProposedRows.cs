using System.Text;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Layouts;
using StabilityStudy.Files.OwnTables;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Rows;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Reads a file by what is proposed for it, through the reader of all tables, and takes three rows of it.</summary>
internal sealed class ProposedRows
{
    private const string NotShown = "(not shown)";
    private const int ToMinutes = 16;

    private readonly CsvColumns _columns;
    private readonly ReadOnlyMemory<byte> _bytes;
    private readonly SectionDraft _draft;
    private readonly KnownCodes _known;

    private ProposedRows(
        SectionDraft draft,
        CsvColumns columns,
        ReadOnlyMemory<byte> bytes,
        KnownCodes known
    ) => (_draft, _columns, _bytes, _known) = (draft, columns, bytes, known);

    /// <summary>The proposal with the answers that are tried; null where not even that can be read.</summary>
    public static ProposedRows? Of(SectionDraft draft, StudyBytes files, Surroundings study)
    {
        var queries = new QueryList();
        var text = ReadText.Write(draft, isTrial: true);
        if (
            TomlDocument.Read(Encoding.UTF8.GetBytes(text), StudyBytes.FactsName, queries)
                is not { } entries
            || TomlTable
                .Root(entries, FactsKeys.Table, StudyBytes.FactsName, queries)
                .OptionalTable(FactsKeys.Read)
                is not { } read
        )
        {
            return null;
        }

        var columns =
            draft.Section == LayoutKeys.Pairs.Name
                ? LayoutReader.FindPairs(read, needsZoneRules: true)?.Columns
                : LayoutReader.Apply(read, draft.Ours, needsZoneRules: true);
        return columns?.Layout is { } layout && queries.StopCount == 0
            ? new(
                draft,
                columns,
                files.Files[draft.Table.File],
                study.Known with
                {
                    Flags = new FlagSet(layout.Flags, true),
                }
            )
            : null;
    }

    /// <summary>The tubes that can be read so.</summary>
    public ImmutableArray<TubeRow> Tubes =>
        SpecimenReader.Read(_bytes, _draft.Table.File, _columns, _known, new QueryList()).Rows;

    /// <summary>What would stop even with the answers that are tried, in words; empty for nothing.</summary>
    public string Stops(ProtocolDraft protocol)
    {
        var queries = new QueryList();
        _draft.Kind.Read(new(_bytes, _draft.Table.File, _columns, _known, protocol, queries));
        return string.Join(
            "; ",
            queries
                .ToImmutable()
                .Where(query => query.Severity == Severity.Stop)
                .GroupBy(query => query.Code)
                .OrderByDescending(group => group.Count())
                .Take(3)
                .Select(group =>
                    FormattableString.Invariant($"{group.Count()} [{group.Key}]")
                    + (
                        group.First().Source.Line is { } line
                            ? FormattableString.Invariant($", first on line {line}")
                            : ""
                    )
                )
        );
    }

    /// <summary>Three rows.</summary>
    /// <param name="reading">How times are read.</param>
    /// <param name="other">Another way that is in question; null where none is.</param>
    /// <param name="asOf">The moment of the check.</param>
    public SuggestedRows? Three(TimeReading reading, TimeReading? other, DateTime asOf)
    {
        var count = 0;
        var lines = new List<int>();
        Each(row =>
        {
            count++;
            if (lines.Count == 0 || lines[^1] != row.Line)
            {
                lines.Add(row.Line);
            }
        });
        if (count == 0)
        {
            return null;
        }

        var differing = other is null ? null : MostDiffering(reading, other);
        int[] wanted =
        [
            .. new[] { lines[0], differing?.Line ?? lines[lines.Count / 2], lines[^1] }
                .Distinct()
                .Order(),
        ];
        ImmutableArray<Column> shown = [.. Shown()];
        var rows = ImmutableArray.CreateBuilder<SuggestedRow>();
        Each(row =>
        {
            if (wanted.Contains(row.Line) && (rows.Count == 0 || rows[^1].Line != row.Line))
            {
                rows.Add(
                    new(row.Line, [.. shown.Select(column => Text(row, column, other is not null))])
                );
            }
        });
        return new(
            [
                .. shown
                    .Select(column => column.Name.Replace('_', ' '))
                    .Select(name =>
                        name.EndsWith(" at", StringComparison.Ordinal)
                            ? name.Replace(' ', '_')
                            : name
                    ),
            ],
            rows.ToImmutable(),
            differing is { } found && other is not null
                ?
                [
                    FormattableString.Invariant(
                        $"? as {reading.Order}. As {other.Order} line {found.Line} would be {found.Other:yyyy-MM-dd}{(found.Other.Date > asOf.Date ? ", after today" : "")}."
                    ),
                ]
                : []
        );
    }

    private (int Line, DateTime Other)? MostDiffering(TimeReading reading, TimeReading other)
    {
        var columns = _draft.TimesRead;
        if (columns.IsEmpty)
        {
            return null;
        }

        var (first, second) = (
            TimeColumns.Read(columns, reading),
            TimeColumns.Read(columns, other)
        );
        return first
            .Select((time, i) => (Time: time, Other: second[i], _draft.Table.Shape.Rows[i].Number))
            .Where(item => item is { Time: not null, Other: not null })
            .OrderByDescending(item => (item.Time!.Value - item.Other!.Value).Duration())
            .Select(item => ((int, DateTime)?)(item.Number, item.Other!.Value))
            .FirstOrDefault();
    }

    private IEnumerable<Column> Shown() =>
        _draft
            .Kind.Shown.Select(name => _columns.All.FirstOrDefault(column => column.Name == name))
            .OfType<Column>();

    private static string Text(CsvRow row, Column column, bool isDoubtful)
    {
        var text = row.Field(column);
        return column.Content == ColumnContent.Times
                ? (text.Length >= ToMinutes ? text[..ToMinutes].Replace('T', ' ') : text)
                    + (isDoubtful ? " ?" : "")
            : column.IsOfPersons && IdentityShape.Of(text) is not null ? NotShown
            : column.Name == "result"
            && text.Length > 0
            && row.Field(ResultColumns.Unit) is { Length: > 0 } unit
            && char.IsAsciiDigit(text[^1])
                ? $"{text} {unit}"
            : text;
    }

    private void Each(Action<CsvRow> read) =>
        DataTable.Read(_bytes, _draft.Table.File, _columns, _known, new QueryList(), read, 0);
}
