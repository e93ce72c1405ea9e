using System.Globalization;
using System.Text;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Tests.OwnTables;
using static StabilityStudy.Files.Tests.OwnTables.WorkbookBytes;
using static StabilityStudy.Files.Tests.Suggestions.Delivered;

namespace StabilityStudy.Files.Tests.Suggestions;

/// <summary>Four exports as laboratories have them: each is read after one edit of study.toml, which was suggested, and after its questions are answered.</summary>
public sealed class DeliveredExportSuggestionTests
{
    private static readonly IReadOnlyList<DeliveredData.Test> s_tests = Delivered.Tests;

    [Fact]
    public void A_wide_file_with_a_column_a_time_point()
    {
        var text = new StringBuilder(
            "Specimen;aPTT 0 h (sec);Time 0 h;aPTT 6 h (sec);Time 6 h;aPTT 8 h (sec);Time 8 h;Last name\n"
        );
        foreach (var specimen in s_tests.GroupBy(test => test.Specimen))
        {
            text.Append(specimen.First().Code);
            foreach (var test in specimen)
            {
                text.Append(';')
                    .Append(test.Result.Replace('.', ','))
                    .Append(';')
                    .Append(Time(test, "M/d/yy h:mm tt"));
            }

            text.Append(";Doe\n");
        }

        RequireSame(Written(With("wide.csv", GoodStudy.Utf8(text.ToString()))));
    }

    [Fact]
    public void A_file_with_five_lines_of_preamble()
    {
        var text =
            "Invented analyzer\nExported by \"nobody\nSerial;0001\nDruckdatum;27.03.2026\n\n"
            + Text(
                "Probe;Test;Ergebnis;Einheit;Datum;Uhrzeit;Nachname;Geburtsdatum",
                test =>
                    $"{test.Code}-{test.Tube};APTT-FS;{test.Result.Replace('.', ',')};Sek;{Time(test, "dd.MM.yyyy")};{Time(test, "HH:mm")};Müller;01.02.1950"
            )
            + "36 Zeilen\n";
        var files = With(
            "Ergebnisse.txt",
            CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes(text)
        );

        var suggestion = Suggest(files);

        Assert.Empty(suggestion.Questions);
        var file = Assert.Single(suggestion.Files);
        Assert.Equal(
            ["Nachname", "Geburtsdatum"],
            file.Columns.Where(column => column.ReadAs == "not read")
                .Select(column => column.Header.Trim('"'))
        );
        Assert.DoesNotContain(
            "Müller",
            string.Join(' ', file.Columns.Select(column => column.Why)),
            StringComparison.Ordinal
        );
        RequireSame(Written(files));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_workbook(bool from1904)
    {
        var book = new WorkbookBytes { From1904 = from1904 }
            .Sheet("Read me", [Row.Of("Results of an invented study")])
            .Sheet(
                "Export",
                [
                    Row.Of("Results of the study", "", "", "", "", ""),
                    Row.Of("", "", "", "", "", ""),
                    Row.Of(
                        "Sample ID",
                        "Test",
                        "Time point",
                        "Tested at",
                        "Result (s)",
                        "Patient name"
                    ),
                    .. s_tests.Select(test => new Row(
                        Cell.Text($"{test.Code}/{test.Tube}"),
                        Cell.Text("PTT"),
                        Cell.Text(
                            test.Occasion == "baseline"
                                ? "T0"
                                : test.Occasion.Replace(" h", "h", StringComparison.Ordinal)
                        ),
                        Cell.Time(test.Tested),
                        test.Result == "CLOT"
                            ? Cell.Text("clotted")
                            : Cell.Number(test.Result, "0.0"),
                        Cell.Text("Doe, Jane")
                    )),
                ],
                "<mergeCells count=\"1\"><mergeCell ref=\"A1:F1\"/></mergeCells>"
            )
            .ToArray();
        var files = With("Book 1.xlsx", book);

        Assert.Empty(Suggest(files).Questions);
        // "clotted" is read as CLOT, as the plain file has it.
        RequireSame(Written(files));
    }

    [Fact]
    public void A_long_export_of_the_laboratory_system_with_years_of_two_digits()
    {
        var text = Text(
            "Accession|Test code|Value|Units|Result date|Verified date|Flag|MRN",
            test =>
                $"{test.Code}-{test.Tube}|APTT|{test.Result}|SEC|{Time(test, "dd-MM-yy HH:mm")}|{test.Tested.AddHours(3).ToString("dd-MM-yy HH:mm", CultureInfo.InvariantCulture)}|{(test.Specimen == 3 ? "E7" : test.Specimen % 2 == 0 ? "H" : "")}|12345678"
        );
        var files = With("lis.csv", GoodStudy.Utf8(text));

        var suggestion = Suggest(files);

        Assert.Contains(
            suggestion.Questions,
            question => question.Text.Contains("flag E7", StringComparison.Ordinal)
        );
        Assert.Contains("# E7 = \"?\"", suggestion.Text, StringComparison.Ordinal);
        RequireStop(Written(files));
        var written = Written(files);
        var answered = written.With(
            "study.toml",
            GoodStudy.Utf8(
                GoodStudy
                    .Text(written, "study.toml")
                    .Replace("# E7 = \"?\"", "E7 = \"harmless\"", StringComparison.Ordinal)
            )
        );
        Assert.Equal(
            CanonicalTests
                .Read(Plain)
                .Inputs.Results.Select(row =>
                    (row.Specimen, row.Tube, row.Occasion, row.TestedAt, row.Result.Text)
                ),
            CanonicalTests
                .Read(answered)
                .Inputs.Results.Select(row =>
                    (row.Specimen, row.Tube, row.Occasion, row.TestedAt, row.Result.Text)
                )
        );
    }

    [Fact]
    public void One_row_a_specimen_with_its_collection_time()
    {
        var text = new StringBuilder(
            "Muestra,Extracción,aPTT basal (s),Hora basal,aPTT 6 h (s),Hora 6 h,Centrifugado 6 h,aPTT 8 h (s),Hora 8 h,Centrifugado 8 h\n"
        );
        foreach (var specimen in s_tests.GroupBy(test => test.Specimen))
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{specimen.First().Code},{specimen.First().Collected:dd/MM/yyyy HH:mm}"
            );
            foreach (var test in specimen)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $",{test.Result},{test.Tested:dd/MM/yyyy HH:mm}"
                );
                if (test.Tube != 'A')
                {
                    text.Append(CultureInfo.InvariantCulture, $",{test.Spun:dd/MM/yyyy HH:mm}");
                }
            }

            text.Append('\n');
        }

        var files = new StudyBytes(Plain.Files.Remove("results.csv").Remove("specimens.csv")).With(
            "datos.csv",
            GoodStudy.Utf8(text.ToString())
        );

        var read = CanonicalTests.Read(Written(files)).Inputs.Results;

        Assert.Equal(
            CanonicalTests
                .Read(Plain)
                .Inputs.Results.Select(row =>
                    (row.Specimen, row.Occasion, row.TestedAt, row.Result.Text)
                ),
            read.OrderBy(row => row.Specimen, StringComparer.Ordinal)
                .ThenBy(row => row.TestedAt)
                .Select(row => (row.Specimen, row.Occasion, row.TestedAt, row.Result.Text))
        );
    }

    [Fact]
    public void Tubes_results_and_controls_at_once_and_two_files_of_one_form()
    {
        string Line(DeliveredData.Test test) =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"{test.Code}-{test.Tube},{test.Subject},{test.Collected:yyyy-MM-dd HH:mm},{test.Spun:yyyy-MM-dd HH:mm},95,keine,nein"
            );
        string Result(DeliveredData.Test test) =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"{test.Code}-{test.Tube},APTT,{test.Result},sec,{test.Tested:yyyy-MM-dd HH:mm}"
            );
        const string Header = "Sample ID,Test,Result,Unit,Tested\n";
        var files = GoodStudy.Of(
            ("protocol.toml", DeliveredData.Protocol),
            ("study.toml", DeliveredData.Facts("")),
            (
                "proben.csv",
                Text("Probe,Proband,Abnahmezeit,Zentrifugation,Füllung,Hämolyse,Gerinnsel", Line)
            ),
            (
                "march.csv",
                Header + string.Concat(s_tests.Take(20).Select(test => Result(test) + "\n"))
            ),
            (
                "april.csv",
                Header + string.Concat(s_tests.Skip(20).Select(test => Result(test) + "\n"))
            ),
            (
                "qc.csv",
                "QC name,Test,Run,Tested,Result,Unit,Target,Low limit,High limit\nQC-1,APTT,R1,2026-03-13 07:00,30.1,sec,30.0,28.1,31.9\n"
            ),
            ("notes.txt", "Nothing here is a table.\n")
        );

        var suggestion = Suggest(files);

        Assert.Equal(
            ["specimens", "results", "controls"],
            suggestion.Tables.Select(table => table.Section)
        );
        Assert.Contains(suggestion.Files, file => file is { Name: "notes.txt", Kind: "" });
        var written = Written(files);
        RequireSame(written);
        Assert.Equal(
            Delivered.WithoutLines(CanonicalTests.Read(Plain), "specimens.csv"),
            Delivered.WithoutLines(CanonicalTests.Read(written), "specimens.csv")
        );
        Assert.Single(CanonicalTests.Read(written).Inputs.Controls);
    }
}
