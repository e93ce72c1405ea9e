using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.OwnTables;

/// <summary>Leaves aside the rows of analytes that study.toml lists as not of the study, and counts them.</summary>
internal sealed class OtherAnalytes(
    CsvColumns columns,
    FileLayout layout,
    string fileName,
    QueryList queries
)
{
    private readonly Column? _analyte = columns.All.FirstOrDefault(column =>
        column.Name == "analyte"
    );
    private readonly SortedDictionary<string, int> _counts = new(StringComparer.Ordinal);

    /// <summary>Whether a row is one of them.</summary>
    public bool Has(LaidOutFields fields)
    {
        if (layout.OtherAnalytes.IsEmpty || _analyte is null)
        {
            return false;
        }

        var code = layout.Trimmed(fields.Observed(_analyte));
        if (!layout.OtherAnalytes.Contains(code))
        {
            return false;
        }

        _counts[code] = _counts.GetValueOrDefault(code) + 1;
        return true;
    }

    /// <summary>Tells how many there were.</summary>
    public void Conclude()
    {
        foreach (var (code, count) in _counts)
        {
            queries.AddOwn(
                MessageQueries.RowsLeftAside,
                new QuerySource(fileName, null, null),
                "",
                "analyte",
                code,
                count.ToString(CultureInfo.InvariantCulture)
            );
        }
    }
}
