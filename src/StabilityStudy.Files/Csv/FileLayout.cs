using System.Collections.Frozen;

namespace StabilityStudy.Files.Csv;

/// <summary>How a facility's file differs from the one that is read without any setting.</summary>
/// <param name="Delimiter">Sign between the fields.</param>
/// <param name="HasDecimalComma">Whether numbers have a comma as their decimal sign.</param>
/// <param name="Encoding">How the characters are stored.</param>
/// <param name="DateFormat">How times are written; null for ISO 8601.</param>
/// <param name="Columns">Our column → the facility's header.</param>
/// <param name="Values">Our column → the facility's word → ours.</param>
/// <param name="Constants">Our column → the value that every row has.</param>
internal sealed record FileLayout(
    char Delimiter,
    bool HasDecimalComma,
    FileEncoding Encoding,
    string? DateFormat,
    FrozenDictionary<string, string> Columns,
    FrozenDictionary<string, FrozenDictionary<string, string>> Values,
    FrozenDictionary<string, string> Constants
)
{
    private const string TimeForm = "yyyy-MM-ddTHH:mm:ss";

    /// <summary>Whether a column holds numbers or times.</summary>
    public static bool IsMeasured(Column column) =>
        HasNumbers(column) || column.Content == ColumnContent.Times;

    /// <summary>The header that a file must have for one of our columns.</summary>
    public string HeaderOf(string column) => Columns.GetValueOrDefault(column, column);

    /// <summary>Whether a number has a point where study.toml says that decimals follow a comma: it may mark thousands.</summary>
    public bool HasOtherPoint(Column column, ReadOnlySpan<char> text) =>
        HasDecimalComma
        && HasNumbers(column)
        && text.Contains('.')
        && !text.Contains(',')
        && text.ContainsAnyInRange('0', '9');

    /// <summary>A field as it would stand in a file without any setting; what does not fit the setting is left as it is.</summary>
    public string Translate(Column column, string text)
    {
        if (Values.TryGetValue(column.Name, out var words) && words.TryGetValue(text, out var word))
        {
            return word;
        }

        if (
            DateFormat is not null
            && column.Content == ColumnContent.Times
            && DateTime.TryParseExact(
                text,
                DateFormat,
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var time
            )
        )
        {
            return time.ToString(TimeForm, CultureInfo.InvariantCulture);
        }

        return
            HasDecimalComma && HasNumbers(column) && !text.Contains('.', StringComparison.Ordinal)
            ? text.Replace(',', '.')
            : text;
    }

    private static bool HasNumbers(Column column) =>
        column.Content is ColumnContent.Numbers or ColumnContent.Results;
}

/// <summary>How the characters of a file are stored.</summary>
internal enum FileEncoding
{
    /// <summary>UTF-8.</summary>
    Utf8,

    /// <summary>UTF-16, the byte order by its mark, else little-endian.</summary>
    Utf16,

    /// <summary>Latin-1 (ISO 8859-1).</summary>
    Latin1,

    /// <summary>Windows-1252: Latin-1 with further signs, as spreadsheets write it.</summary>
    Windows1252,
}
