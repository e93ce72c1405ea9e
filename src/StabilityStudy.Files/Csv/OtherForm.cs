namespace StabilityStudy.Files.Csv;

/// <summary>Names what a data file is when it is not UTF-8 text with commas between the fields.</summary>
internal static class OtherForm
{
    private const int SniffedBytes = 64;

    /// <summary>Raises a query when the bytes are not UTF-8 text.</summary>
    /// <returns>Whether they are not.</returns>
    public static bool ReportEncoding(
        ReadOnlySpan<byte> bytes,
        string fileName,
        string section,
        QueryList queries
    )
    {
        if (ReportUtf16(bytes, fileName, section, queries))
        {
            return true;
        }

        if (Utf8Text.IsValid(bytes))
        {
            return false;
        }

        queries.Add(
            FileQueries.NotUtf8,
            new QuerySource(fileName, Utf8Text.FirstInvalidLine(bytes), null),
            "",
            "This line is not UTF-8 text; it may be Windows-1252.",
            $"Save the file again as CSV with the encoding UTF-8, or write encoding = \"windows-1252\" under [read.{section}] in study.toml."
        );
        return true;
    }

    /// <summary>Raises a query when the bytes are UTF-16 text.</summary>
    /// <returns>Whether they are.</returns>
    public static bool ReportUtf16(
        ReadOnlySpan<byte> bytes,
        string fileName,
        string section,
        QueryList queries
    )
    {
        if (
            bytes is not ([0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
            && bytes[..Math.Min(bytes.Length, SniffedBytes)].Count((byte)0) <= SniffedBytes / 4
        )
        {
            return false;
        }

        queries.Add(
            FileQueries.NotUtf8,
            new QuerySource(fileName, null, null),
            "",
            "The file is UTF-16 text, not UTF-8.",
            $"Save the file again with the encoding UTF-8, or write encoding = \"utf-16\" under [read.{section}] in study.toml."
        );
        return true;
    }

    /// <summary>Raises a query when a header line of one field holds another sign between its names.</summary>
    /// <returns>Whether it does.</returns>
    public static bool ReportDelimiter(
        string[] header,
        int line,
        string fileName,
        string section,
        QueryList queries,
        char delimiter = ','
    )
    {
        if (
            header.Length > 1
            || Separator(header[0]) is not var (sign, word, written)
            || sign == delimiter
        )
        {
            return false;
        }

        queries.Add(
            CsvQueries.OtherDelimiter,
            new QuerySource(fileName, line, null),
            sign.ToString(),
            $"The columns are separated by {word}, not by {WordOf(delimiter)}.",
            $"Save the file again with commas, or write delimiter = \"{written}\" under [read.{section}] in study.toml."
        );
        return true;
    }

    /// <summary>The signs between fields, in words: "semicolons".</summary>
    public static string WordOf(char delimiter) =>
        delimiter switch
        {
            ';' => "semicolons",
            '\t' => "tabs",
            '|' => "vertical bars",
            _ => "commas",
        };

    /// <summary>One of them: "a semicolon".</summary>
    public static string OneOf(char delimiter) => "a " + WordOf(delimiter)[..^1];

    private static (char Sign, string Word, string Written)? Separator(string header) =>
        header.Contains(';', StringComparison.Ordinal) ? (';', WordOf(';'), ";")
        : header.Contains('\t', StringComparison.Ordinal) ? ('\t', WordOf('\t'), "tab")
        : header.Contains('|', StringComparison.Ordinal) ? ('|', WordOf('|'), "|")
        : header.Contains(',', StringComparison.Ordinal) ? (',', WordOf(','), ",")
        : null;
}
