using System.Text;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Structure;
using PdfSharp.UniversalAccessibility;

namespace StabilityStudy.SignedPdf.Tests.Drawing;

/// <summary>
/// A document as the report is drawn: text in an embedded font, tags, outline, links, an imported figure and an attached file.
/// Each drawing gives other bytes, because the library puts in the time and random names.
/// </summary>
internal static class DrawnDocument
{
    static DrawnDocument() => GlobalFontSettings.FontResolver = new SampleFontResolver();

    public static byte[] Draw(int pages = 3)
    {
        using var document = new PdfDocument();
        document.Info.Title = "Drawn <title> & more";
        var tags = UAManager.ForDocument(document);
        document.Language = "en-US";
        var font = new XFont("Sample", 11);
        using var figure = XPdfForm.FromStream(new MemoryStream(DrawFigure()));
        using var plots = XPdfForm.FromStream(new MemoryStream(TestData.Read("figures.pdf")));
        for (var number = 1; number <= pages; number++)
        {
            var page = document.AddPage();
            using var graphics = XGraphics.FromPdfPage(page);
            var builder = tags.StructureBuilder;
            builder.BeginElement(PdfBlockLevelElementTag.Heading1);
            graphics.DrawString(
                $"Heading of page {number}",
                font,
                XBrushes.Black,
                new XPoint(50, 60)
            );
            builder.End();
            builder.BeginElement(PdfBlockLevelElementTag.Paragraph);
            graphics.DrawString(
                $"Mean change ±{number}.5 % ≤ 7.5 %, met ✓",
                font,
                XBrushes.Black,
                new XPoint(50, 90)
            );
            builder.End();
            builder.BeginElement(
                PdfIllustrationElementTag.Figure,
                "A line from left to right.",
                new XRect(50, 120, 200, 100)
            );
            graphics.DrawImage(figure, new XRect(50, 120, 200, 100));
            builder.End();
            plots.PageNumber = ((number - 1) % plots.PageCount) + 1;
            builder.BeginElement(
                PdfIllustrationElementTag.Figure,
                "Dots around a dashed line.",
                new XRect(50, 250, 300, 200)
            );
            graphics.DrawImage(plots, new XRect(50, 250, 300, 200));
            builder.End();
            document.Outlines.Add($"Page {number}", page);
            page.AddWebLink(new PdfRectangle(new XRect(50, 700, 100, 20)), "https://example.org/");
        }

        document.AddEmbeddedFile(
            "drawn.txt",
            new MemoryStream(Encoding.ASCII.GetBytes("attached while drawing"))
        );
        return Save(document);
    }

    private static byte[] DrawFigure()
    {
        using var document = new PdfDocument();
        var page = document.AddPage();
        page.Width = XUnit.FromPoint(200);
        page.Height = XUnit.FromPoint(100);
        using (var graphics = XGraphics.FromPdfPage(page))
        {
            graphics.DrawLine(XPens.Black, 10, 90, 190, 10);
            graphics.DrawString(
                "figure",
                new XFont("Sample", 9),
                XBrushes.Black,
                new XPoint(20, 20)
            );
        }

        return Save(document);
    }

    private static byte[] Save(PdfDocument document)
    {
        using var stream = new MemoryStream();
        document.Save(stream, closeStream: false);
        return stream.ToArray();
    }
}
