using System.Xml.Linq;
using StabilityStudy.Reporting.Charts;

namespace StabilityStudy.Reporting.Html;

/// <summary>Writes single blocks as elements; counts the figures, so that each has identifiers of its own.</summary>
internal sealed class HtmlBlocks
{
    private int _figures;

    /// <summary>The elements of a block; a page break gives none.</summary>
    public IEnumerable<XElement> Write(Block block) =>
        block switch
        {
            Heading heading => [new XElement("h3", heading.Text)],
            Paragraph paragraph => [WriteParagraph(paragraph)],
            Bullets bullets =>
            [
                new XElement("ul", bullets.Items.Select(item => new XElement("li", item))),
            ],
            DefinitionList list =>
            [
                new XElement(
                    "dl",
                    list.Items.SelectMany(item =>
                        new[]
                        {
                            new XElement("dt", item.Term),
                            new XElement("dd", item.Explanation),
                        }
                    )
                ),
            ],
            MonospaceLines lines =>
            [
                Scrolling(new XElement("pre", string.Join('\n', lines.Lines)), "Digests"),
            ],
            VerdictBlock verdict => verdict.Lines.Select(WriteVerdict),
            SignatureBoxes boxes =>
            [
                new XElement("div", new XAttribute("class", "boxes"), boxes.Boxes.Select(WriteBox)),
                new XElement("p", new XAttribute("class", "small"), HtmlDrawing.ReadingCopy),
            ],
            DecisionTable decisions => [HtmlDecisions.Write(decisions)],
            KeyMessage message =>
            [
                new XElement(
                    "p",
                    new XAttribute("class", message.IsPlain || message.IsCaption ? "small" : "key"),
                    new XElement("strong", message.Subject),
                    " " + message.Text
                ),
            ],
            Table table => [WriteTable(table)],
            ChartBlock chart => [WriteChart(chart, ChartSvg.Width)],
            Floating floating => [WriteChart(floating.Figure, ChartSvg.Width)],
            ChartRow row =>
            [
                new XElement(
                    "div",
                    new XAttribute("class", "row"),
                    row.Charts.Select(chart => WriteChart(chart, ChartSvg.WidthInRow))
                ),
            ],
            FlowFigure flow => [WriteFlow(flow)],
            KeepTogether kept => kept.Blocks.SelectMany(Write),
            PageBreak => [],
            _ => throw new InvalidOperationException($"No drawing of {block.GetType().Name}."),
        };

    /// <summary>A list in a list, which a reader hears in the order of the figure.</summary>
    private static XElement WriteFlow(FlowFigure flow) =>
        new(
            "div",
            new XAttribute("role", "group"),
            new XAttribute("aria-label", flow.AlternativeText),
            new XElement("p", string.Join(" → ", flow.Steps)),
            new XElement(
                "ul",
                flow.Branches.Select(branch => new XElement(
                    "li",
                    branch.Box,
                    branch.LeftOut.Length == 0 ? null : "; " + branch.LeftOut
                ))
            )
        );

    private static XElement WriteParagraph(Paragraph paragraph)
    {
        var lines = paragraph.Text.Split('\n');
        var element = new XElement(
            "p",
            lines.SelectMany(
                (line, index) => index == 0 ? new object[] { line } : [new XElement("br"), line]
            )
        );
        var style = paragraph.Style switch
        {
            ParagraphStyle.Small => "small",
            ParagraphStyle.Lead => "lead",
            ParagraphStyle.Strong => "strong",
            ParagraphStyle.Body => null,
        };
        element.SetAttributeValue("class", style);
        return element;
    }

    private static XElement WriteVerdict(VerdictLine line) =>
        new(
            "div",
            new XAttribute("class", "verdict"),
            new XElement(
                "p",
                HtmlGlyph.Of(line.Shape),
                new XElement("span", new XAttribute("class", "word"), line.Word),
                " ",
                line.Subject
            ),
            new XElement("p", line.Sentence)
        );

    private static XElement WriteBox(SignatureBox box) =>
        new(
            "div",
            new XAttribute("class", "box"),
            new XElement("p", new XElement("strong", box.Role), ": " + box.Meaning),
            box.Choices.IsEmpty
                ? null
                : new XElement(
                    "ul",
                    box.Choices.Concat(box.Rows.Select(row => row + " …"))
                        .Select(choice => new XElement("li", choice))
                ),
            new XElement("p", new XElement("strong", box.State))
        );

    private static XElement WriteTable(Table table)
    {
        var element = new XElement(
            "table",
            new XElement("caption", table.Caption),
            new XElement(
                "thead",
                new XElement(
                    "tr",
                    table.Columns.Select(column => new XElement(
                        "th",
                        new XAttribute("scope", "col"),
                        AlignmentOf(column),
                        column.Header
                    ))
                )
            ),
            new XElement("tbody", table.Rows.Select(row => WriteRow(row, table.Columns)))
        );
        var scrolling = Scrolling(element, table.Caption);
        return table.Note is null
            ? scrolling
            : new XElement(
                "div",
                scrolling,
                new XElement("p", new XAttribute("class", "note"), table.Note)
            );
    }

    private static XElement WriteRow(Row row, ImmutableArray<Column> columns) =>
        row.Kind == RowKind.GroupHeading
            ? new XElement(
                "tr",
                new XElement(
                    "th",
                    new XAttribute("scope", "rowgroup"),
                    new XAttribute(
                        "colspan",
                        columns.Length.ToString(CultureInfo.InvariantCulture)
                    ),
                    row.Cells[0].Text
                )
            )
            : new XElement(
                "tr",
                row.Cells.Select(
                    (cell, index) =>
                        new XElement(
                            IsHead(cell, index) ? "th" : "td",
                            IsHead(cell, index) ? new XAttribute("scope", "row") : null,
                            AlignmentOf(columns[index]),
                            cell.Shape is { } shape ? HtmlGlyph.Of(shape) : null,
                            cell.Emphasis switch
                            {
                                Emphasis.Strong => new XElement("strong", cell.Text),
                                Emphasis.Muted => new XElement(
                                    "span",
                                    new XAttribute("class", "muted"),
                                    cell.Text
                                ),
                                Emphasis.None => (object)cell.Text,
                            }
                        )
                )
            );

    private static bool IsHead(TableCell cell, int column) => column == 0 && cell.Text.Length > 0;

    private static XAttribute? AlignmentOf(Column column) =>
        column.Alignment switch
        {
            ColumnAlignment.Right or ColumnAlignment.DecimalPoint => new("class", "right"),
            ColumnAlignment.Center => new("class", "center"),
            ColumnAlignment.Left => null,
        };

    /// <summary>What is wider than the window is scrolled, with the keyboard too.</summary>
    private static XElement Scrolling(XElement content, string label) =>
        new(
            "div",
            new XAttribute("class", "wide"),
            new XAttribute("role", "group"),
            new XAttribute("aria-label", label),
            new XAttribute("tabindex", "0"),
            content
        );

    private XElement WriteChart(ChartBlock chart, int width)
    {
        _figures++;
        var prefix = string.Create(CultureInfo.InvariantCulture, $"f{_figures}-");
        return new XElement(
            "figure",
            ChartSvg.Draw(chart, width, prefix),
            chart.Caption.Length == 0
                ? null
                : new XElement("figcaption", new XAttribute("class", "note"), chart.Caption)
        );
    }
}
