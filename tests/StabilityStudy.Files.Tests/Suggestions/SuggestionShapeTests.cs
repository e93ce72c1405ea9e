using System.Globalization;
using System.Text;
using StabilityStudy.Files.Tests.OwnTables;
using static StabilityStudy.Files.Tests.OwnTables.WorkbookBytes;
using static StabilityStudy.Files.Tests.Suggestions.Delivered;

namespace StabilityStudy.Files.Tests.Suggestions;

/// <summary>Tables with headers of two lines, and blocks under a repeated header: what is suggested reads them to the same data, without a question.</summary>
public sealed class SuggestionShapeTests
{
    private static readonly string[] s_titles = ["Specimen", "aPTT", "", "", "Tested", "", ""];
    private static readonly string[] s_times = ["", "0 h", "6 h", "8 h", "0 h", "6 h", "8 h"];

    [Fact]
    public void Names_above_their_units()
    {
        var text = new StringBuilder("Sample;Test;Result;Date;Time\n;;sec;dd.mm.yyyy;hh:mm\n");
        foreach (var test in Delivered.Tests)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{test.Code}-{test.Tube};APTT;{test.Result};{Time(test, "dd.MM.yyyy")};{Time(test, "HH:mm")}\n"
            );
        }

        RequireRead("export.csv", GoodStudy.Utf8(text.ToString()), "units = \"in the line below\"");
    }

    [Theory]
    [InlineData(false, false)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(true, true)]
    public void Titles_over_several_columns(bool hasUnits, bool hasPreamble)
    {
        var text = new StringBuilder(hasPreamble ? "Export of an invented study\n\n" : "")
            .AppendJoin(';', hasUnits ? [.. s_titles] : [.. s_titles.Select(WithUnit)])
            .Append('\n')
            .AppendJoin(';', s_times)
            .Append('\n')
            .Append(hasUnits ? ";s;s;s;;;\n" : "");
        foreach (var specimen in Delivered.Tests.GroupBy(test => test.Specimen))
        {
            text.Append(specimen.First().Code)
                .Append(';')
                .AppendJoin(';', specimen.Select(test => test.Result))
                .Append(';')
                .AppendJoin(';', specimen.Select(test => Time(test, "yyyy-MM-dd HH:mm")))
                .Append('\n');
        }

        RequireRead("wide.csv", GoodStudy.Utf8(text.ToString()), "header_rows = 2");
    }

    [Fact]
    public void Merged_titles_of_a_workbook()
    {
        var book = new WorkbookBytes()
            .Sheet(
                "Export",
                [
                    Row.Of([.. s_titles.Select(WithUnit)]),
                    Row.Of(s_times),
                    .. Delivered
                        .Tests.GroupBy(test => test.Specimen)
                        .Select(specimen => new Row([
                            Cell.Text(specimen.First().Code),
                            .. specimen.Select(test =>
                                test.Result == "CLOT"
                                    ? Cell.Text("CLOT")
                                    : Cell.Number(test.Result, "0.0")
                            ),
                            .. specimen.Select(test => Cell.Time(test.Tested)),
                        ])),
                ],
                "<mergeCells count=\"3\"><mergeCell ref=\"A1:A2\"/><mergeCell ref=\"B1:D1\"/><mergeCell ref=\"E1:G1\"/></mergeCells>"
            )
            .ToArray();

        RequireRead("Book 1.xlsx", book, "header_rows = 2");
    }

    [Theory]
    [InlineData("")]
    [InlineData("\nRun of the day\n")]
    [InlineData("\nRun of the day;;;;\n\n")]
    public void Blocks_under_a_repeated_header(string between)
    {
        const string Header = "Sample;Test;Result;Unit;Tested\n";
        var text = new StringBuilder();
        foreach (var day in Delivered.Tests.GroupBy(test => test.Tested.Date))
        {
            text.Append(text.Length > 0 ? between : "").Append(Header);
            foreach (var test in day)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"{test.Code}-{test.Tube};APTT;{test.Result};s;{Time(test, "yyyy-MM-dd HH:mm")}\n"
                );
            }
        }

        RequireRead("blocks.csv", GoodStudy.Utf8(text.ToString()), "[read.results]");
    }

    [Fact]
    public void Blocks_under_a_repeated_header_of_two_lines()
    {
        var text = new StringBuilder();
        foreach (var half in Delivered.Tests.GroupBy(test => test.Specimen).Chunk(6))
        {
            text.Append(text.Length > 0 ? "\nSecond half\n" : "")
                .AppendJoin(';', s_titles)
                .Append('\n')
                .AppendJoin(';', s_times)
                .Append("\n;s;s;s;;;\n");
            foreach (var specimen in half)
            {
                text.Append(specimen.First().Code)
                    .Append(';')
                    .AppendJoin(';', specimen.Select(test => test.Result))
                    .Append(';')
                    .AppendJoin(';', specimen.Select(test => Time(test, "yyyy-MM-dd HH:mm")))
                    .Append('\n');
            }
        }

        RequireRead("blocks.csv", GoodStudy.Utf8(text.ToString()), "header_repeats = true");
    }

    [Fact]
    public void Blocks_of_a_workbook_with_merged_titles()
    {
        var rows = new List<Row>();
        var merged = new List<string>();
        foreach (var day in Delivered.Tests.GroupBy(test => test.Tested.Date))
        {
            if (rows.Count > 0)
            {
                rows.Add(Row.Of("", "", "", "", ""));
                rows.Add(Row.Of("Run of the day", "", "", "", ""));
                merged.Add($"<mergeCell ref=\"A{rows.Count}:E{rows.Count}\"/>");
            }

            rows.Add(Row.Of("Sample", "Test", "Result", "Unit", "Tested"));
            rows.AddRange(
                day.Select(test => new Row(
                    Cell.Text($"{test.Code}-{test.Tube}"),
                    Cell.Text("APTT"),
                    test.Result == "CLOT" ? Cell.Text("CLOT") : Cell.Number(test.Result, "0.0"),
                    Cell.Text("s"),
                    Cell.Time(test.Tested)
                ))
            );
        }

        RequireRead(
            "Book 1.xlsx",
            new WorkbookBytes()
                .Sheet(
                    "Export",
                    rows,
                    $"<mergeCells count=\"{merged.Count}\">{string.Concat(merged)}</mergeCells>"
                )
                .ToArray(),
            "header_repeats = true"
        );
    }

    [Fact]
    public void A_first_row_of_words_is_no_second_line_of_the_header()
    {
        var text = Text(
            "Sample;Tube;Test;Result;Unit;Tested",
            test => $"{test.Code};{test.Tube};APTT;{test.Result};s;{Time(test, "yyyy-MM-dd HH:mm")}"
        );
        var first = text.IndexOf('\n', StringComparison.Ordinal) + 1;
        var files = With("export.csv", GoodStudy.Utf8(text.Insert(first, "N099;A;APTT;CLOT;s;\n")));

        Assert.DoesNotContain("header_rows", Suggest(files).Text, StringComparison.Ordinal);
    }

    private static string WithUnit(string title) => title == "aPTT" ? "aPTT (s)" : title;

    private static void RequireRead(string name, ReadOnlyMemory<byte> bytes, string line)
    {
        var files = With(name, bytes);
        var suggestion = Suggest(files);

        Assert.Contains(line, suggestion.Text, StringComparison.Ordinal);
        Assert.Empty(suggestion.Questions);
        RequireSame(Written(files));
    }
}
