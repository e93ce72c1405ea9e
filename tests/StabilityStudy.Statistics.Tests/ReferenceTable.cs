namespace StabilityStudy.Statistics.Tests;

/// <summary>A table of tests/ReferenceData: comma separated, a header line, lines beginning with # are its source.</summary>
public sealed class ReferenceTable
{
    private readonly string[] _columns;
    private readonly string[][] _rows;

    private ReferenceTable(string[] columns, string[][] rows)
    {
        _columns = columns;
        _rows = rows;
    }

    public int Count => _rows.Length;

    public static ReferenceTable Read(string name)
    {
        var path = Path.Combine(AppContext.BaseDirectory, "ReferenceData", name);
        var lines = File.ReadLines(path).Where(l => !l.StartsWith('#')).ToArray();
        var rows = lines.Skip(1).Select(l => l.Split(',')).ToArray();
        Assert.NotEmpty(rows);
        return new ReferenceTable(lines[0].Split(','), rows);
    }

    public string Text(int row, string column)
    {
        var index = Array.IndexOf(_columns, column);
        Assert.True(index >= 0, $"There is no column {column}.");
        return _rows[row][index];
    }

    public bool Says(int row, string column, string text) =>
        string.Equals(Text(row, column), text, StringComparison.Ordinal);

    public double Number(int row, string column) =>
        double.Parse(Text(row, column), NumberStyles.Float, CultureInfo.InvariantCulture);

    public int Whole(int row, string column) => (int)Number(row, column);

    public decimal Exact(int row, string column) =>
        decimal.Parse(Text(row, column), NumberStyles.Float, CultureInfo.InvariantCulture);

    public double[] Column(string column) =>
        [.. Enumerable.Range(0, Count).Select(row => Number(row, column))];
}
