using System.Collections.Immutable;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Model;

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
        var layout = new BlockLayout(frame, figures, signatures, new Bookmarks(document));
        ImmutableArray<Piece> pieces =
        [
            .. layout.Title(model.Title),
            .. model.Sections.SelectMany(
                (section, i) =>
                    layout.Section(i == 0 ? section with { StartsOnNewPage = false } : section)
            ),
        ];
        var pages = Pagination.Distribute(pieces, frame);
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
        return new DrawnReport(output.ToArray(), pages.Length, signatures.All());
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
