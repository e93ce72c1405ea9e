using PdfSharp.Pdf;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>Makes the outline of the document: sections, and their headings below them.</summary>
internal sealed class Bookmarks(PdfDocument document)
{
    private PdfOutline? _section;

    /// <summary>Adds a bookmark that leads to the given height of the current page.</summary>
    public void Add(string text, int level, PageCanvas canvas, double top)
    {
        var siblings = level == 1 || _section is null ? document.Outlines : _section.Outlines;
        var added = siblings.Add(text, canvas.Page, opened: level == 1);
        added.PageDestinationType = PdfPageDestinationType.Xyz;
        added.Left = 0;
        added.Top = canvas.Frame.Height - top + 4;
        if (level == 1)
        {
            _section = added;
        }
    }
}
