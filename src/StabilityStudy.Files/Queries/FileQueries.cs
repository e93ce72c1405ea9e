using System.Collections.Immutable;
using StabilityStudy.Core.Queries;
using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about files, keys and single values of protocol.toml and study.toml.</summary>
public static class FileQueries
{
    /// <summary>A file is not there.</summary>
    public static readonly QueryKind MissingFile = new(
        "missing-file",
        Stop,
        "a file of the study is not in the folder",
        "put the file into the folder, or correct its name in study.toml"
    );

    /// <summary>The bytes are not UTF-8.</summary>
    public static readonly QueryKind NotUtf8 = new(
        "not-utf8",
        Stop,
        "the file is not UTF-8 text",
        "save the file again with the encoding UTF-8"
    );

    /// <summary>A setting that would change data unseen.</summary>
    public static readonly QueryKind ValueStandsForNumber = new(
        "value-stands-for-number",
        Stop,
        "a setting would read a number or time of the file as another",
        "remove it, and correct the row in its own file with a deviation that says why"
    );

    /// <summary>A table in the study folder that is not read.</summary>
    public static readonly QueryKind FileNotRead = new(
        "file-not-read",
        LeftAside,
        "the study folder has a table that the study does not read",
        "move it elsewhere, or say in a deviation what it is"
    );

    /// <summary>A text that would push everything else off its page.</summary>
    public static readonly QueryKind TextTooLong = new(
        "text-too-long",
        Stop,
        "a text is longer than its place in the report",
        "shorten it"
    );

    /// <summary>The file breaks the rules of TOML.</summary>
    public static readonly QueryKind TomlSyntax = new(
        "toml-syntax",
        Stop,
        "the line breaks the rules of TOML",
        "correct the line; texts stand in double quotes, decimals have a point"
    );

    /// <summary>A key stands twice.</summary>
    public static readonly QueryKind DuplicateKey = new(
        "duplicate-key",
        Stop,
        "a key is given twice",
        "keep one of them"
    );

    /// <summary>A key is not known.</summary>
    public static readonly QueryKind UnknownKey = new(
        "unknown-key",
        Stop,
        "a key is not known here and would have no effect",
        "correct its spelling, or remove it"
    );

    /// <summary>A key is missing.</summary>
    public static readonly QueryKind MissingKey = new(
        "missing-key",
        Stop,
        "a required key is missing",
        "add the key"
    );

    /// <summary>A value has another type.</summary>
    public static readonly QueryKind WrongType = new(
        "wrong-type",
        Stop,
        "a value is of another type than the key needs",
        "write the value as the message says"
    );

    /// <summary>A text is empty or padded.</summary>
    public static readonly QueryKind EmptyText = new(
        "empty-text",
        Stop,
        "a text is empty, or begins or ends with a space",
        "write the text, without spaces around it"
    );

    /// <summary>A list is empty.</summary>
    public static readonly QueryKind EmptyList = new(
        "empty-list",
        Stop,
        "a list needs at least one entry",
        "add an entry"
    );

    /// <summary>A word is not one of those allowed.</summary>
    public static readonly QueryKind UnknownWord = new(
        "unknown-word",
        Stop,
        "a word is not one of those allowed here",
        "use one of the words listed in the message"
    );

    /// <summary>A number cannot be read.</summary>
    public static readonly QueryKind NotANumber = new(
        "not-a-number",
        Stop,
        "a text is not a plain decimal number",
        "write digits with a decimal point: no comma, space, plus sign or exponent"
    );

    /// <summary>A number is outside its range.</summary>
    public static readonly QueryKind OutOfRange = new(
        "out-of-range",
        Stop,
        "a number is outside the range that makes sense here",
        "correct the number"
    );

    /// <summary>A duration cannot be read.</summary>
    public static readonly QueryKind NotADuration = new(
        "not-a-duration",
        Stop,
        "a text is not a duration",
        "write a whole number, a space and a unit: \"30 min\", \"4 h\" or \"14 d\""
    );

    /// <summary>A date cannot be read.</summary>
    public static readonly QueryKind NotADate = new(
        "not-a-date",
        Stop,
        "a text is not a date of the calendar",
        "write year-month-day: 2026-02-28"
    );

    /// <summary>A control character.</summary>
    public static readonly QueryKind ControlCharacter = new(
        "control-character",
        Stop,
        "a text holds a character that cannot be seen",
        "type the text again"
    );

    /// <summary>The file has a newer format.</summary>
    public static readonly QueryKind UnsupportedFormat = new(
        "unsupported-format",
        Stop,
        "the format number is not one that this version reads",
        "write format = 1, or use a newer version"
    );

    /// <summary>A file name is not plain.</summary>
    public static readonly QueryKind NotAPlainName = new(
        "not-a-plain-name",
        Stop,
        "a file name points out of the study folder",
        "put the file into the study folder and write its name only"
    );

    /// <summary>A time zone is not known.</summary>
    public static readonly QueryKind UnknownTimeZone = new(
        "unknown-time-zone",
        Stop,
        "a time zone is not in the IANA time zone database",
        "write its IANA name, such as \"Europe/Berlin\" or \"America/Chicago\""
    );

    internal static ImmutableArray<QueryKind> All { get; } =
    [
        MissingFile,
        NotUtf8,
        ValueStandsForNumber,
        FileNotRead,
        TextTooLong,
        TomlSyntax,
        DuplicateKey,
        UnknownKey,
        MissingKey,
        WrongType,
        EmptyText,
        EmptyList,
        UnknownWord,
        NotANumber,
        OutOfRange,
        NotADuration,
        NotADate,
        ControlCharacter,
        UnsupportedFormat,
        NotAPlainName,
        UnknownTimeZone,
    ];
}
