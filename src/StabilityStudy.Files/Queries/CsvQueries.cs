using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about the form of the data files: header line, quotes, fields.</summary>
internal static class CsvQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind EmptyFile = Kinds.Add("empty-file", Stop, "the file has no header line", "begin the file with the line of column names");
    internal static readonly QueryKind MissingColumn = Kinds.Add("missing-column", Stop, "a required column is missing", "add the column, or correct its name in the header line");
    internal static readonly QueryKind DuplicateColumn = Kinds.Add("duplicate-column", Stop, "two columns have the same name", "rename or remove one of them");
    internal static readonly QueryKind ColumnMisspelt = Kinds.Add(
        "column-misspelt",
        WithoutEffect,
        "a column is not used, and its name is nearly that of a known column",
        "correct the name if the known column is meant",
        query =>
            query.Values.Items is [var meant]
                ? query with
                {
                    Text =
                        $"The column \"{query.Observed}\" is not used. Did you mean \"{meant}\"?",
                    Advice = $"Rename it to \"{meant}\" if that is meant.",
                }
                : null
    );
    internal static readonly QueryKind ColumnNotUsed = Kinds.Add(
        "column-not-used",
        NotAsPlanned,
        "a column is not known; it is not used and appears in no output",
        "nothing, if that is intended",
        StatedQuery.Words(query => $"The column \"{query.Observed}\" is not known; it is not used and appears in no output.")
    );
    internal static readonly QueryKind PersonalColumn = Kinds.Add("personal-column", Stop, "a column tells who people are", "export the file without it, or name the columns that are read in study.toml");
    internal static readonly QueryKind DecimalPoint = Kinds.Add("decimal-point", Stop, "a number has a point where study.toml says that decimals follow a comma", "write every number of the file with a comma, or correct decimal in study.toml");
    internal static readonly QueryKind OwnColumnLeftAside = Kinds.Add(
        "own-column-left-aside",
        LeftAside,
        "the file has a column of the usual name, and study.toml reads another in its place",
        "check that the right column is read",
        query =>
            query.Values.Items is [var read]
                ? query with
                {
                    Text =
                        $"The file has a column \"{query.Observed}\", and study.toml reads \"{read}\" in its place.",
                    Advice =
                        "Check that the right column is read, and say in a deviation why it is not the other.",
                }
                : null
    );
    internal static readonly QueryKind CsvQuotes = Kinds.Add("csv-quotes", Stop, "double quotes are open, or stand inside a field without being doubled", "close the quotes; inside a quoted field write each double quote twice");
    internal static readonly QueryKind CsvFieldCount = Kinds.Add("csv-field-count", Stop, "a line has more or fewer fields than the header line", "check the commas of the line; put a field that holds a comma into double quotes");
    internal static readonly QueryKind DecimalComma = Kinds.Add("decimal-comma", Stop, "a line has one field too many, because a number has a comma as its decimal sign", "write the decimal sign as a point, or quote the number and give decimal in study.toml");
    internal static readonly QueryKind OtherDelimiter = Kinds.Add("other-delimiter", Stop, "the columns are separated by another sign than a comma", "save the file with commas, or give delimiter in study.toml");
    internal static readonly QueryKind RecordTooLong = Kinds.Add("record-too-long", Stop, "a line is longer than any row of a study", "look for an unclosed double quote, or a file of another kind");
    internal static readonly QueryKind LooksLikeFormula = Kinds.Add("looks-like-formula", Stop, "a text begins as a formula of a spreadsheet does: with =, @, a tab, or with + or - before anything but a number", "begin it with a letter or a digit");
    internal static readonly QueryKind NoDataYet = Kinds.Add("no-data-yet", Stop, "the file has a header line and no rows", "nothing until there are data; then check again");
    internal static readonly QueryKind HeaderStandsEarlier = Kinds.Add("header-stands-earlier", Stop, "the header also stands above the line that study.toml states, so that rows would not be read", "correct header_line");
    internal static readonly QueryKind HeaderChanges = Kinds.Add("header-changes", Stop, "a further block of rows has the columns in another order", "put the block into a file of its own");
    internal static readonly QueryKind FooterLooksLikeRow = Kinds.Add("footer-looks-like-row", Stop, "a line that study.toml leaves out at the end is filled in like a row", "correct footer_lines");
    // csharpier-ignore-end
}
