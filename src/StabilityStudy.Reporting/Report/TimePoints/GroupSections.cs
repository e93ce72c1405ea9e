using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Decision;
using StabilityStudy.Reporting.Report.Figures;

namespace StabilityStudy.Reporting.Report.TimePoints;

/// <summary>A page for each analyte and group: its time points side by side, by the criteria that decide and on one scale.</summary>
internal static class GroupSections
{
    /// <summary>More time points stand in a further table below.</summary>
    private const int MostAcross = 4;

    private const int MostPlotsAcross = 4;
    private const double PlotHeight = 59;

    /// <summary>One or two, each wider than high, have this height.</summary>
    private const double WidePlotHeight = 46;

    /// <summary>With more time points a verdict stands below its figures.</summary>
    private const int MostWithVerdictBeside = 2;

    /// <summary>Title of the page of a sequence.</summary>
    public static string TitleOf(StudyAnalysis analysis, Sequence sequence) =>
        SequenceNames.Of(analysis, sequence).Title(analysis);

    /// <summary>Title of the first page; empty without any.</summary>
    public static string FirstTitle(StudyAnalysis analysis) =>
        analysis.Sequences.Select(sequence => TitleOf(analysis, sequence)).FirstOrDefault("");

    public static Section Of(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var reasons = sequence
            .Cells.Select(cell => Reasons(cell, names, analysis.Protocol))
            .OfType<string>()
            .ToImmutableArray();
        return new Section(
            TitleOf(analysis, sequence),
            StartsOnNewPage: false,
            [
                new KeepTogether([
                    new VerdictBlock([ConclusionSentence.UnderTitle(analysis, sequence)]),
                    .. sequence
                        .Cells.Chunk(MostAcross)
                        .Select(cells => Criteria(cells, names, analysis.Protocol)),
                    .. reasons.IsEmpty ? ImmutableArray<Block>.Empty : [new Bullets(reasons)],
                    .. Plots(analysis, sequence, names),
                ])
                {
                    IsWhole = true,
                },
            ]
        );
    }

    /// <summary>The figures that decide, a criterion a row and a time point a column.</summary>
    private static Table Criteria(Cell[] cells, SequenceNames names, StudyProtocol protocol)
    {
        var criteria = cells
            .SelectMany(cell => cell.Criteria)
            .Select(result => result.Criterion)
            .Distinct()
            .ToArray();
        return new Table(
            "Criteria of the protocol, and the figures that decide them",
            [
                new Column("Criterion", ColumnAlignment.Left, 3.2),
                .. cells.Select(cell => new Column(
                    cell.Key.TimePoint.ToString(),
                    ColumnAlignment.Left,
                    2
                )),
            ],
            [
                .. criteria.Select(criterion => new Row([
                    new TableCell(RequirementOf(criterion, cells, names, protocol)),
                    .. cells.Select(cell => Figure(criterion, cell, cells.Length, names, protocol)),
                ])),
                new Row([
                    new TableCell("Compared pairs; collection days"),
                    .. cells.Select(cell => new TableCell(Compared(cell))),
                ]),
                new Row([
                    new TableCell("Conclusion", Emphasis.Strong),
                    .. cells.Select(cell => new TableCell(
                        TradeWords.Of(cell.Conclusion),
                        Emphasis.Strong,
                        TradeWords.ShapeOf(cell.Conclusion)
                    )),
                ]),
            ],
            criteria.Length == 0 ? "No criterion of the protocol applies." : null
        );
    }

    private static string RequirementOf(
        string criterion,
        Cell[] cells,
        SequenceNames names,
        StudyProtocol protocol
    ) =>
        cells
            .SelectMany(cell => cell.Criteria)
            .Where(result => result.Criterion == criterion)
            .Select(result =>
                $"{criterion}: {CriterionWords.Of(result, names, protocol).Requirement}"
            )
            .First();

    /// <summary>What no control vouches for, and what an earlier time point ended, is shown and does not count.</summary>
    private static TableCell Figure(
        string criterion,
        Cell cell,
        int across,
        SequenceNames names,
        StudyProtocol protocol
    )
    {
        var reached = cell.Conclusion is not (Conclusion.NotReached or Conclusion.NotAssessed);
        return cell.Criteria.FirstOrDefault(result => result.Criterion == criterion) is { } result
            ? new TableCell(
                $"{CriterionWords.Of(result, names, protocol).DecidingFigure}{(across > MostWithVerdictBeside ? "\n" : ", ")}{TradeWords.Of(result.Verdict)}",
                reached ? Emphasis.Strong : Emphasis.Muted,
                cell.Conclusion == Conclusion.NotAssessed
                    ? null
                    : TradeWords.ShapeOf(result.Verdict)
            )
            : new TableCell("");
    }

    private static string Compared(Cell cell)
    {
        var compared = cell
            .Pairs.Where(pair => pair.Status == PairStatus.Compared)
            .ToImmutableArray();
        return $"{NumberText.Count(compared.Length)}; {NumberText.Count(compared.Select(pair => pair.CollectionDay).Distinct().Count())}";
    }

    /// <summary>Why a time point is not supported, what its own figures would say, and what would answer it; null for a supported one.</summary>
    private static string? Reasons(Cell cell, SequenceNames names, StudyProtocol protocol)
    {
        string[] sentences =
        [
            .. cell.Doubts.Select(doubt => TradeWords.Capital(ReasonWords.Of(doubt)) + "."),
            .. cell
                .Criteria.Where(result => result.Verdict != Verdict.Met)
                .Select(result =>
                    $"{TradeWords.Capital(result.Criterion)} is {TradeWords.Of(result.Verdict)}: {string.Join("; ", result.Reasons.Select(ReasonWords.Of))}."
                ),
            .. cell.Conclusion == Conclusion.NotReached
                ?
                [
                    $"An earlier time point did not come out as supported, so this one is not concluded on; its figures alone would say {TradeWords.Of(cell.OwnConclusion)}.",
                ]
                : Array.Empty<string>(),
            .. cell.Conclusion == Conclusion.NotAssessed
                ? ["The time point is not assessed, so nothing that the criteria give counts."]
                : Array.Empty<string>(),
            .. cell.MoreSpecimens is { } more
                ? [MoreSpecimensWords.Of(more)]
                : Array.Empty<string>(),
        ];
        return sentences.Length == 0
            ? null
            : $"{cell.Key.TimePoint}: {string.Join(" ", sentences)}";
    }

    private static IEnumerable<Block> Plots(
        StudyAnalysis analysis,
        Sequence sequence,
        SequenceNames names
    )
    {
        var plots = PlotsOf(sequence, names);
        return plots.IsEmpty
            ? []
            :
            [
                new Paragraph(
                    "Change of each specimen in percent against its baseline, all time points on one scale. "
                        + KeyBeside(analysis, sequence, plots),
                    ParagraphStyle.Small
                ),
                .. Across(plots),
            ];
    }

    /// <summary>The whole key under the first group with figures; under every other what that one does not explain.</summary>
    private static string KeyBeside(
        StudyAnalysis analysis,
        Sequence sequence,
        ImmutableArray<ChartBlock> plots
    )
    {
        var first = analysis.Sequences.First(item =>
            item.Cells.Any(cell => cell.Pairs.Any(pair => pair.IsOfNumbers))
        );
        return first == sequence
            ? KeyOf(plots)
            : TradeWords.Capital(
                string.Join(
                    "; ",
                    SignsOf(plots)
                        .Except(SignsOf(PlotsOf(first, SequenceNames.Of(analysis, first))))
                        .Append($"signs as under \"{TitleOf(analysis, first)}\"")
                )
            ) + ".";
    }

    private static ImmutableArray<ChartBlock> PlotsOf(Sequence sequence, SequenceNames names)
    {
        var axes = new CellAxes(sequence, names);
        var cells = sequence
            .Cells.Where(cell => cell.Pairs.Any(pair => pair.IsOfNumbers))
            .ToImmutableArray();
        var height = cells.Length <= 2 ? WidePlotHeight : PlotHeight;
        return [.. cells.Select(cell => DifferencePlot.Of(cell, names, axes, height))];
    }

    /// <summary>What the lines and signs of figures side by side mean, once for all of them.</summary>
    public static string KeyOf(ImmutableArray<ChartBlock> charts) =>
        TradeWords.Capital(string.Join("; ", SignsOf(charts))) + ".";

    private static IEnumerable<string> SignsOf(ImmutableArray<ChartBlock> charts) =>
        charts
            .SelectMany(chart => chart.Chart.Layers)
            .Where(layer => layer.Legend is not null)
            .Select(layer => $"{SignOf(layer)}: {layer.Legend}")
            .Distinct();

    private static string SignOf(ChartLayer layer) =>
        layer switch
        {
            BandLayer => "shaded",
            ReferenceLine line => $"{Of(line.Weight)}{Of(line.Dash)}",
            LineLayer line => $"{Of(line.Weight)}{Of(line.Dash)}",
            PointLayer points => Of(points.Marker),
            IntervalLayer => "bars",
            _ => "sign",
        };

    private static string Of(LineWeight weight) => weight == LineWeight.Heavy ? "heavy " : "";

    private static string Of(DashStyle dash) =>
        dash switch
        {
            DashStyle.Dashed or DashStyle.LongDashed => "dashes",
            DashStyle.Dotted => "dots",
            DashStyle.DashDot => "dashes and dots",
            DashStyle.Solid => "line",
        };

    private static string Of(MarkerShape marker) =>
        marker switch
        {
            MarkerShape.OpenCircle or MarkerShape.FilledCircle => "circles",
            MarkerShape.OpenSquare or MarkerShape.FilledSquare => "squares",
            MarkerShape.OpenTriangle or MarkerShape.FilledTriangle => "triangles",
            MarkerShape.OpenDiamond or MarkerShape.FilledDiamond => "diamonds",
            MarkerShape.Cross => "crosses",
        };

    /// <summary>Figures side by side, whose key stands once before them.</summary>
    public static IEnumerable<Block> Across(ImmutableArray<ChartBlock> charts) =>
        charts
            .Select(WithoutKey)
            .Chunk(Evenly(charts.Length))
            .Select(row => row.Length == 1 ? (Block)row[0] : new ChartRow([.. row]));

    /// <summary>How many stand in a row, so that none is left to a row of its own: of five, three and two.</summary>
    private static int Evenly(int count)
    {
        var rows = Math.Max(1, (count + MostPlotsAcross - 1) / MostPlotsAcross);
        return Math.Max(1, (count + rows - 1) / rows);
    }

    private static ChartBlock WithoutKey(ChartBlock chart) =>
        chart with
        {
            Chart = new Chart(
                chart.Chart.Title,
                chart.Chart.X,
                chart.Chart.Y,
                [.. chart.Chart.Layers.Select(layer => layer with { Legend = null })]
            ),
        };
}
