namespace StabilityStudy.Reporting.Model;

/// <summary>The running texts of a model in one string, to see which words it uses.</summary>
internal static class ModelText
{
    public static string Of(IEnumerable<Section> sections) =>
        string.Join(
            "\n",
            sections.SelectMany(section =>
                section.Blocks.Concat(section.Foot).SelectMany(Of).Prepend(section.Title)
            )
        );

    private static IEnumerable<string> Of(Block block) =>
        block switch
        {
            Heading heading => [heading.Text],
            Paragraph paragraph => [paragraph.Text],
            Bullets bullets => bullets.Items,
            DefinitionList list => list.Items.SelectMany(item =>
                new[] { item.Term, item.Explanation, item.Aside }
            ),
            KeyMessage message => [message.Subject, message.Text],
            VerdictBlock verdict => verdict.Lines.Select(line => line.Sentence),
            DecisionTable table => table.Rows.SelectMany(row =>
                row.Reservations.Select(item => item.InFull).Concat(row.Remarks)
            ),
            Table table => table
                .Rows.SelectMany(row => row.Cells)
                .Select(cell => cell.Text)
                .Concat(table.Columns.Select(column => column.Header))
                .Append(table.Caption)
                .Append(table.Note ?? ""),
            ChartBlock chart => [chart.Caption],
            ChartRow row => row.Charts.Select(chart => chart.Caption),
            KeepTogether group => group.Blocks.SelectMany(Of),
            _ => [],
        };
}
