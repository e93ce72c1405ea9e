namespace StabilityStudy.Pipeline.Proving.Published;

/// <summary>A published data set, as the program carries it: comma separated, with a header line.</summary>
internal sealed class PublishedTable
{
    private readonly string[] _columns;
    private readonly string[][] _rows;

    private PublishedTable(string text)
    {
        var lines = text.Split(
            '\n',
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
        );
        _columns = lines[0].Split(',');
        _rows = [.. lines.Skip(1).Select(line => line.Split(','))];
    }

    /// <summary>Numbers of the rows.</summary>
    public IEnumerable<int> Rows => Enumerable.Range(0, _rows.Length);

    /// <summary>The data set of this name.</summary>
    public static PublishedTable Of(string name)
    {
        using var reader = new StreamReader(ProofResource.Open($"published/{name}.csv"));
        return new PublishedTable(reader.ReadToEnd());
    }

    /// <summary>A cell as it was published.</summary>
    public string Text(int row, string column) => _rows[row][Array.IndexOf(_columns, column)];

    /// <summary>A cell as a number.</summary>
    public double Number(int row, string column) =>
        double.Parse(Text(row, column), NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>A cell as a whole number.</summary>
    public int Whole(int row, string column) =>
        int.Parse(Text(row, column), NumberStyles.Integer, CultureInfo.InvariantCulture);

    /// <summary>A column as numbers.</summary>
    public double[] Numbers(string column) => [.. Rows.Select(row => Number(row, column))];

    /// <summary>A column as decimals.</summary>
    public decimal[] Exact(string column) =>
        [
            .. Rows.Select(row =>
                decimal.Parse(Text(row, column), NumberStyles.Float, CultureInfo.InvariantCulture)
            ),
        ];
}
