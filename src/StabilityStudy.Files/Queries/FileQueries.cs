using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about files, keys and single values of protocol.toml and study.toml.</summary>
internal static class FileQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind MissingFile = Kinds.Add("missing-file", Stop, "a file of the study is not in the folder", "put the file into the folder, or correct its name in study.toml");
    internal static readonly QueryKind NotUtf8 = Kinds.Add("not-utf8", Stop, "the file is not UTF-8 text", "save the file again with the encoding UTF-8");
    internal static readonly QueryKind FileTooLarge = Kinds.Add("file-too-large", Stop, "a file is larger than any of a study", "put the right file in its place");
    internal static readonly QueryKind ValueStandsForNumber = Kinds.Add("value-stands-for-number", Stop, "a setting would read a number or time of the file as another", "remove it, and correct the row in its own file with a deviation that says why");
    internal static readonly QueryKind FileNotRead = Kinds.Add(
        "file-not-read",
        LeftAside,
        "the study folder has a table that the study does not read",
        "move it elsewhere, or say in a deviation what it is",
        StatedQuery.Words(query => $"The study folder has a table \"{query.Source.File}\" that this study does not read.")
    );
    internal static readonly QueryKind TextTooLong = Kinds.Add("text-too-long", Stop, "a text is longer than its place in the report", "shorten it");
    internal static readonly QueryKind TomlSyntax = Kinds.Add("toml-syntax", Stop, "the line breaks the rules of TOML", "correct the line; texts stand in double quotes, decimals have a point");
    internal static readonly QueryKind DuplicateKey = Kinds.Add("duplicate-key", Stop, "a key is given twice", "keep one of them");
    internal static readonly QueryKind UnknownKey = Kinds.Add("unknown-key", Stop, "a key is not known here and would have no effect", "correct its spelling, or remove it");
    internal static readonly QueryKind MissingKey = Kinds.Add("missing-key", Stop, "a required key is missing", "add the key");
    internal static readonly QueryKind WrongType = Kinds.Add("wrong-type", Stop, "a value is of another type than the key needs", "write the value as the message says");
    internal static readonly QueryKind EmptyText = Kinds.Add("empty-text", Stop, "a text is empty, or begins or ends with a space", "write the text, without spaces around it");
    internal static readonly QueryKind EmptyList = Kinds.Add("empty-list", Stop, "a list needs at least one entry", "add an entry");
    internal static readonly QueryKind UnknownWord = Kinds.Add("unknown-word", Stop, "a word is not one of those allowed here", "use one of the words listed in the message");
    internal static readonly QueryKind NotANumber = Kinds.Add("not-a-number", Stop, "a text is not a plain decimal number", "write digits with a decimal point: no comma, space, plus sign or exponent");
    internal static readonly QueryKind OutOfRange = Kinds.Add("out-of-range", Stop, "a number is outside the range that makes sense here", "correct the number");
    internal static readonly QueryKind NotADuration = Kinds.Add("not-a-duration", Stop, "a text is not a duration", "write a whole number, a space and a unit: \"30 min\", \"4 h\" or \"14 d\"");
    internal static readonly QueryKind NotADate = Kinds.Add("not-a-date", Stop, "a text is not a date of the calendar", "write year-month-day: 2026-02-28");
    internal static readonly QueryKind NotADigest = Kinds.Add("not-a-digest", Stop, "a text is not an input digest or its beginning", "copy the digits after \"inputs\" at the foot of a page of the report that is meant, at least sixteen");
    internal static readonly QueryKind ControlCharacter = Kinds.Add("control-character", Stop, "a text holds a character that cannot be seen", "type the text again");
    internal static readonly QueryKind UnsupportedFormat = Kinds.Add("unsupported-format", Stop, "the format number is not one that this version reads", "write format = 1, or use a newer version");
    internal static readonly QueryKind NotAPlainName = Kinds.Add("not-a-plain-name", Stop, "a file name points out of the study folder", "put the file into the study folder and write its name only");
    internal static readonly QueryKind UnknownTimeZone = Kinds.Add("unknown-time-zone", Stop, "a time zone is not in the IANA time zone database", "write its IANA name, such as \"Europe/Berlin\" or \"America/Chicago\"");
    internal static readonly QueryKind NotAWorkbook = Kinds.Add("not-a-workbook", Stop, "a file cannot be read as a workbook (.xlsx)", "save it again as .xlsx without a password, or save the sheet as CSV");
    internal static readonly QueryKind SheetNotStated = Kinds.Add("sheet-not-stated", Stop, "a workbook has several sheets, or not the one that study.toml names", "write sheet with the name of the right one");
    internal static readonly QueryKind FormulaWithoutValue = Kinds.Add("formula-without-value", Stop, "a formula of a workbook has no stored value, so that its cell would be read as empty", "open the workbook in a spreadsheet program and save it again");
    internal static readonly QueryKind UnitMappedAcross = Kinds.Add("unit-mapped-across", Stop, "a setting would read one unit as another of different size or kind", "use convert within a kind of quantity; otherwise remove it");
    internal static readonly QueryKind HiddenCells = Kinds.Add(
        "hidden-cells",
        LeftAside,
        "a sheet has hidden rows or columns; they are read like the others",
        "look whether they belong to the study",
        query =>
            query.Values.Items is [("row" or "column") and var what, var first, var count]
                ? query with
                {
                    Text = count == "1"
                        ? $"The {what} {first} of the sheet is hidden; it is read like the others."
                        : $"{count} {what}s of the sheet are hidden, the first of them {what} {first}; they are read like the others.",
                    Advice =
                        $"Show the {what}s and see whether they belong to the study; a filter or a person may have hidden them.",
                }
                : null
    );
    // csharpier-ignore-end

    /// <summary>Raises a query about a file of too many bytes.</summary>
    public static void AddTooLarge(QueryList queries, string fileName, long most) =>
        queries.Add(
            FileTooLarge,
            new QuerySource(fileName, null, null),
            "",
            $"The file is larger than {StudyLimits.InWords(most)}."
        );

    /// <summary>Raises a query about a table of too many lines.</summary>
    public static void AddTooManyLines(QueryList queries, string fileName) =>
        queries.Add(
            FileTooLarge,
            new QuerySource(fileName, null, null),
            "",
            FormattableString.Invariant($"The file has more than {StudyLimits.TableLines} lines.")
        );
}
