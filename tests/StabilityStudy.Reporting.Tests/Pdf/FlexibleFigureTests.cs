using PdfSharp.Pdf;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Tests.Model;

namespace StabilityStudy.Reporting.Tests.Pdf;

/// <summary>Figures whose height the page decides, above lines that stand for the rest of a section.</summary>
public class FlexibleFigureTests
{
    private static readonly PageFrame s_frame = PageFrame.Of(PaperSize.A4);

    private static readonly HeightRange s_heights = new(Least: 40, Usual: 60, Most: 90);

    [Theory]
    [InlineData(1)]
    [InlineData(20)]
    public void A_section_that_fits_its_page_has_figures_of_the_usual_height(int lines) =>
        Assert.Equal(60, FigureOf(Lay(RowAbove(lines))), 0.5);

    [Fact]
    public void Figures_are_lower_where_the_section_then_fits_and_fill_the_page_where_it_never_does()
    {
        var laid = Enumerable
            .Range(20, 60)
            .Select(lines => Lay(RowAbove(lines)))
            .Select(pieces => (Figure: FigureOf(pieces), Pages: PagesOf(pieces)))
            .ToImmutableArray();

        var lower = laid.RemoveAll(drawn => drawn.Figure > 59);
        var higher = laid.RemoveAll(drawn => drawn.Pages == 1);
        Assert.NotEmpty(lower);
        Assert.All(lower, drawn => Assert.Equal(1, drawn.Pages));
        Assert.All(lower, drawn => Assert.InRange(drawn.Figure, 39.5, 59));
        Assert.NotEmpty(higher);
        Assert.All(higher, drawn => Assert.Equal(90, drawn.Figure, 0.5));
    }

    [Fact]
    public void White_space_gives_way_before_a_floating_figure_leaves_its_page()
    {
        var laid = Enumerable
            .Range(20, 80)
            .Select(paragraphs => Lay(FloatingAbove(paragraphs)))
            .Where(pieces => PagesOf(pieces) == 1)
            .ToImmutableArray();

        Assert.Contains(laid, IsTightened);
        Assert.All(laid, pieces => Assert.InRange(FigureOf(pieces), 39.5, 90.5));
        Assert.All(laid.Where(IsTightened), pieces => Assert.Equal(40, FigureOf(pieces), 0.5));
    }

    private static bool IsTightened(ImmutableArray<Piece> pieces) =>
        pieces[^1].SpaceBefore < Lay(FloatingAbove(1))[^1].SpaceBefore;

    private static ImmutableArray<Block> RowAbove(int lines) =>
        [
            new ChartRow([
                Uncaptioned(DemoCharts.Difference()),
                Uncaptioned(DemoCharts.Regression()),
            ])
            {
                Flexible = s_heights,
            }.OfHeight(s_heights.Usual),
            new KeepTogether([new MonospaceLines([.. Enumerable.Repeat("line", lines)])]),
        ];

    private static ImmutableArray<Block> FloatingAbove(int paragraphs) =>
        [
            new Floating(
                Uncaptioned(DemoCharts.Difference()) with
                {
                    HeightMillimeters = s_heights.Most,
                },
                s_heights.Least
            ),
            .. Enumerable.Repeat(new Paragraph("One line.", ParagraphStyle.Body), paragraphs),
        ];

    private static ChartBlock Uncaptioned(ChartBlock chart) => chart with { Caption = "" };

    private static ImmutableArray<Piece> Lay(ImmutableArray<Block> blocks)
    {
        using var figures = new FigureBook();
        var layout = new BlockLayout(
            s_frame,
            figures,
            new SignaturePlaces(),
            new Bookmarks(new PdfDocument())
        );
        return layout.Section(new Section("Title", StartsOnNewPage: true, blocks), 0);
    }

    /// <summary>Height in millimeters of the highest piece, which is the figure.</summary>
    private static double FigureOf(ImmutableArray<Piece> pieces) =>
        PageFrame.ToMillimeters(pieces.Max(piece => piece.Height));

    private static int PagesOf(ImmutableArray<Piece> pieces) =>
        Pagination.Distribute(pieces, s_frame).Length;
}
