namespace StabilityStudy.Reporting.Text;

/// <summary>Writes single blocks as lines.</summary>
internal static class TextBlocks
{
    /// <summary>Writes a block; a page break, and a list without items, gives no lines. A group is opened before.</summary>
    public static ImmutableArray<string> Write(Block block, int width) =>
        block switch
        {
            Heading heading => TextLines.Wrap(heading.Text, width),
            Paragraph paragraph => TextLines.Wrap(paragraph.Text, width),
            Bullets bullets => [.. bullets.Items.SelectMany(i => Hanging("- ", i, width))],
            DefinitionList list =>
            [
                .. list.Items.SelectMany(i =>
                    TextLines
                        .Wrap(i.Term, width)
                        .AddRange(TextLines.Wrap(i.Explanation, width, "    "))
                        .AddRange(i.Aside.Length == 0 ? [] : TextLines.Wrap(i.Aside, width, "    "))
                ),
            ],
            MonospaceLines lines =>
            [
                .. lines.Lines.SelectMany(l => Chunks(TextLines.Visible(l), width)),
            ],
            VerdictBlock verdict => [.. verdict.Lines.SelectMany(l => WriteVerdict(l, width))],
            SignatureBoxes boxes => [.. boxes.Boxes.SelectMany(b => WriteBox(b, width))],
            DecisionTable decisions => TextDecisions.Write(decisions, width),
            KeyMessage message => TextLines.Wrap($"{message.Subject} {message.Text}", width),
            Table table => TextTable.Write(table, width),
            ChartBlock chart => WriteChart(chart, width),
            Floating floating => Write(floating.Figure, width),
            ChartRow row => [.. row.Charts.SelectMany(c => WriteChart(c, width))],
            FlowFigure flow => WriteFlow(flow, width),
            PageBreak => [],
            _ => throw new InvalidOperationException($"No drawing of {block.GetType().Name}."),
        };

    private static ImmutableArray<string> WriteFlow(FlowFigure flow, int width) =>
        [
            .. flow.Steps.SelectMany(step => TextLines.Wrap(step, width)),
            .. flow.Branches.SelectMany(branch =>
                TextLines.Wrap(
                    branch.LeftOut.Length == 0 ? branch.Box : $"{branch.Box}; {branch.LeftOut}",
                    width,
                    "    "
                )
            ),
        ];

    private static ImmutableArray<string> Hanging(string mark, string text, int width)
    {
        var lines = TextLines.Wrap(text, width, new string(' ', mark.Length));
        return lines.SetItem(0, mark + lines[0][mark.Length..]);
    }

    private static ImmutableArray<string> WriteVerdict(VerdictLine line, int width) =>
        [
            .. Hanging(ShapeMark.Of(line.Shape) + " ", line.Word + ": " + line.Subject, width),
            .. TextLines.Wrap(line.Sentence, width, "    "),
        ];

    private static ImmutableArray<string> WriteBox(SignatureBox box, int width) =>
        [
            .. TextLines.Wrap("[" + box.State + "] " + box.Role + ": " + box.Meaning, width),
            .. box.Choices.SelectMany(choice => TextLines.Wrap("[ ] " + choice, width, "    ")),
            .. box.Rows.SelectMany(row => TextLines.Wrap(row + " ____________", width, "    ")),
            .. TextLines.Wrap(
                "Printed name: ____________  Date and time: ____________",
                width,
                "    "
            ),
            .. TextLines.Wrap("Signature: ____________", width, "    "),
        ];

    private static ImmutableArray<string> WriteChart(ChartBlock chart, int width)
    {
        var title = chart.Chart.Title.Length == 0 ? [] : TextLines.Wrap(chart.Chart.Title, width);
        var caption = chart.Caption.Length == 0 ? [] : TextLines.Wrap(chart.Caption, width);
        return
        [
            .. title,
            .. caption,
            .. TextLines.Wrap("Figure: " + chart.AlternativeText, width, "    "),
        ];
    }

    private static IEnumerable<string> Chunks(string line, int width)
    {
        for (var start = 0; start == 0 || start < line.Length; start += width)
        {
            yield return line.Substring(start, Math.Min(width, line.Length - start));
        }
    }
}
