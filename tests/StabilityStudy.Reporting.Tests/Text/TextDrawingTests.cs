using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Tests.Model;
using StabilityStudy.Reporting.Tests.Pdf;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Reporting.Tests.Text;

public class TextDrawingTests
{
    [Fact]
    public void Conclusions_have_a_mark_a_word_and_a_sentence()
    {
        var text = TextDrawing.Draw(DemoReport.Create());

        Assert.Contains(
            "[+] Supported to 12 h: No anticoagulant\n",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "[x] Supported to 6 h only: Unfractionated heparin\n",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("Criteria first? The protocol was locked", text, StringComparison.Ordinal);
        Assert.Contains("[NOT SIGNED] Author: ran this study\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Table_stands_in_columns_with_numbers_at_the_right()
    {
        var table = new Table(
            "Caption",
            [
                new Column("Delay", ColumnAlignment.Left, 1),
                new Column("Change, %", ColumnAlignment.DecimalPoint, 1),
            ],
            [
                new Row([new TableCell("6 h"), new TableCell("−1.4")]),
                new Row([new TableCell("Heparin")], RowKind.GroupHeading),
                new Row([
                    new TableCell("12 h"),
                    new TableCell("supported", Emphasis.None, VerdictShape.Supported),
                ]),
            ],
            "Note."
        );

        var text = TextDrawing.Draw(OddReports.Report(OddReports.Section(table)), 40);

        const string wanted = """
            Caption
            Delay      Change, %
            -----  -------------
            6 h             −1.4
            Heparin
            12 h   [+] supported
            Note.

            """;
        Assert.EndsWith(wanted.ReplaceLineEndings("\n"), text, StringComparison.Ordinal);
    }

    [Fact]
    public void Table_with_too_many_columns_is_written_row_by_row()
    {
        var text = TextDrawing.Draw(
            OddReports.Report(OddReports.Section(OddReports.Numbers(2, 12))),
            60
        );

        Assert.Contains("Specimen: 1.0\n    Value B: 1.1\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Table_whose_longest_words_need_more_than_a_line_is_written_row_by_row()
    {
        var table = new Table(
            "",
            [
                new Column("Where", ColumnAlignment.Left, 1),
                new Column("Remark", ColumnAlignment.Left, 1),
                new Column("Nothing", ColumnAlignment.Left, 1),
            ],
            [
                new Row([
                    new TableCell("a-file-name-of-many-letters.csv"),
                    new TableCell("incomprehensible"),
                    new TableCell(""),
                ]),
            ],
            null
        );

        Assert.EndsWith(
            "Where: a-file-name-of-many-letters.csv\n    Remark: incomprehensible\n",
            TextDrawing.Draw(OddReports.Report(OddReports.Section(table)), 40),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Number_and_its_unit_stay_on_one_line() =>
        Assert.Equal(
            ["The window ends at", "12 h, with 90 % of", "them."],
            TextLines.Wrap("The window ends at 12 h, with 90 % of them.", 20)
        );

    [Fact]
    public void Brief_text_names_what_it_leaves_out()
    {
        var model = OddReports.Report(
            new Section(
                "Kept",
                StartsOnNewPage: false,
                [
                    new Paragraph("Read at once.", ParagraphStyle.Body),
                    new KeepTogether([
                        new Table(
                            "Half",
                            [
                                new Column("A", ColumnAlignment.Left, 1),
                                new Column("B", ColumnAlignment.Left, 1) { IsDetail = true },
                            ],
                            [new Row([new TableCell("shown"), new TableCell("hidden")])],
                            null
                        ),
                    ]),
                ]
            )
            {
                IsInBrief = true,
            },
            new Section("Looked up", StartsOnNewPage: false, [])
        );

        const string wanted = """
            Read at once.

            Half
            A
            -----
            shown

            What is left out here
            --------------------------------------------------------------------------------

            - Looked up
            - Kept: in "Half" "B"

            All of it: report --full, the HTML, the PDF; every figure: analysis.json

            """;
        Assert.EndsWith(
            wanted.ReplaceLineEndings("\n"),
            TextDrawing.DrawBrief(model),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Chart_becomes_its_title_caption_and_alternative_text()
    {
        var text = TextDrawing.Draw(OddReports.Report(OddReports.Section(DemoCharts.Regression())));

        Assert.Contains(
            "Deming regression, 12 h\nFigure 3. Slope 1.03, intercept 0.0 s; decision levels 40 s and 60 s.\n    Figure: Delayed against",
            text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Control_characters_cannot_steer_a_terminal()
    {
        var text = TextDrawing.Draw(
            OddReports.Report(OddReports.Section(new MonospaceLines(["a\u001B[31mb\u202E"])))
        );

        Assert.EndsWith("a[U+001B][31mb[U+202E]\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Width_below_40_throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(
            "width",
            () => TextDrawing.Draw(OddReports.Report(), 39)
        );
}
