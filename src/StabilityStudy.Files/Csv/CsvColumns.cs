using System.Text;

namespace StabilityStudy.Files.Csv;

/// <summary>What a file must and may have.</summary>
/// <param name="Section">Name of the table under [read] in study.toml that describes such a file.</param>
/// <param name="All">Every known column, in the order in which the canonical file has them.</param>
internal sealed record CsvColumns(string Section, ImmutableArray<Column> All)
{
    /// <summary>Longer than the header line of any canonical file.</summary>
    private const int LongestHeader = 4096;

    /// <summary>The column of a canonical file that holds the line in the facility's file.</summary>
    public static readonly Column<int?> SourceRow = new(
        "source_row",
        Need.Required,
        ColumnForms.Whole(NumberRange.Line) with
        {
            IsOwnToRow = true,
        },
        "line in the facility's file",
        "2"
    );

    /// <summary>How the facility's file differs; null when it does not.</summary>
    public FileLayout? Layout { get; init; }

    /// <summary>The names of the columns.</summary>
    public ImmutableArray<string> Names { get; } = [.. All.Select(column => column.Name)];

    /// <summary>The names of those that the file must have.</summary>
    public ImmutableArray<string> Required { get; } =
    [
        .. All.Where(column =>
                column.Need == Need.Required || (All[^1] == SourceRow && !column.IsLater)
            )
            .Select(column => column.Name),
    ];

    /// <summary>The same with the line in the facility's file, as a canonical file has it; it has every column but those of later versions that no row has a value in.</summary>
    public CsvColumns WithSourceRow() => new(Section, [.. All, SourceRow]);

    /// <summary>Whether a file begins with exactly the header line of a canonical file with these columns.</summary>
    public bool IsCanonical(ReadOnlySpan<byte> utf8)
    {
        var end = utf8.IndexOfAny((byte)'\n', (byte)'\r');
        if (end < 0 || end > LongestHeader)
        {
            return false;
        }

        var header = Encoding.UTF8.GetString(utf8[..end]);
        var given = header.Split(',');
        return header
            == string.Join(
                ',',
                WithSourceRow()
                    .All.Where(column => !column.IsLater || given.Contains(column.Name))
                    .Select(column => column.Name)
            );
    }
}
