using System.Collections.Frozen;
using StabilityStudy.Files.Messages;
using StabilityStudy.Files.Tables;
using StabilityStudy.Files.Units;

namespace StabilityStudy.Files.Csv;

/// <summary>How a facility's file differs from the one that is read without any setting.</summary>
/// <param name="Delimiter">Sign between the fields.</param>
/// <param name="HasDecimalComma">Whether numbers have a comma as their decimal sign.</param>
/// <param name="Encoding">How the characters are stored.</param>
/// <param name="DateFormat">How times are written; null for ISO 8601.</param>
/// <param name="Columns">Our column → the facility's headers, of which the texts are joined by a space.</param>
/// <param name="Values">Our column → the facility's word → ours.</param>
/// <param name="Constants">Our column → the value that every row has.</param>
internal sealed record FileLayout(
    char Delimiter,
    bool HasDecimalComma,
    FileEncoding Encoding,
    string? DateFormat,
    FrozenDictionary<string, ImmutableArray<string>> Columns,
    FrozenDictionary<string, FrozenDictionary<string, string>> Values,
    FrozenDictionary<string, string> Constants
)
{
    /// <summary>A workbook of which study.toml says nothing.</summary>
    public static readonly FileLayout Plain = new(
        ',',
        false,
        FileEncoding.Utf8,
        null,
        FrozenDictionary<string, ImmutableArray<string>>.Empty,
        FrozenDictionary<string, FrozenDictionary<string, string>>.Empty,
        FrozenDictionary<string, string>.Empty
    );

    /// <summary>Name of the file; null where [files] or its usual name says it.</summary>
    public string? File { get; init; }

    /// <summary>Where the table stands in the file.</summary>
    public TableForm Form { get; init; } = new();

    /// <summary>The results of each row, where there are several; empty for one.</summary>
    public ImmutableArray<TablePart> Parts { get; init; } = [];

    /// <summary>The first year that two digits can mean; null where years have four.</summary>
    public int? Century { get; init; }

    /// <summary>The zone of this file's times; null for that of the study.</summary>
    public string? ZoneName { get; init; }

    /// <summary>The rules of that zone; null where times are not to be read.</summary>
    public TimeZoneInfo? ZoneRules { get; init; }

    /// <summary>How one code holds specimen and tube; null where each has a column.</summary>
    public TubePattern? TubePattern { get; init; }

    /// <summary>Whether the code of the tube is the whole code that the pattern splits.</summary>
    public bool KeepsWholeCode { get; init; }

    /// <summary>The tube of a specimen that is tested at a time point; empty where none or more than one is stated.</summary>
    public string TubeAt(string specimen, string timePoint)
    {
        var found = "";
        foreach (var (codes, point) in TimePointOfTube)
        {
            var star = codes.IndexOf('*', StringComparison.Ordinal);
            if (
                point != timePoint
                || (star > 0 && !specimen.StartsWith(codes[..star], StringComparison.Ordinal))
            )
            {
                continue;
            }

            if (found.Length > 0)
            {
                return "";
            }

            found = star < 0 ? codes : specimen + codes[(star + 1)..];
        }

        return found;
    }

    /// <summary>Tube, or codes of tubes with a star → the time point at which it is tested, where no column says so.</summary>
    public FrozenDictionary<string, string> TimePointOfTube { get; init; } =
        FrozenDictionary<string, string>.Empty;

    /// <summary>The time point at which a tube is tested; the tube itself where none or more than one is stated, which is no time point then.</summary>
    /// <param name="code">The whole code.</param>
    /// <param name="tube">The part that tells tubes of a specimen apart.</param>
    public string TimePointOf(string code, string tube)
    {
        if (TimePointOfTube.TryGetValue(tube, out var stated))
        {
            return stated;
        }

        string? found = null;
        foreach (var (codes, point) in TimePointOfTube)
        {
            if (
                codes.IndexOf('*', StringComparison.Ordinal) is >= 0 and var star
                && code.Length >= codes.Length - 1
                && code.AsSpan().StartsWith(codes.AsSpan(0, star), StringComparison.Ordinal)
                && code.AsSpan().EndsWith(codes.AsSpan(star + 1), StringComparison.Ordinal)
            )
            {
                if (found is not null && found != point)
                {
                    return tube;
                }

                found = point;
            }
        }

        return found ?? tube;
    }

    /// <summary>Unit of the file, as ours → how its results become those of another unit.</summary>
    public FrozenDictionary<string, UnitConversion> Conversions { get; init; } =
        FrozenDictionary<string, UnitConversion>.Empty;

    /// <summary>The instrument's flag → what it means.</summary>
    public FrozenDictionary<string, FlagMeaning> Flags { get; init; } =
        FrozenDictionary<string, FlagMeaning>.Empty;

    /// <summary>Status of a result of a message → what becomes of it.</summary>
    public FrozenDictionary<string, StatusMeaning> Statuses { get; init; } =
        FrozenDictionary<string, StatusMeaning>.Empty;

    /// <summary>Codes of analytes that are not of this study, whose rows are left aside.</summary>
    public ImmutableArray<string> OtherAnalytes { get; init; } = [];

    /// <summary>Whether times of tubes are taken from the messages of results.</summary>
    public bool TimesFromMessages { get; init; }

    /// <summary>Whether spaces around a field are no part of it.</summary>
    public bool TrimsSpaces { get; init; }

    /// <summary>Names of further files of the same form.</summary>
    public ImmutableArray<string> MoreFiles { get; init; } = [];

    /// <summary>Whether a column holds numbers or times.</summary>
    public static bool IsMeasured(Column column) =>
        HasNumbers(column) || column.Content == ColumnContent.Times;

    /// <summary>Whether a column holds results, or limits of results, which are in the unit of the row.</summary>
    public static bool IsInUnit(Column column) =>
        column.Content == ColumnContent.Results
        || column.Name is "target" or "allowed_low" or "allowed_high";

    /// <summary>The headers that a file must have for one of our columns.</summary>
    public ImmutableArray<string> HeadersOf(string column) =>
        Columns.GetValueOrDefault(column, [column]);

    /// <summary>The same in words.</summary>
    public string HeaderOf(string column) => string.Join(" and ", HeadersOf(column));

    /// <summary>A field without the spaces that are no part of it.</summary>
    public string Trimmed(string text) => TrimsSpaces ? text.Trim() : text;

    /// <summary>Our word for a word of a column; null where study.toml states none.</summary>
    public string? WordFor(string column, string text) =>
        Values.TryGetValue(column, out var words) && words.TryGetValue(Trimmed(text), out var word)
            ? word
            : null;

    /// <summary>Our word for a word of a column, or the word itself.</summary>
    public string WordOf(string column, string text) => WordFor(column, text) ?? Trimmed(text);

    /// <summary>The unit in which results are after their conversion.</summary>
    public string UnitReadAs(string stated)
    {
        var unit = WordOf("unit", stated);
        return Conversions.TryGetValue(unit, out var conversion) ? conversion.To : unit;
    }

    /// <summary>Whether a number has a point where study.toml says that decimals follow a comma: it may mark thousands.</summary>
    public bool HasOtherPoint(Column column, ReadOnlySpan<char> text) =>
        HasDecimalComma
        && HasNumbers(column)
        && text.Contains('.')
        && !text.Contains(',')
        && text.ContainsAnyInRange('0', '9');

    /// <summary>A field of words or numbers as it would stand in a file without any setting; what does not fit the setting is left as it is.</summary>
    public string Translate(Column column, string stored)
    {
        var text = Trimmed(stored);
        return WordFor(column.Name, text)
            ?? (
                HasDecimalComma
                && HasNumbers(column)
                && !text.Contains('.', StringComparison.Ordinal)
                    ? text.Replace(',', '.')
                    : text
            );
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
