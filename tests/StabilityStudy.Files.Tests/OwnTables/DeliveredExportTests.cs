using System.Globalization;
using System.Text;
using StabilityStudy.Files.Intake;
using static StabilityStudy.Files.Tests.OwnTables.DeliveredData;
using static StabilityStudy.Files.Tests.OwnTables.WorkbookBytes;

namespace StabilityStudy.Files.Tests.OwnTables;

/// <summary>
/// The same results as laboratories deliver them, each read by one table of study.toml to the same canonical data: what
/// differs is the line on which a result stands.
/// </summary>
public sealed class DeliveredExportTests
{
    [Fact]
    public void A_wide_file_with_a_column_a_time_point_gives_the_same_data()
    {
        var text = new StringBuilder(
            "Specimen;aPTT 0 h (sec);Time 0 h;aPTT 6 h (sec);Time 6 h;aPTT 8 h (sec);Time 8 h;Comment\n"
        );
        foreach (var specimen in Delivered.GroupBy(test => test.Specimen))
        {
            text.Append(specimen.First().Code);
            foreach (var test in specimen)
            {
                text.Append(';').Append(Comma(test.Result)).Append(';').Append(Us(test.Tested));
            }

            text.Append(";nothing\n");
        }

        AssertSame(
            WithResults(
                "wide.csv",
                GoodStudy.Utf8(text.ToString()),
                """

                [read.results]
                delimiter = ";"
                decimal = ","
                date_format = "M/d/yy h:mm tt"
                century = 2000
                units = "in the header"
                columns = { specimen = "Specimen" }
                constants = { analyte = "aPTT" }
                values = { unit = { "sec" = "s" } }
                [[read.results.wide]]
                columns = { result = "aPTT 0 h (sec)", tested_at = "Time 0 h" }
                constants = { time_point = "baseline", tube = "A" }
                [[read.results.wide]]
                columns = { result = "aPTT 6 h (sec)", tested_at = "Time 6 h" }
                constants = { time_point = "6 h", tube = "B" }
                [[read.results.wide]]
                columns = { result = "aPTT 8 h (sec)", tested_at = "Time 8 h" }
                constants = { time_point = "8 h", tube = "C" }

                """
            )
        );
    }

    [Fact]
    public void An_analyzer_file_with_preamble_footer_and_units_below_the_header_gives_the_same_data()
    {
        var text = new StringBuilder(
            "Invented analyzer;;\nExported by \"nobody\nSerial;0001\n\nRun list\nProbe;Test;Ergebnis;Datum;Uhrzeit\n;;Sek;;\n"
        );
        foreach (var test in Delivered)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{test.Code}-{test.Tube};APTT-FS;{Comma(test.Result)};{test.Tested:dd.MM.yy};{test.Tested:HH:mm}\n"
            );
        }

        text.Append("36 rows exported\n\n");
        var bytes = Encoding.Latin1.GetBytes(text.ToString());
        AssertSame(WithResults("analyzer.csv", bytes, AnalyzerTable));
    }

    [Fact]
    public void Blocks_under_a_repeated_header_give_the_same_data()
    {
        var text = new StringBuilder("one\ntwo\nthree\nfour\nfive\n");
        foreach (var day in Delivered.GroupBy(test => test.Tested.Date))
        {
            if (day.Key != Delivered[0].Tested.Date)
            {
                text.Append(CultureInfo.InvariantCulture, $"\nRun of {day.Key:d}\n");
            }

            text.Append("Probe;Test;Ergebnis;Datum;Uhrzeit\n;;Sek;;\n");
            foreach (var test in day)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"{test.Code}-{test.Tube};APTT-FS;{Comma(test.Result)};{test.Tested:dd.MM.yy};{test.Tested:HH:mm}\n"
                );
            }
        }

        text.Append("end\n");
        AssertSame(
            WithResults(
                "analyzer.csv",
                GoodStudy.Utf8(text.ToString()),
                AnalyzerTable.Replace(
                    "footer_lines = 1",
                    "footer_lines = 1\nheader_repeats = true",
                    StringComparison.Ordinal
                )
            )
        );
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_workbook_gives_the_same_data(bool from1904)
    {
        var book = new WorkbookBytes { From1904 = from1904 };
        book.Sheet("Notes", [Row.Of("nothing to read")])
            .Sheet(
                "Results",
                [
                    Row.Of("Results of the study", "", "", "", "", ""),
                    Row.Of("", "", "", "", "", ""),
                    Row.Of("Specimen", "Tube", "Test", "Occasion", "Tested", "Result"),
                    .. Delivered.Select(test => new Row(
                        Cell.Text(test.Code),
                        Cell.Text(test.Tube.ToString()),
                        Cell.Text("aPTT"),
                        Cell.Text(test.Occasion),
                        Cell.Time(test.Tested),
                        test.Result == "CLOT" ? Cell.Text("CLOT")
                            : test.Specimen == 3 ? Cell.Text(test.Result)
                            : test.Specimen == 4
                                ? Cell.Raw($"<c r=\"REF\"><f>1+1</f><v>{test.Result}</v></c>")
                            : Cell.Number(test.Result, "0.0")
                    )),
                ],
                "<mergeCells count=\"1\"><mergeCell ref=\"A1:F1\"/></mergeCells>"
            );
        var table = """

            [read.results]
            sheet = "Results"
            header_line = 3
            columns = { specimen = "Specimen", tube = "Tube", analyte = "Test", time_point = "Occasion", tested_at = "Tested", result = "Result" }
            constants = { unit = "s" }

            """;

        // A formula of a whole number has no decimals; that of the fourth specimen are written with theirs.
        var expected = WithPlainNumbers(4);
        AssertSame(WithResults("book.xlsx", book.ToArray(), table), expected);
    }

    [Fact]
    public void A_long_export_of_the_laboratory_system_in_two_files_gives_the_same_data()
    {
        string File(IEnumerable<Test> tests) =>
            "Sample ID|Test code|Value|Units|Result date|Flag\n"
            + string.Concat(
                tests.Select(test =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $" {test.Code}-{test.Tube} |APTT |{(test.Result == "CLOT" ? "CLOTTED" : test.Result)}|SEC|{test.Tested.AddHours(-1):dd-MM-yy HH:mm}|{(test.Specimen % 3 == 0 ? "H" : "")}\n"
                    )
                )
            );

        var study = WithResults(
                "lis-1.csv",
                GoodStudy.Utf8(File(Delivered.Take(17))),
                """

                [read.results]
                more_files = ["lis-2.csv"]
                delimiter = "|"
                date_format = "dd-MM-yy HH:mm"
                century = 2000
                time_zone = "UTC"
                trim_spaces = true
                tube_pattern = "{specimen}-{letter}"
                time_point_of_tube = { A = "baseline", B = "6 h", C = "8 h" }
                columns = { tube = "Sample ID", analyte = "Test code", result = "Value", unit = "Units", tested_at = "Result date", flag = "Flag" }
                [read.results.values]
                analyte = { "APTT" = "aPTT" }
                unit = { "SEC" = "s" }
                result = { "CLOTTED" = "CLOT" }
                flag = { "H" = "harmless" }

                """
            )
            .With("lis-2.csv", GoodStudy.Utf8(File(Delivered.Skip(17))));
        var read = CanonicalTests.Read(study);

        // In UTC the same moments are written with another offset, and the flags are kept as the instrument wrote them.
        Assert.Equal(
            CanonicalTests
                .Read(Plain)
                .Inputs.Results.Select(row =>
                    (
                        row.Specimen,
                        row.Tube,
                        row.Occasion,
                        row.TestedAt?.ToUniversalTime(),
                        row.Result.Text
                    )
                ),
            read.Inputs.Results.Select(row =>
                (
                    row.Specimen,
                    row.Tube,
                    row.Occasion,
                    row.TestedAt?.ToUniversalTime(),
                    row.Result.Text
                )
            )
        );
        Assert.All(read.Inputs.Results, row => Assert.False(row.IsFlaggedAsFailed));
        Assert.Contains(read.Inputs.Results, row => row.Flag == "H");
        Assert.Contains(read.Inputs.Results, row => row.SourceRow == 5_000_002);
        Assert.Equal(
            ["lis-1.csv", "lis-2.csv"],
            read.Identity.RawFiles.Select(file => file.Name)
                .Where(name => name.StartsWith("lis", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void Tubes_and_results_may_stand_in_two_sheets_of_one_workbook()
    {
        string[] Header(string text) => text.Split(',');
        var book = new WorkbookBytes()
            .Sheet(
                "Tubes",
                [
                    Row.Of(
                        Header(
                            "specimen,tube,subject,group,storage,collected_at,spun_at,fill_percent,hemolysis,clot"
                        )
                    ),
                    .. Delivered.Select(test => new Row(
                        Cell.Text(test.Code),
                        Cell.Text(test.Tube.ToString()),
                        Cell.Text(test.Subject),
                        Cell.Text("none"),
                        Cell.Text("wb-rt"),
                        Cell.Text(Iso(test.Collected)),
                        Cell.Time(test.Spun),
                        Cell.Number("95"),
                        Cell.Text("none"),
                        Cell.Text("no")
                    )),
                ]
            )
            .Sheet(
                "Results",
                [
                    Row.Of(Header("specimen,tube,analyte,time_point,tested_at,result,unit")),
                    .. Delivered.Select(test =>
                        Row.Of(
                            test.Code,
                            test.Tube.ToString(),
                            "aPTT",
                            test.Occasion,
                            Iso(test.Tested),
                            test.Result,
                            "s"
                        )
                    ),
                ]
            )
            .ToArray();

        AssertSame(
            GoodStudy
                .Of(
                    ("protocol.toml", Protocol),
                    (
                        "study.toml",
                        DeliveredData.Facts(
                            "\n[read]\nspecimens = { sheet = \"Tubes\" }\nresults = { sheet = \"Results\" }\n",
                            "specimens = \"all.xlsx\"\nresults = \"all.xlsx\"\n"
                        )
                    )
                )
                .With("all.xlsx", book)
        );
    }

    internal const string AnalyzerTable = """

        [read.results]
        header_line = 6
        footer_lines = 1
        delimiter = ";"
        decimal = ","
        date_format = "dd.MM.yy HH:mm"
        century = 2000
        units = "in the line below"
        tube_pattern = "{specimen}-{tube}"
        time_point_of_tube = { A = "baseline", B = "6 h", C = "8 h" }
        columns = { tube = "Probe", analyte = "Test", result = "Ergebnis", tested_at = ["Datum", "Uhrzeit"] }
        [read.results.values]
        analyte = { "APTT-FS" = "aPTT" }
        unit = { "Sek" = "s" }

        """;

    private static StudyBytes WithPlainNumbers(int specimen) =>
        Plain.With(
            "results.csv",
            GoodStudy.Utf8(
                string.Join(
                    '\n',
                    GoodStudy
                        .Text(Plain, "results.csv")
                        .Split('\n')
                        .Select(line =>
                            line.StartsWith($"N00{specimen},", StringComparison.Ordinal)
                                ? line.Replace(".0,s", ",s", StringComparison.Ordinal)
                                : line
                        )
                )
            )
        );

    private static void AssertSame(StudyBytes delivered, StudyBytes? plain = null)
    {
        var expected = CanonicalTests.Read(plain ?? Plain).Canonical.Data;
        var found = CanonicalTests.Read(delivered).Canonical.Data;
        Assert.Equal(expected.Length, found.Length);
        for (var i = 0; i < found.Length; i++)
        {
            Assert.Equal(WithoutLines(expected[i].Bytes), WithoutLines(found[i].Bytes));
        }
    }

    private static string WithoutLines(ReadOnlyMemory<byte> bytes) =>
        string.Join(
            '\n',
            Encoding
                .UTF8.GetString(bytes.Span)
                .Split('\n')
                .Select(line => line[..Math.Max(0, line.LastIndexOf(','))])
        );

    private static string Comma(string result) => result.Replace('.', ',');

    private static string Us(DateTime time) =>
        time.ToString("M/d/yy h:mm tt", CultureInfo.InvariantCulture);
}
