using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using static StabilityStudy.Files.Tests.OwnTables.DeliveredData;
using static StabilityStudy.Files.Tests.OwnTables.WorkbookBytes;

namespace StabilityStudy.Files.Tests.OwnTables;

/// <summary>A file that could be read wrongly, and the query in which it ends.</summary>
public sealed record Misreading(string Name, StudyBytes Files, string Code, string Says)
{
    /// <summary>What the query does to the report.</summary>
    public Severity Severity { get; init; } = Severity.Stop;

    /// <inheritdoc/>
    public override string ToString() => Name;

    /// <summary>Reads the files and asks for the query.</summary>
    /// <returns>Every query.</returns>
    internal ImmutableArray<DataQuery> Require()
    {
        var queries = StudyIntake.Read(Files).Queries;

        var found = queries.FirstOrDefault(query => query.Code == Code);
        Assert.True(
            found is not null,
            $"found {string.Join(" | ", queries.Select(query => $"{query.Code} {query.Source}: {query.Message}"))}"
        );
        Assert.Equal(Severity, found.Severity);
        Assert.Contains(Says, found.Message + " " + found.Action, StringComparison.Ordinal);
        return queries;
    }
}

/// <summary>Files that could be read wrongly.</summary>
internal static class MisreadingCases
{
    private const string Export = """
        [read.results]
        delimiter = ";"
        date_format = "dd.MM.yyyy HH:mm"
        columns = { specimen = "Probe", tube = "Gefäß", time_point = "Zeit", tested_at = "Gemessen", result = "Ergebnis" }
        constants = { analyte = "aPTT", unit = "s" }
        """;

    private static readonly string[] Headers =
    [
        "specimen",
        "tube",
        "analyte",
        "time_point",
        "tested_at",
        "result",
        "unit",
    ];

    public static IEnumerable<Misreading> All =>
        [.. OfText, .. OfTables, .. OfUnits, .. OfRows, .. OfWorkbooks, .. OfBrokenWorkbooks];

    private static IEnumerable<Misreading> OfText =>
        [
            new(
                "a decimal comma that nobody stated",
                Text(";31,4", ";31,4"),
                "unknown-result",
                "decimal = \",\""
            ),
            new(
                "a point that may mark thousands",
                Text(
                    ";31,4",
                    ";1.031",
                    Export.Replace(
                        "[read.results]",
                        "[read.results]\ndecimal = \",\"",
                        StringComparison.Ordinal
                    )
                ),
                "decimal-point",
                "a thousand times"
            ),
            new("a number that became a date", Text(";31,4", ";12. Jan"), "became-a-date", "12.1"),
            new(
                "a number that became an English date",
                Text(";31,4", ";2-Mar"),
                "became-a-date",
                "export the file again"
            ),
            new(
                "a result that is a whole date",
                Text(";31,4", ";12.01.2026"),
                "became-a-date",
                "lost"
            ),
            new(
                "two digits of a year without a century",
                Text(";31,4", ";31.4", Export.Replace("yyyy", "yy", StringComparison.Ordinal)),
                "missing-key",
                "century = 2000"
            ),
            new(
                "month and day exchanged",
                Text(
                    ";31,4",
                    ";31.4",
                    Export.Replace("dd.MM.yyyy", "MM.dd.yyyy", StringComparison.Ordinal)
                ),
                "not-a-time",
                "2 rows"
            ),
            new("a code in exponent", Text("N007", "1.23E+09"), "code-in-exponent", "loses digits"),
            new(
                "a code without its zeros",
                Text(
                    "N007;A;baseline;05.03.2026 08:15;31,4",
                    "N7;A;baseline;05.03.2026 08:15;31.4"
                ),
                "unknown-tube",
                "Did you mean \"N007\""
            ),
            new(
                "a code without its letters",
                Text("N007;A;baseline;05.03.2026 08:15;31,4", "7;A;baseline;05.03.2026 08:15;31.4"),
                "unknown-tube",
                "Did you mean \"N007\""
            ),
            new(
                "a code that does not split",
                Text(
                    "N007",
                    "N007",
                    Export.Replace(
                        "[read.results]",
                        "[read.results]\ntube_pattern = \"{specimen}-{tube}\"",
                        StringComparison.Ordinal
                    )
                ),
                "tube-pattern-failed",
                "in 3 rows"
            ),
        ];

    private static IEnumerable<Misreading> OfTables =>
        [
            new(
                "a footer that is a row",
                Text(
                    ";31,4",
                    ";31.4",
                    Export.Replace(
                        "[read.results]",
                        "[read.results]\nfooter_lines = 1",
                        StringComparison.Ordinal
                    )
                ),
                "footer-looks-like-row",
                "footer_lines"
            ),
            new(
                "a header line below the first block",
                Text(
                    "N008;A",
                    "Probe;Gefäß;Zeit;Gemessen;Ergebnis\nN008;A",
                    Export.Replace(
                        "[read.results]",
                        "[read.results]\nheader_line = 3",
                        StringComparison.Ordinal
                    )
                ),
                "header-stands-earlier",
                "line 1"
            ),
            new(
                "a second block with other columns",
                Text("N008;A", "Probe;Gefäß;Zeit;Ergebnis;Gemessen\nN008;A"),
                "header-changes",
                "another form"
            ),
            new(
                "a preamble that nobody stated",
                Text("Probe;", "Run;1;2;3;4\n\nProbe;"),
                "missing-column",
                "header_line = 3"
            ),
            new(
                "a table with several results a row",
                WithResults(
                    "wide.csv",
                    GoodStudy.Utf8("Probe,aPTT 0 h,aPTT 6 h,aPTT 8 h\nN007,30.1,31.2,32.3\n"),
                    "\n[read.results]\ncolumns = { specimen = \"Probe\" }\n"
                ),
                "missing-column",
                "[[read.results.wide]]"
            ),
            new(
                "an empty cell among several results a row",
                WithResults(
                    "wide.csv",
                    GoodStudy.Utf8("Probe,First,At,Second,Then\nN007,30.1,2026-03-05T08:00,,\n"),
                    """

                    [read.results]
                    columns = { specimen = "Probe" }
                    constants = { analyte = "aPTT", unit = "s" }
                    [[read.results.wide]]
                    columns = { result = "First", tested_at = "At" }
                    constants = { time_point = "baseline", tube = "A" }
                    [[read.results.wide]]
                    columns = { result = "Second", tested_at = "Then" }
                    constants = { time_point = "6 h", tube = "B" }

                    """
                ),
                "empty-cell-unclear",
                "empty_cell"
            ),
        ];

    private static IEnumerable<Misreading> OfUnits =>
        [
            new(
                "a header with another unit than the stated one",
                Text(
                    "Ergebnis",
                    "Ergebnis (ms)",
                    Export.Replace("Ergebnis", "Ergebnis (ms)", StringComparison.Ordinal)
                ),
                "header-unit-differs",
                "\"ms\""
            ),
            Setting(
                "milliseconds called seconds",
                "values = { unit = { \"ms\" = \"s\" } }",
                "unit-mapped-across",
                "convert = "
            ),
            Setting(
                "mass called activity",
                "values = { unit = { \"mg/dL\" = \"[IU]/mL\" } }",
                "unit-mapped-across",
                "another quantity"
            ),
            Setting(
                "FEU called DDU",
                "values = { unit = { \"ng/mL FEU\" = \"ng/mL{DDU}\" } }",
                "unit-mapped-across",
                "another quantity"
            ),
            Setting(
                "FEU converted into DDU",
                "convert = { \"ng/mL{FEU}\" = \"ng/mL{DDU}\" }",
                "unit-mapped-across",
                "different quantities"
            ),
            Setting(
                "a unit that no table has",
                "convert = { \"drops\" = \"s\" }",
                "unit-mapped-across",
                "not in the table"
            ),
            Setting(
                "a flag with a meaning of one's own",
                "values = { flag = { \"H\" = \"high\" } }",
                "unknown-word",
                "reportable with note"
            ),
            new(
                "another unit in a row",
                Plain.With(
                    "results.csv",
                    GoodStudy.Utf8(
                        GoodStudy
                            .Text(Plain, "results.csv")
                            .Replace(",s\n", ",min\n", StringComparison.Ordinal)
                    )
                ),
                "other-unit",
                "in 36 rows"
            ),
            new(
                "the LOINC code of another quantity",
                Plain.With(
                    "protocol.toml",
                    GoodStudy.Utf8(Protocol.Replace("14979-9", "3255-7", StringComparison.Ordinal))
                ),
                "loinc-contradicts-unit",
                "instructions for use"
            )
            {
                Severity = Severity.Attention,
            },
        ];

    private static IEnumerable<Misreading> OfRows =>
        [
            new("a flag that nobody declared", Flagged("H"), "flag-not-declared", "harmless"),
            new(
                "a flag declared as reportable with note",
                With(
                    Flagged("H"),
                    "[read.results.values]\nflag = { H = \"reportable with note\" }"
                ),
                "flag-with-note",
                "counts"
            )
            {
                Severity = Severity.Note,
            },
            new(
                "a test repeated without a number",
                Appended("N007,B,aPTT,6 h,2026-03-05T13:45,33.3,s\n"),
                "conflicting-rows",
                "number the results in replicate"
            ),
            new(
                "a run an hour early",
                Shifted(-1, "baseline"),
                "run-an-hour-early",
                "an hour later every one would fit"
            ),
            new(
                "a run an hour late",
                Shifted(1, "6 h"),
                "run-off-by-an-hour",
                "an hour earlier every one would fit"
            )
            {
                Severity = Severity.Attention,
            },
        ];

    private static IEnumerable<Misreading> OfWorkbooks =>
        [
            Cells(
                "an error of a formula",
                Cell.Raw("<c r=\"REF\" t=\"e\"><f>1/0</f><v>#DIV/0!</v></c>"),
                "cell-error",
                "#DIV/0!"
            ),
            Cells(
                "a formula without a value",
                Cell.Raw("<c r=\"REF\"><f>A1*2</f></c>"),
                "formula-without-value",
                "F2"
            ),
            Cells(
                "a number that is rounded when shown",
                Cell.Number("31.4499", "0.0"),
                "shown-otherwise",
                "Shown 31.4, stored 31.4499"
            ),
            Cells(
                "a number of a workbook that became a date",
                Cell.Time(new DateTime(2026, 1, 12), "d. mmm"),
                "became-a-date",
                "12.1"
            ),
            Cells(
                "a number that became a time",
                Cell.Number("0.5", "hh:mm"),
                "became-a-date",
                "12:00"
            ),
            Cells("a sign from the format", Cell.Number("0.3", "\"<\"0.0"), "cell-format", "sign"),
            Cells(
                "a percentage from the format",
                Cell.Number("0.95", "0%"),
                "cell-format",
                "percentage"
            ),
            Cells(
                "thousands from the format",
                Cell.Number("31400", "0.0,"),
                "cell-format",
                "scale"
            ),
            Cells("a format that hides", Cell.Number("31.4", ";;;"), "cell-format", "plain number"),
            new(
                "merged cells among the rows",
                Book(sheet =>
                    sheet.Sheet(
                        "Results",
                        Rows(),
                        "<mergeCells count=\"1\"><mergeCell ref=\"A2:A3\"/></mergeCells>"
                    )
                ),
                "merged-cell",
                "fill in each row"
            ),
            Times(
                "dates and texts in one column",
                Cell.Text("13/03/2026 07:50"),
                "dates-of-two-kinds",
                "02/03"
            ),
            Times("a day's number", Cell.Number("46083.33"), "not-a-time", "format the column"),
            Times(
                "a time without a day",
                Cell.Number("0.33", "hh:mm"),
                "not-a-time",
                "2026-02-28T14:05"
            ),
            Times(
                "a day without a time",
                Cell.Time(new DateTime(2026, 3, 2), "dd.mm.yyyy"),
                "not-a-time",
                "2026-02-28T14:05"
            ),
            new(
                "two sheets",
                Book(book => book.Sheet("Old", Rows()).Sheet("New", Rows())),
                "sheet-not-stated",
                "\"Old\", \"New\""
            ),
            new(
                "a sheet that is not there",
                WithResults(
                    "book.xlsx",
                    new WorkbookBytes().Sheet("Results", Rows()).ToArray(),
                    "\n[read.results]\nsheet = \"Result\"\n"
                ),
                "sheet-not-stated",
                "Did you mean \"Results\""
            ),
            new(
                "hidden rows",
                Book(book =>
                    book.Sheet(
                        "Results",
                        Rows().Select((row, i) => row with { IsHidden = i is 3 or 4 })
                    )
                ),
                "hidden-cells",
                "2 rows of the sheet are hidden"
            )
            {
                Severity = Severity.Attention,
            },
            new(
                "a hidden column",
                Book(book =>
                    book.Sheet(
                        "Results",
                        Rows(),
                        before: "<cols><col min=\"3\" max=\"3\" width=\"9\" hidden=\"1\"/></cols>"
                    )
                ),
                "hidden-cells",
                "column 3"
            )
            {
                Severity = Severity.Attention,
            },
        ];

    private static IEnumerable<Misreading> OfBrokenWorkbooks =>
        [
            new(
                "an old or protected workbook",
                InBook([0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1]),
                "not-a-workbook",
                "password"
            ),
            new("no workbook at all", InBook([1, 2, 3]), "not-a-workbook", "damaged"),
            new("a workbook cut off", InBook(GoodBook()[..^100]), "not-a-workbook", "damaged"),
            new(
                "an archive of other things",
                InBook(WorkbookDamage.OtherArchive()),
                "not-a-workbook",
                "without a workbook"
            ),
            new(
                "an archive that grows",
                InBook(WorkbookDamage.Growing()),
                "file-too-large",
                "256 MiB"
            ),
            new(
                "a sheet of a million rows and columns",
                Book(book =>
                    book.Sheet(
                        "Results",
                        [.. Rows().Take(1), new Row(Cell.Raw("<c r=\"XFD1048576\"><v>1</v></c>"))]
                    )
                ),
                "file-too-large",
                "empty rows and columns"
            ),
            new(
                "a document type in a part",
                InBook(WorkbookDamage.WithDocumentType(GoodBook())),
                "not-a-workbook",
                "damaged"
            ),
        ];

    /// <summary>A workbook that is read without a query.</summary>
    public static byte[] GoodBook() => new WorkbookBytes().Sheet("Results", Rows()).ToArray();

    /// <summary>The study with a workbook of results.</summary>
    public static StudyBytes InBook(byte[] bytes) => WithResults("book.xlsx", bytes, "");

    private static StudyBytes Book(Func<WorkbookBytes, WorkbookBytes> make) =>
        InBook(make(new WorkbookBytes()).ToArray());

    private static Row[] Rows(Func<Test, Cell>? time = null, Func<Test, Cell>? result = null) =>
        [
            Row.Of(Headers),
            .. Delivered.Select(test => new Row(
                Cell.Text(test.Code),
                Cell.Text(test.Tube.ToString()),
                Cell.Text("aPTT"),
                Cell.Text(test.Occasion),
                time?.Invoke(test) ?? Cell.Time(test.Tested),
                result?.Invoke(test) ?? Cell.Text(test.Result),
                Cell.Text("s")
            )),
        ];

    private static Misreading Cells(string name, Cell cell, string code, string says) =>
        new(
            name,
            Book(book =>
                book.Sheet(
                    "Results",
                    Rows(result: test => test == Delivered[0] ? cell : Cell.Text(test.Result))
                )
            ),
            code,
            says
        );

    private static Misreading Times(string name, Cell cell, string code, string says) =>
        new(
            name,
            Book(book =>
                book.Sheet(
                    "Results",
                    Rows(test => test == Delivered[0] ? cell : Cell.Time(test.Tested))
                )
            ),
            code,
            says
        );

    private static Misreading Setting(string name, string line, string code, string says) =>
        new(name, With(Plain, "[read.results]\n" + line), code, says);

    private static StudyBytes With(StudyBytes files, string read) =>
        files.With("study.toml", GoodStudy.Utf8(DeliveredData.Facts("\n" + read + "\n")));

    /// <summary>A small export with a text replaced.</summary>
    private static StudyBytes Text(string from, string to, string read = Export)
    {
        const string Rows = """
            Probe;Gefäß;Zeit;Gemessen;Ergebnis
            N007;A;baseline;05.03.2026 08:15;31,4
            N008;A;baseline;25.03.2026 08:20;31.5
            N008;B;6 h;26.03.2026 13:55;32.5

            """;
        Assert.Contains(from, Rows, StringComparison.Ordinal);
        return WithResults(
            "export.csv",
            GoodStudy.Utf8(Rows.Replace(from, to, StringComparison.Ordinal)),
            "\n" + read + "\n"
        );
    }

    private static StudyBytes Appended(string row) =>
        Plain.With("results.csv", GoodStudy.Utf8(GoodStudy.Text(Plain, "results.csv") + row));

    private static StudyBytes Flagged(string flag)
    {
        var lines = GoodStudy.Text(Plain, "results.csv").TrimEnd().Split('\n');
        return Plain.With(
            "results.csv",
            GoodStudy.Utf8(
                string.Concat(
                    lines.Select(
                        (line, i) =>
                            line
                            + (
                                i == 0 ? ",flag\n"
                                : i == 3 ? $",{flag}\n"
                                : ",\n"
                            )
                    )
                )
            )
        );
    }

    /// <summary>The tests of one time point, as one run, an hour off.</summary>
    private static StudyBytes Shifted(int hours, string occasion) =>
        Plain.With(
            "results.csv",
            GoodStudy.Utf8(
                "specimen,tube,analyte,time_point,tested_at,result,unit,run\n"
                    + string.Concat(
                        Delivered.Select(test =>
                            $"{test.Code},{test.Tube},aPTT,{test.Occasion},{Iso(test.Occasion == occasion ? test.Tested.AddHours(hours) : test.Tested)},{test.Result},s,{test.Occasion}\n"
                        )
                    )
            )
        );
}
