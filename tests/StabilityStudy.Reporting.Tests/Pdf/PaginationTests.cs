using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Tests.Pdf;

public class PaginationTests
{
    private const double Height = 100;

    [Theory]
    [InlineData(71, 1)]
    [InlineData(69, 3)]
    public void A_group_is_split_rather_than_leave_a_third_of_the_page_blank(
        double used,
        int onFirstPage
    )
    {
        var pages = Pagination.Fill(
            [Piece(used, Hold.None), .. Group(rows: 5, height: 15)],
            Height
        );

        Assert.Equal(2, pages.Length);
        Assert.Equal(onFirstPage, pages[0].Length);
    }

    [Fact]
    public void A_group_that_no_page_can_hold_flows_on_without_a_gap()
    {
        var pages = Pagination.Fill([Piece(50, Hold.None), .. Group(rows: 12, height: 10)], Height);

        Assert.Equal([6, 7], pages.Select(page => page.Length));
    }

    [Fact]
    public void What_is_held_firmly_is_not_split_for_the_sake_of_a_blank_page()
    {
        var pages = Pagination.Fill(
            [
                Piece(20, Hold.None),
                Piece(45, Hold.Firm),
                Piece(45, Hold.Group),
                Piece(10, Hold.None),
            ],
            Height
        );

        Assert.Equal([1, 3], pages.Select(page => page.Length));
    }

    [Theory]
    [InlineData(2, 1)]
    [InlineData(9, 2)]
    public void White_space_gives_way_to_spare_a_nearly_empty_last_page(int linesOver, int pages)
    {
        var frame = PageFrame.Of(PaperSize.A4);
        var lines = (int)(frame.ContentHeight / 20) + linesOver;
        var spread = Pagination.Distribute(
            [.. Enumerable.Range(0, lines).Select(_ => Piece(16, Hold.None, spaceBefore: 4))],
            frame
        );

        Assert.Equal(pages, spread.Length);
        Assert.Equal(lines, spread.Sum(page => page.Length));
        Assert.Equal(frame.Top, spread[^1][0].Top);
    }

    [Fact]
    public void A_forced_break_stays_where_white_space_gives_way()
    {
        var frame = PageFrame.Of(PaperSize.A4);
        var lines = (int)(frame.ContentHeight / 20) + 2;
        var before = Enumerable
            .Range(0, lines)
            .Select(_ => Piece(16, Hold.None, spaceBefore: 4))
            .ToImmutableArray();
        var spread = Pagination.Distribute(
            [.. before, Piece(16, Hold.None, 4) with { StartsPage = true }],
            frame
        );

        Assert.Equal([lines, 1], spread.Select(page => page.Length));
        Assert.Equal(frame.Top, spread[1][0].Top);
    }

    private static IEnumerable<Piece> Group(int rows, double height) =>
        Enumerable
            .Range(0, rows)
            .Select(row => Piece(height, row < rows - 1 ? Hold.Group : Hold.None));

    private static Piece Piece(double height, Hold hold, double spaceBefore = 0) =>
        new(height, spaceBefore, [], (_, _) => { }) { HoldNext = hold };
}
