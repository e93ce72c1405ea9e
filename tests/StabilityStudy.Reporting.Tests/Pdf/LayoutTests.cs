using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Outline;

namespace StabilityStudy.Reporting.Tests.Pdf;

public class LayoutTests
{
    [Fact]
    public void Column_heads_are_repeated_on_every_page_of_a_table()
    {
        using var document = Draw(OddReports.Section(OddReports.Numbers(200, 5)));

        Assert.True(document.NumberOfPages >= 4);
        Assert.All(
            document.GetPages(),
            page =>
                Assert.Contains(
                    "SpecimenValueBValueCValueDValueE",
                    Text(page),
                    StringComparison.Ordinal
                )
        );
        Assert.All(
            document.GetPages().Skip(1),
            page =>
                Assert.Contains("Tableofnumbers(continued)", Text(page), StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Repeated_heads_are_no_cells_of_the_tag_tree()
    {
        using var document = Draw(OddReports.Section(OddReports.Numbers(200, 5)));
        var elements = PdfReading
            .Structure(document)
            .WithDescendants()
            .ToLookup(e => e.Type, StringComparer.Ordinal);

        Assert.Single(elements["Table"]);
        Assert.Equal(201, elements["TR"].Count());
        Assert.Equal(5, elements["TH"].Count());
        Assert.Equal(1000, elements["TD"].Count());
    }

    [Theory]
    [InlineData(40)]
    [InlineData(41)]
    [InlineData(42)]
    [InlineData(43)]
    [InlineData(44)]
    public void No_page_begins_or_ends_with_a_single_row_of_a_table(int linesAbove)
    {
        var above = Enumerable.Repeat(
            (Block)new MonospaceLines([.. Enumerable.Repeat("line", linesAbove)]),
            1
        );
        for (var rows = 3; rows < 12; rows++)
        {
            using var document = Draw(OddReports.Section([.. above, OddReports.Numbers(rows, 2)]));

            var perPage = document
                .GetPages()
                .Select(p => Rows(p).Count())
                .Where(n => n > 0)
                .ToArray();
            Assert.Equal(rows, perPage.Sum());
            Assert.DoesNotContain(1, perPage);
        }
    }

    [Fact]
    public void A_heading_never_ends_a_page()
    {
        var blocks = Enumerable
            .Range(0, 80)
            .SelectMany(i =>
                new Block[]
                {
                    new Heading("Heading"),
                    new Paragraph(
                        string.Concat(Enumerable.Repeat("words ", 5 + (i * 7 % 60))),
                        ParagraphStyle.Body
                    ),
                }
            );
        using var document = Draw(OddReports.Section([.. blocks]));

        Assert.True(document.NumberOfPages > 3);
        Assert.All(document.GetPages(), page => Assert.DoesNotMatch("Heading$", Text(page)));
    }

    [Fact]
    public void A_group_that_fits_a_page_is_never_split()
    {
        using var document = Draw([.. OddReports.All["groups"].Sections]);

        foreach (var group in "ABCDEFGHI")
        {
            var page = document
                .GetPages()
                .Single(p => Text(p).Contains("Group" + group, StringComparison.Ordinal));
            var after = Text(page).Split("Group" + group)[1].Split("Group")[0];
            Assert.Contains("Noteofthetable.", after, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Decimal_points_of_a_column_stand_below_each_other()
    {
        var table = new Table(
            "Caption",
            [new Column("Number", ColumnAlignment.DecimalPoint, 1)],
            [
                .. new[] { "1.5", "−12.25", "+100.125", "7" }.Select(t => new Row([
                    new TableCell(t),
                ])),
            ],
            null
        );
        using var document = Draw(OddReports.Section(table));

        var points = document
            .GetPage(1)
            .Letters.Where(l => l.Value is ".")
            .Select(l => l.StartBaseLine.X)
            .ToArray();

        Assert.Equal(3, points.Length);
        Assert.All(points, x => Assert.Equal(points[0], x, 0.1));
    }

    [Fact]
    public void Sections_and_headings_are_bookmarks_to_their_pages()
    {
        using var document = Draw(
            new Section("First", false, [new Heading("Below first")]),
            new Section("Second", true, [])
        );
        Assert.True(document.TryGetBookmarks(out var bookmarks));

        var nodes = bookmarks
            .GetNodes()
            .OfType<DocumentBookmarkNode>()
            .Select(n => (n.Title, n.Level, n.PageNumber))
            .ToArray();

        Assert.Equal([("First", 0, 1), ("Below first", 1, 1), ("Second", 0, 2)], nodes);
    }

    [Fact]
    public void Letter_and_A4_pages_have_their_sizes()
    {
        using var letter = PdfDocument.Open(
            PdfDrawing.Draw(OddReports.Report() with { Paper = PaperSize.Letter }).Pdf.ToArray()
        );
        using var a4 = Draw();

        Assert.Equal((612, 792), (letter.GetPage(1).Width, letter.GetPage(1).Height));
        Assert.Equal(
            (595.3, 841.9),
            (Math.Round(a4.GetPage(1).Width, 1), Math.Round(a4.GetPage(1).Height, 1))
        );
    }

    [Fact]
    public void Signature_rectangles_hold_the_printed_state_of_their_boxes()
    {
        var drawn = PdfDrawing.Draw(OddReports.All["five signatures"]);
        using var document = PdfDocument.Open(drawn.Pdf.ToArray());

        Assert.Equal(5, drawn.SignatureRectangles.Length);
        Assert.All(
            drawn.SignatureRectangles,
            place =>
            {
                var inside = document
                    .GetPage(place.Page)
                    .Letters.Where(l =>
                        l.StartBaseLine.X > place.Left && l.EndBaseLine.X < place.Left + place.Width
                    )
                    .Where(l =>
                        l.StartBaseLine.Y > place.Bottom
                        && l.StartBaseLine.Y < place.Bottom + place.Height
                    );
                var text = PdfReading.WithoutSpaces(string.Concat(inside.Select(l => l.Value)));
                Assert.StartsWith(
                    PdfReading.WithoutSpaces(place.Role),
                    text,
                    StringComparison.Ordinal
                );
                Assert.EndsWith(
                    "NOTSIGNEDPrintednameDateandtimeSignature",
                    text,
                    StringComparison.Ordinal
                );
            }
        );
    }

    private static PdfDocument Draw(params ImmutableArray<Section> sections) =>
        PdfDocument.Open(PdfDrawing.Draw(OddReports.Report(sections)).Pdf.ToArray());

    private static string Text(Page page) =>
        PdfReading.WithoutSpaces(string.Concat(page.Letters.Select(l => l.Value)));

    private static IEnumerable<string> Rows(Page page) =>
        page.GetWords().Select(w => w.Text).Where(t => t.EndsWith(".0", StringComparison.Ordinal));
}
