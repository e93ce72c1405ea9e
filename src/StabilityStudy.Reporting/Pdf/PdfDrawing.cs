using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;
using StabilityStudy.Reporting.Fonts;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Draws a report as a tagged PDF with bookmarks, embedded fonts and vector figures.</summary>
public static class PdfDrawing
{
    private static readonly Lock OneAtATime = new();

    /// <summary>
    /// Draws a report. Equal models give pages with equal content, whatever the machine, its fonts, culture and time;
    /// only PDFsharp's identifiers and dates differ. Drawings run one after the other, because the plot and PDF
    /// libraries share their fonts among all documents of a process.
    /// </summary>
    public static DrawnReport Draw(ReportModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        lock (OneAtATime)
        {
            return DrawAlone(model);
        }
    }

    /// <summary>
    /// Draws a report whose sentences name pages: with those of the layout, and again where naming them moved one, since a number may turn a line and so a page.
    /// </summary>
    /// <param name="build">The report with the pages that its sentences name; null before any is known.</param>
    /// <returns>The report and its drawing.</returns>
    public static (ReportModel Model, DrawnReport Drawn) DrawSettled(
        Func<SectionPages?, ReportModel> build
    )
    {
        ArgumentNullException.ThrowIfNull(build);
        const int most = 5;
        var pages = PagesOf(build(null));
        for (var round = 1; ; round++)
        {
            var model = build(pages);
            var drawn = Draw(model);
            if (
                round == most
                || drawn.Pages.Pages.All(section => pages.PageOf(section.Key) == section.Value)
            )
            {
                return (model, drawn);
            }

            pages = drawn.Pages;
        }
    }

    /// <summary>On which page each section would start.</summary>
    public static SectionPages PagesOf(ReportModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        lock (OneAtATime)
        {
            ReportFonts.Register();
            using var document = new PdfDocument();
            using var figures = new FigureBook();
            var layout = Layout(model, document, figures, new SignaturePlaces());
            return PagesOf(layout, Pagination.Distribute(layout.All, PageFrame.Of(model.Paper)));
        }
    }

    private static SectionPages PagesOf(
        LaidOutReport layout,
        ImmutableArray<ImmutableArray<PlacedPiece>> pages
    )
    {
        var starts = new Dictionary<Piece, string>(ReferenceEqualityComparer.Instance);
        foreach (var section in layout.Sections)
        {
            starts.Add(section.Pieces[0], section.Title);
        }

        return new SectionPages(
            pages
                .SelectMany((page, i) => page.Select(placed => (placed.Piece, Page: i + 1)))
                .Where(item => starts.ContainsKey(item.Piece))
                .DistinctBy(item => starts[item.Piece], StringComparer.Ordinal)
                .ToImmutableDictionary(item => starts[item.Piece], item => item.Page)
        );
    }

    /// <summary>Draws pages that are laid out already.</summary>
    internal static DrawnReport DrawPages(string title, PageFrame frame, Action<PageCanvas> draw)
    {
        lock (OneAtATime)
        {
            ReportFonts.Register();
            using var document = new PdfDocument();
            document.Info.Title = title;
            document.Options.CompressContentStreams = true;
            UAManager.ForDocument(document).SetDocumentLanguage("en-US");
            var canvas = new PageCanvas(document, frame);
            draw(canvas);
            canvas.Finish();
            var pages = document.PageCount;
            using var output = new MemoryStream();
            document.Save(output, closeStream: false);
            return new DrawnReport(output.GetBuffer().AsMemory(0, (int)output.Length), pages, []);
        }
    }

    private static DrawnReport DrawAlone(ReportModel model)
    {
        ReportFonts.Register();
        var frame = PageFrame.Of(model.Paper);
        using var document = new PdfDocument();
        document.Info.Title = model.Title;
        document.Options.CompressContentStreams = true;
        UAManager.ForDocument(document).SetDocumentLanguage(model.Language);

        using var figures = new FigureBook();
        var signatures = new SignaturePlaces();
        var layout = Layout(model, document, figures, signatures);
        var pages = Pagination.Distribute(layout.All, frame);
        var canvas = new PageCanvas(document, frame);
        foreach (var page in pages)
        {
            canvas.StartPage();
            RunningTexts.Draw(model.Header, pages.Length, canvas);
            DrawPieces(page, canvas);
        }

        canvas.Finish();
        using var output = new MemoryStream();
        document.Save(output, closeStream: false);
        return new DrawnReport(
            output.GetBuffer().AsMemory(0, (int)output.Length),
            pages.Length,
            signatures.All()
        )
        {
            Pages = PagesOf(layout, pages),
            DecisionRectangles = signatures.Decisions(),
        };
    }

    private static LaidOutReport Layout(
        ReportModel model,
        PdfDocument document,
        FigureBook figures,
        SignaturePlaces signatures
    )
    {
        var layout = new BlockLayout(
            PageFrame.Of(model.Paper),
            figures,
            signatures,
            new Bookmarks(document)
        );
        var title = layout.Title(model.Title);
        var above = title.Sum(piece => piece.Height + piece.SpaceBefore);
        var first = model
            .Sections.Take(1)
            .Select(section => layout.Section(section with { StartsOnNewPage = false }, above))
            .FirstOrDefault([]);

        // What found no room on page 1 has a page of its own already, which the next section then shares.
        var hasOverflow = first.Any(piece => piece.StartsPage);
        return new LaidOutReport(
            title,
            [
                .. model.Sections.Select(
                    (section, i) =>
                        new LaidOutSection(
                            section.Title,
                            i switch
                            {
                                0 => first,
                                1 when hasOverflow => layout.Section(
                                    section with
                                    {
                                        StartsOnNewPage = false,
                                    },
                                    0
                                ),
                                _ => layout.Section(section, 0),
                            }
                        )
                ),
            ]
        );
    }

    private sealed record LaidOutSection(string Title, ImmutableArray<Piece> Pieces);

    private sealed record LaidOutReport(
        ImmutableArray<Piece> Title,
        ImmutableArray<LaidOutSection> Sections
    )
    {
        public ImmutableArray<Piece> All =>
            [.. Title, .. Sections.SelectMany(section => section.Pieces)];
    }

    private static void DrawPieces(ImmutableArray<PlacedPiece> page, PageCanvas canvas)
    {
        foreach (var placed in page)
        {
            // Repeated heads draw themselves as artifacts inside the element that is open already.
            if (!placed.Repeated)
            {
                canvas.Enter(placed.Piece.Tags);
            }

            placed.Piece.Draw(canvas, placed.Top);
        }
    }
}
