using System.Xml.Linq;
using StabilityStudy.Reporting.Charts;

namespace StabilityStudy.Reporting.Html;

/// <summary>Writes single blocks as elements; counts the figures, so that each has identifiers of its own.</summary>
internal sealed class HtmlBlocks(SpecimenRows specimens)
{
    private readonly HashSet<string> _written = new(StringComparer.Ordinal);
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
                        }.Concat(
                            item.Aside.Length == 0
                                ? []
                                : [new XElement("dd", new XElement("small", item.Aside))]
                        )
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

    private XElement WriteTable(Table table)
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
        if (table.IsOfConclusions)
        {
            StackedTable.Of(element);
        }

        var scrolling = Scrolling(element, table.Caption);
        return table.Note is null
            ? scrolling
            : new XElement(
                "div",
                scrolling,
                new XElement("p", new XAttribute("class", "note"), table.Note)
            );
    }

    private XElement WriteRow(Row row, ImmutableArray<Column> columns)
    {
        if (row.Kind == RowKind.GroupHeading)
        {
            return new XElement(
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
            );
        }

        var element = new XElement(
            "tr",
            row.Cells.Select((cell, index) => WriteCell(cell, index, columns[index]))
        );
        SpecimenLinks.SetSubject(element, row.Subject);
        if (
            row.ResultsOf is { } results
            && specimens.Find(results.Specimen, results.Subject, results.Analyte) is { } own
        )
        {
            element.AddAnnotation(results);
            if (_written.Add(own.Id))
            {
                element.SetAttributeValue("id", own.Id);
                element.Elements().First().Add(OtherResults(own));
            }
        }

        return element;
    }

    private static XElement WriteCell(TableCell cell, int index, Column column) =>
        new(
            IsHead(cell, index) ? "th" : "td",
            IsHead(cell, index) ? new XAttribute("scope", "row") : null,
            AlignmentOf(column),
            cell.Shape is { } shape ? HtmlGlyph.Of(shape) : null,
            cell.Text.Length == 0 ? null : TextOf(cell, column)
        );

    private static object TextOf(TableCell cell, Column column) =>
        cell.Emphasis switch
        {
            Emphasis.Strong => new XElement("strong", cell.Text),
            Emphasis.Muted => new XElement("span", new XAttribute("class", "muted"), cell.Text),
            Emphasis.None when column.IsOfSpecimens => SpecimenLinks.Of(cell.Text),
            Emphasis.None => cell.Text,
        };

    /// <summary>The way to the results of the same specimen in other tables, by their analytes where these tell them apart.</summary>
    private IEnumerable<object> OtherResults(SpecimenRow own)
    {
        var rows = specimens.RowsOf(own.Results.Specimen);
        var byAnalyte = rows.DistinctBy(row => row.Results.Analyte).Count() == rows.Length;
        return rows.Where(row => row != own)
            .SelectMany(
                (row, index) =>
                    new object[]
                    {
                        index == 0 ? new XElement("br") : ", ",
                        new XElement(
                            "a",
                            new XAttribute("href", "#" + row.Id),
                            byAnalyte ? row.Results.Analyte : row.Results.Subject
                        ),
                    }
            );
    }

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
                : new XElement("figcaption", new XAttribute("class", "note"), chart.Caption),
            Named(chart) is { Length: > 0 } named
                ? new XElement(
                    "p",
                    new XAttribute("class", "note"),
                    "Named in the figure: ",
                    named.SelectMany(
                        (specimen, index) =>
                            index == 0
                                ? new object[] { SpecimenLinks.Of(specimen) }
                                : [", ", SpecimenLinks.Of(specimen)]
                    )
                )
                : null
        );
    }

    /// <summary>The specimens whose points have their names beside them: a drawing is one image, so its links stand below.</summary>
    private string[] Named(ChartBlock chart) =>
        [
            .. chart
                .Chart.Layers.OfType<PointLayer>()
                .SelectMany(layer => layer.Points)
                .Select(point => point.Label?.Split(' ', ':')[0])
                .OfType<string>()
                .Where(name => !specimens.RowsOf(name).IsEmpty)
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
        ];
}
