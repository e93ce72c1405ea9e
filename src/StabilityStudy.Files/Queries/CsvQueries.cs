using System.Collections.Immutable;
using StabilityStudy.Core.Queries;
using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about the form of the data files: header line, quotes, fields.</summary>
public static class CsvQueries
{
    /// <summary>Nothing in the file.</summary>
    public static readonly QueryKind EmptyFile = new(
        "empty-file",
        Stop,
        "the file has no header line",
        "begin the file with the line of column names"
    );

    /// <summary>A column is missing.</summary>
    public static readonly QueryKind MissingColumn = new(
        "missing-column",
        Stop,
        "a required column is missing",
        "add the column, or correct its name in the header line"
    );

    /// <summary>A column stands twice.</summary>
    public static readonly QueryKind DuplicateColumn = new(
        "duplicate-column",
        Stop,
        "two columns have the same name",
        "rename or remove one of them"
    );

    /// <summary>A column may be misspelt.</summary>
    public static readonly QueryKind ColumnMisspelt = new(
        "column-misspelt",
        WithoutEffect,
        "a column is not used, and its name is nearly that of a known column",
        "correct the name if the known column is meant"
    );

    /// <summary>A column is not used.</summary>
    public static readonly QueryKind ColumnNotUsed = new(
        "column-not-used",
        NotAsPlanned,
        "a column is not known; it is not used and appears in no output",
        "nothing, if that is intended"
    );

    /// <summary>A point among decimal commas.</summary>
    public static readonly QueryKind DecimalPoint = new(
        "decimal-point",
        Stop,
        "a number has a point where study.toml says that decimals follow a comma",
        "write every number of the file with a comma, or correct decimal in study.toml"
    );

    /// <summary>A column of the usual name is not the one that is read.</summary>
    public static readonly QueryKind OwnColumnLeftAside = new(
        "own-column-left-aside",
        LeftAside,
        "the file has a column of the usual name, and study.toml reads another in its place",
        "check that the right column is read"
    );

    /// <summary>Quotes.</summary>
    public static readonly QueryKind CsvQuotes = new(
        "csv-quotes",
        Stop,
        "double quotes are open, or stand inside a field without being doubled",
        "close the quotes; inside a quoted field write each double quote twice"
    );

    /// <summary>Field count.</summary>
    public static readonly QueryKind CsvFieldCount = new(
        "csv-field-count",
        Stop,
        "a line has more or fewer fields than the header line",
        "check the commas of the line; put a field that holds a comma into double quotes"
    );

    /// <summary>A decimal comma.</summary>
    public static readonly QueryKind DecimalComma = new(
        "decimal-comma",
        Stop,
        "a line has one field too many, because a number has a comma as its decimal sign",
        "write the decimal sign as a point, or quote the number and give decimal in study.toml"
    );

    /// <summary>Another sign between fields.</summary>
    public static readonly QueryKind OtherDelimiter = new(
        "other-delimiter",
        Stop,
        "the columns are separated by another sign than a comma",
        "save the file with commas, or give delimiter in study.toml"
    );

    /// <summary>Too long.</summary>
    public static readonly QueryKind RecordTooLong = new(
        "record-too-long",
        Stop,
        "a line is longer than any row of a study",
        "look for an unclosed double quote, or a file of another kind"
    );

    /// <summary>No rows.</summary>
    public static readonly QueryKind NoDataYet = new(
        "no-data-yet",
        Stop,
        "the file has a header line and no rows",
        "nothing until there are data; then check again"
    );

    internal static ImmutableArray<QueryKind> All { get; } =
    [
        EmptyFile,
        MissingColumn,
        DuplicateColumn,
        ColumnMisspelt,
        ColumnNotUsed,
        DecimalPoint,
        OwnColumnLeftAside,
        CsvQuotes,
        CsvFieldCount,
        DecimalComma,
        OtherDelimiter,
        RecordTooLong,
        NoDataYet,
    ];
}
