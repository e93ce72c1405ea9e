namespace StabilityStudy.Reporting.Pdf;

/// <summary>A piece at its place on a page, its top in points from the upper edge of the paper.</summary>
internal sealed record PlacedPiece(Piece Piece, double Top, bool Repeated);

/// <summary>Distributes pieces over pages.</summary>
internal static class Pagination
{
    /// <summary>Share of a page that may stay blank for the sake of a group.</summary>
    private const double MostBlank = 0.3;

    /// <summary>Where the last page before a forced break would hold less than this share, white space gives way to spare it.</summary>
    private const double LeastFilled = 0.3;

    private static readonly ImmutableArray<double> s_tighter = [0.9, 0.8, 0.7, 0.6, 0.5, 0.4];

    /// <summary>Fills the pages of a document; the pieces between two forced breaks are spread over as few as they may need.</summary>
    public static ImmutableArray<ImmutableArray<PlacedPiece>> Distribute(
        ImmutableArray<Piece> pieces,
        PageFrame frame
    )
    {
        var pages = ImmutableArray.CreateBuilder<ImmutableArray<PlacedPiece>>();
        var start = 0;
        for (var end = 1; end <= pieces.Length; end++)
        {
            if (end == pieces.Length || pieces[end].StartsPage)
            {
                pages.AddRange(Spread(pieces[start..end], frame));
                start = end;
            }
        }

        return pages.Count == 0 ? Fill([], frame.ContentHeight) : pages.ToImmutable();
    }

    private static ImmutableArray<ImmutableArray<PlacedPiece>> Spread(
        ImmutableArray<Piece> pieces,
        PageFrame frame
    )
    {
        var height = frame.ContentHeight;
        var pages = Fill(pieces, height, frame.Top);
        var last = pages[^1][^1];
        if (pages.Length == 1 || last.Top + last.Piece.Height - frame.Top > LeastFilled * height)
        {
            return pages;
        }

        return s_tighter
            .Select(white => Fill(pieces, height, frame.Top, white))
            .FirstOrDefault(tighter => tighter.Length < pages.Length, pages);
    }

    /// <summary>
    /// Fills pages from the top. A run of pieces that hold each other moves to the next page as a whole; a run that
    /// no page can hold, or that would leave too much of this page blank, is first split where only a group held it,
    /// then anywhere.
    /// </summary>
    /// <param name="pieces">What to fill with.</param>
    /// <param name="height">Height of each page.</param>
    /// <param name="top">Where a page begins.</param>
    /// <param name="white">Share of the space between pieces that stays.</param>
    public static ImmutableArray<ImmutableArray<PlacedPiece>> Fill(
        ImmutableArray<Piece> pieces,
        double height,
        double top = 0,
        double white = 1
    )
    {
        var pages = new PageFiller(height, top, white);
        var start = 0;
        var splitUntil = 0;
        var wholeSplitUntil = 0;
        while (start < pieces.Length)
        {
            var run = RunFrom(pieces, start, Hold.Group);
            if (start < splitUntil || !pages.FitsEmptyPage(run) || pages.WouldLeaveBlank(run))
            {
                splitUntil = start + run.Length;
                run = RunFrom(pieces, start, Hold.Whole);
            }

            if (start < wholeSplitUntil || !pages.FitsEmptyPage(run))
            {
                wholeSplitUntil = Math.Max(wholeSplitUntil, start + run.Length);
                run = RunFrom(pieces, start, Hold.Firm);
            }

            if (!pages.FitsEmptyPage(run))
            {
                run = run[..1];
            }

            pages.Place(run);
            start += run.Length;
        }

        return pages.Finish();
    }

    private static ImmutableArray<Piece> RunFrom(
        ImmutableArray<Piece> pieces,
        int start,
        Hold weakest
    )
    {
        var end = start;
        while (
            end < pieces.Length - 1
            && pieces[end].HoldNext >= weakest
            && !pieces[end + 1].StartsPage
        )
        {
            end++;
        }

        return pieces[start..(end + 1)];
    }

    private sealed class PageFiller(double height, double top, double white)
    {
        private readonly ImmutableArray<ImmutableArray<PlacedPiece>>.Builder _pages =
            ImmutableArray.CreateBuilder<ImmutableArray<PlacedPiece>>();

        private readonly ImmutableArray<PlacedPiece>.Builder _page =
            ImmutableArray.CreateBuilder<PlacedPiece>();

        private double _used;

        public bool FitsEmptyPage(ImmutableArray<Piece> run) => HeightAtTop(run) <= height;

        /// <summary>Whether the run would move to the next page and leave much of this one blank.</summary>
        public bool WouldLeaveBlank(ImmutableArray<Piece> run) =>
            !run[0].StartsPage && !Fits(run) && height - _used > MostBlank * height;

        public void Place(ImmutableArray<Piece> run)
        {
            if (_page.Count > 0 && (run[0].StartsPage || !Fits(run)))
            {
                TurnPage();
            }

            foreach (var piece in run)
            {
                if (_page.Count == 0 && piece.RepeatedAbove is { } repeated)
                {
                    Put(repeated, isRepeated: true);
                }

                Put(piece, isRepeated: false);
            }
        }

        public ImmutableArray<ImmutableArray<PlacedPiece>> Finish()
        {
            if (_page.Count > 0 || _pages.Count == 0)
            {
                TurnPage();
            }

            return _pages.ToImmutable();
        }

        private bool Fits(ImmutableArray<Piece> run) => _used + HeightOf(run) <= height;

        private double HeightAtTop(ImmutableArray<Piece> run) =>
            HeightOf(run)
            + (
                run[0].RepeatedAbove is { } repeated ? repeated.Height : -white * run[0].SpaceBefore
            );

        private double HeightOf(ImmutableArray<Piece> run) =>
            run.Sum(p => p.Height + (white * p.SpaceBefore));

        private void Put(Piece piece, bool isRepeated)
        {
            _used += _page.Count == 0 ? 0 : white * piece.SpaceBefore;
            _page.Add(new PlacedPiece(piece, top + _used, isRepeated));
            _used += piece.Height;
        }

        private void TurnPage()
        {
            _pages.Add(_page.ToImmutable());
            _page.Clear();
            _used = 0;
        }
    }
}
