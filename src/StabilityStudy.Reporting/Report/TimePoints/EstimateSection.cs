using System.Text.RegularExpressions;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Drift;
using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Statistics;

namespace StabilityStudy.Reporting.Report.TimePoints;

/// <summary>Every estimate of each analyte and group, a table with a column a time point, the tables of its criteria, and its lines.</summary>
internal static partial class EstimateSection
{
    public const string Title = "Estimates";

    private const int MostAcross = 4;
    private const double PlotHeight = 36;

    /// <summary>The section.</summary>
    /// <param name="analysis">What the data say.</param>
    /// <param name="full">Whether also what neither decides nor describes the decision is shown.</param>
    public static Section Of(StudyAnalysis analysis, bool full) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "In bold: the figures that decide. The absence of a significant change is not equivalence. Further estimates, and methods that neither decide nor describe what decides, are in analysis.json, in the report as HTML and in a report made with --full.",
                    ParagraphStyle.Body
                ),
                .. analysis.Sequences.SelectMany(sequence => Blocks(analysis, sequence, full)),
                .. MixedDriftTable.Of(analysis),
            ]
        );

    private static IEnumerable<Block> Blocks(StudyAnalysis analysis, Sequence sequence, bool full)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var axes = new CellAxes(sequence, names);
        if (names.Analyte.IsQualitative)
        {
            yield return new Heading(names.Title(analysis));
            yield return new Paragraph(
                "The results are classes: no mean, line or drift is computed of them.",
                ParagraphStyle.Small
            );
        }
        else
        {
            foreach (var cells in sequence.Cells.Chunk(MostAcross))
            {
                yield return TableOf(
                    names.Title(analysis),
                    cells,
                    cell => Rows(cell, names, analysis.Protocol, full)
                );
            }
        }

        var shown = (
            from cell in sequence.Cells
            from result in cell.Criteria
            from block in CriterionWords.Of(result, names, analysis.Protocol).Blocks(cell, axes)
            select (Time: cell.Key.TimePoint.ToString(), Block: block)
        ).ToImmutableArray();
        foreach (
            var tables in shown
                .Where(item => item.Block is Table)
                .Select(item => (item.Time, Table: (Table)item.Block))
                .GroupBy(item => item.Table.Caption)
        )
        {
            yield return OfAllTimes(names.Title(analysis), [.. tables]);
        }

        foreach (var (time, block) in shown.Where(item => item.Block is not Table))
        {
            yield return new KeepTogether([
                new Heading($"{names.Title(analysis)} at {time}"),
                block,
            ]);
        }

        var plots = sequence
            .Cells.Where(cell => cell.Pairs.Any(pair => pair.IsOfNumbers))
            .Select(cell => RegressionPlot.Of(cell, names, axes, PlotHeight))
            .ToImmutableArray();
        foreach (
            var block in FigureRows.Captioned(
                $"{names.Title(analysis)}: delayed result against baseline.",
                FigureRows.KeyOf(plots),
                plots
            )
        )
        {
            yield return block;
        }
    }

    /// <summary>The table of a criterion at all time points under one head.</summary>
    private static Table OfAllTimes(string title, (string Time, Table Table)[] tables) =>
        new(
            $"{title}. {tables[0].Table.Caption}",
            tables[0].Table.Columns,
            [
                .. tables.SelectMany(item =>
                    item.Table.Rows.Prepend(
                        new Row([new TableCell(item.Time)], RowKind.GroupHeading)
                    )
                ),
            ],
            string.Join(" ", tables.Select(item => item.Table.Note).OfType<string>().Distinct())
                is { Length: > 0 } note
                ? note
                : null
        );

    private static Row[] Rows(Cell cell, SequenceNames names, StudyProtocol protocol, bool full) =>
        [
            .. cell
                .Criteria.SelectMany(result =>
                    CriterionWords.Of(result, names, protocol).EstimateRows
                )
                .Concat(DescribingRows.Of(cell.Estimates, names))
                .Concat(LineRows.Of(cell.Estimates, names))
                .Where(row => full || row.Cells[^1].Text != EstimateRow.ShownOnly),
        ];

    /// <summary>Rows of the same name of all time points side by side; a number in the name, which differs between them, goes with the value.</summary>
    private static Table TableOf(string title, Cell[] cells, Func<Cell, Row[]> rowsOf)
    {
        var columns = cells
            .Select(cell =>
                rowsOf(cell)
                    .GroupBy(row => NameOf(row))
                    .ToDictionary(rows => rows.Key, rows => rows.First())
            )
            .ToArray();
        var names = columns.SelectMany(column => column.Keys).Distinct();
        return new Table(
            title,
            [
                new Column("Estimate", ColumnAlignment.Left, 2.5),
                .. cells.Select(cell => new Column(
                    cell.Key.TimePoint.ToString(),
                    ColumnAlignment.Left,
                    2
                )),
            ],
            [
                .. names.Select(name => new Row([
                    new TableCell(
                        name,
                        columns.Any(column =>
                            column.GetValueOrDefault(name)?.Cells[0].Emphasis == Emphasis.Strong
                        )
                            ? Emphasis.Strong
                            : Emphasis.None
                    ),
                    .. columns.Select(column => Value(column.GetValueOrDefault(name))),
                ])),
            ],
            string.Join(" ", cells.SelectMany(cell => Remarks(cell)).Distinct())
                is { Length: > 0 } note
                ? note
                : null
        );
    }

    private static string NameOf(Row row) => Counts().Replace(row.Cells[0].Text, "");

    /// <summary>The value with its interval.</summary>
    private static TableCell Value(Row? row)
    {
        if (row is null)
        {
            return new TableCell("");
        }

        var count = Counts().Match(row.Cells[0].Text).Value;
        var interval = row.Cells[2].Text;
        return new TableCell(
            row.Cells[1].Text + count + (interval.Length == 0 ? "" : "; " + interval),
            row.Cells[1].Emphasis
        );
    }

    private static IEnumerable<string> Remarks(Cell cell) =>
        new (string Name, ImmutableArray<EstimateNote> Notes)[]
        {
            ("Mean change", cell.Estimates.MeanPercent.Notes),
            ("Hodges–Lehmann", cell.Estimates.HodgesLehmannPercent.Notes),
            ("Weighted Deming", cell.Estimates.WeightedDeming.Notes),
            ("Passing–Bablok", cell.Estimates.PassingBablok.Notes),
            ("Outlier test", cell.Estimates.Outliers.Notes),
        }.SelectMany(estimate =>
            estimate.Notes.Select(note =>
                $"{cell.Key.TimePoint}, {estimate.Name}: {RefusalWords.Of(note)}"
            )
        );

    [GeneratedRegex(
        @" \(\d+( left out)?\)",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Counts();
}
