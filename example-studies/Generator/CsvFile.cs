namespace ExampleStudies.Generator;

/// <summary>Comma-separated text: a header, line feeds, a field quoted only when it must be (RFC 4180).</summary>
internal static class CsvFile
{
    /// <summary>The text of a file with this header and these rows.</summary>
    /// <exception cref="ArgumentException">A row has another number of fields than the header.</exception>
    public static string Write(
        ImmutableArray<string> header,
        IEnumerable<ImmutableArray<string>> rows
    )
    {
        var lines = new List<string> { string.Join(',', header) };
        foreach (var row in rows)
        {
            if (row.Length != header.Length)
            {
                throw new ArgumentException(
                    "A row must have a field for every column.",
                    nameof(rows)
                );
            }

            lines.Add(string.Join(',', row.Select(Field)));
        }

        return string.Join('\n', lines) + "\n";
    }

    /// <summary>ISO 8601 with seconds and offset.</summary>
    public static string Time(DateTimeOffset time) =>
        time.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);

    private static string Field(string text) =>
        text.AsSpan().IndexOfAny(",\"\n\r") < 0
            ? text
            : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
