using PdfSharp.Pdf;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Tests.Model;

namespace StabilityStudy.Reporting.Tests.Pdf;

/// <summary>A figure whose height the page decides, above lines that stand for the rest of a section.</summary>
public class FloatingFigureTests
{
    private static readonly PageFrame s_frame = PageFrame.Of(PaperSize.A4);

    private const double Least = 40;
    private const double Most = 90;

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

    private static ImmutableArray<Block> FloatingAbove(int paragraphs) =>
        [
            // Page 1 alone has a figure whose height it decides.
            new DecisionTable(new EvidenceHead("Waited", "Change", "Share", "Conclusion"), [], ""),
            new Floating(
                Uncaptioned(DemoCharts.Difference()) with
                {
                    HeightMillimeters = Most,
                },
                Least
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
