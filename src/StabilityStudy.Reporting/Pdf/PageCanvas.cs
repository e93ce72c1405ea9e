using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;
using StabilityStudy.Reporting.Fonts;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>
/// Draws onto the current page and keeps the tag tree in step: structure elements may run over several pages, but
/// pages are written strictly in order.
/// </summary>
internal sealed class PageCanvas(PdfDocument document, PageFrame frame)
{
    private readonly Dictionary<(FontFace, double), XFont> _fonts = [];
    private readonly List<Tag> _open = [];
    private readonly UAManager _accessibility = UAManager.ForDocument(document);
    private XGraphics? _graphics;
    private bool _repeating;

    public PageFrame Frame { get; private set; } = frame;

    public int PageNumber => document.PageCount;

    public PdfPage Page => document.Pages[^1];

    private XGraphics Graphics =>
        _graphics ?? throw new InvalidOperationException("No page has been started.");

    private StructureBuilder Structure => _accessibility.StructureBuilder;

    /// <summary>Starts the next page, on the paper of the page before.</summary>
    public void StartPage() => StartPage(Frame);

    /// <summary>Starts the next page on some paper.</summary>
    public void StartPage(PageFrame frame)
    {
        Frame = frame;
        // Adding a page closes the open marked content of the page before, which must still be open for writing.
        var before = _graphics;
        var page = document.AddPage();
        before?.Dispose();
        page.Width = XUnit.FromPoint(frame.Width);
        page.Height = XUnit.FromPoint(frame.Height);
        _graphics = XGraphics.FromPdfPage(page);
    }

    /// <summary>Closes all structure elements and the last page.</summary>
    public void Finish()
    {
        Enter([]);
        _graphics?.Dispose();
        _graphics = null;
    }

    /// <summary>Makes these structure elements the open ones, the outermost first.</summary>
    public void Enter(ImmutableArray<Tag> tags)
    {
        var shared = 0;
        while (shared < tags.Length && shared < _open.Count && _open[shared] == tags[shared])
        {
            shared++;
        }

        while (_open.Count > shared)
        {
            Structure.End();
            _open.RemoveAt(_open.Count - 1);
        }

        foreach (var tag in tags[shared..])
        {
            if (tag.IsGrouping)
            {
                Structure.BeginGroupingElement("/" + tag.Name);
            }
            else
            {
                Structure.BeginBlockLevelElement("/" + tag.Name);
            }

            _open.Add(tag);
        }
    }

    /// <summary>Draws inside one more structure element.</summary>
    public void Tagged(string name, Action draw)
    {
        if (_repeating)
        {
            draw();
            return;
        }

        Structure.BeginBlockLevelElement("/" + name);
        draw();
        Structure.End();
    }

    /// <summary>Draws a head or group cell of a table.</summary>
    public void TaggedHead(string scope, int columns, Action draw, int rows = 1)
    {
        if (_repeating)
        {
            draw();
            return;
        }

        Structure.BeginBlockLevelElement("/TH");
        var attributes = new PdfDictionary();
        attributes.Elements.SetName("/O", "/Table");
        attributes.Elements.SetName("/Scope", "/" + scope);
        if (columns > 1)
        {
            attributes.Elements.SetInteger("/ColSpan", columns);
        }

        if (rows > 1)
        {
            attributes.Elements.SetInteger("/RowSpan", rows);
        }

        Structure.CurrentStructureElement.Elements["/A"] = attributes;
        draw();
        Structure.End();
    }

    /// <summary>Draws a cell of a table that reaches over some rows.</summary>
    public void TaggedCell(int rows, Action draw)
    {
        Structure.BeginBlockLevelElement("/TD");
        if (rows > 1)
        {
            var attributes = new PdfDictionary();
            attributes.Elements.SetName("/O", "/Table");
            attributes.Elements.SetInteger("/RowSpan", rows);
            Structure.CurrentStructureElement.Elements["/A"] = attributes;
        }

        draw();
        Structure.End();
    }

    /// <summary>Draws something that a reader of the tag tree does not meet: rules, repeated heads, margins.</summary>
    public void Artifact(Action draw)
    {
        if (_repeating)
        {
            draw();
            return;
        }

        Structure.BeginArtifact();
        draw();
        Structure.End();
    }

    /// <summary>Draws something that has been drawn before: as an artifact, with its tags left out.</summary>
    public void Untagged(Action draw)
    {
        Structure.BeginArtifact();
        _repeating = true;
        draw();
        _repeating = false;
        Structure.End();
    }

    /// <summary>Draws a page of another PDF as a figure.</summary>
    public void Figure(XImage image, XRect area, string alternativeText) =>
        Illustration(alternativeText, area, () => Graphics.DrawImage(image, area));

    /// <summary>Draws a figure of lines and words here.</summary>
    public void Illustration(string alternativeText, XRect area, Action draw)
    {
        Structure.BeginIllustrationElement("/Figure", alternativeText, Frame.FromBelow(area));
        draw();
        Structure.End();
    }

    /// <summary>Writes one line with its top at the given height.</summary>
    public void Text(string line, TextStyle style, double x, double top)
    {
        if (line.Length > 0)
        {
            Graphics.DrawString(
                line,
                Font(style),
                new XSolidBrush(style.Color),
                x,
                top + style.Ascent
            );
        }
    }

    /// <summary>Writes lines below each other; a reader of the text meets a space between them.</summary>
    public void Lines(ImmutableArray<string> lines, TextStyle style, double x, double top)
    {
        for (var i = 0; i < lines.Length; i++)
        {
            Text(lines[i] + (i < lines.Length - 1 ? " " : ""), style, x, top + (i * style.Leading));
        }
    }

    public void Line(double x1, double y1, double x2, double y2, double width, XColor color) =>
        Graphics.DrawLine(new XPen(color, width), x1, y1, x2, y2);

    public void Stroke(XGraphicsPath path, XColor color, double width) =>
        Graphics.DrawPath(
            new XPen(color, width) { LineJoin = XLineJoin.Miter, LineCap = XLineCap.Round },
            path
        );

    public void Fill(XGraphicsPath path, XColor color) =>
        Graphics.DrawPath(new XSolidBrush(color), path);

    private XFont Font(TextStyle style)
    {
        if (!_fonts.TryGetValue((style.Face, style.Size), out var font))
        {
            var family = style.Face == ReportFonts.Fixed ? ReportFonts.Mono : ReportFonts.Sans;
            var weight =
                style.Face == ReportFonts.Semibold ? XFontStyleEx.Bold
                : style.Face == ReportFonts.Italic ? XFontStyleEx.Italic
                : XFontStyleEx.Regular;
            font = new XFont(
                family,
                style.Size,
                weight,
                new XPdfFontOptions(PdfFontEncoding.Unicode)
            );
            _fonts.Add((style.Face, style.Size), font);
        }

        return font;
    }
}
