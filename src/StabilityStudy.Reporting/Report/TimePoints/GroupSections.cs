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

    private const double PlotHeight = 59;

    /// <summary>One or two, each wider than high, have this height.</summary>
    private const double WidePlotHeight = 35;

    /// <summary>With more time points a verdict stands below its figures.</summary>
    private const int MostWithVerdictBeside = 2;

    /// <summary>Title of the page of a sequence.</summary>
    public static string TitleOf(StudyAnalysis analysis, Sequence sequence) =>
        SequenceNames.Of(analysis, sequence).Title(analysis);

    /// <summary>Title of the first page; empty without any.</summary>
    public static string FirstTitle(StudyAnalysis analysis) =>
        analysis.Sequences.Select(sequence => TitleOf(analysis, sequence)).FirstOrDefault("");

    /// <summary>The sections of all sequences; the first with figures has the whole key, every other what that one does not explain.</summary>
    public static ImmutableArray<Section> Of(StudyAnalysis analysis)
    {
        var sections = ImmutableArray.CreateBuilder<Section>(analysis.Sequences.Length);
        (string Title, ImmutableArray<string> Signs)? explained = null;
        foreach (var sequence in analysis.Sequences)
        {
            var plots = PlotsOf(sequence, SequenceNames.Of(analysis, sequence));
            sections.Add(Of(analysis, sequence, plots, explained));
            if (explained is null && !plots.IsEmpty)
            {
                explained = (TitleOf(analysis, sequence), [.. FigureRows.SignsOf(plots)]);
            }
        }

        return sections.MoveToImmutable();
    }

    private static Section Of(
        StudyAnalysis analysis,
        Sequence sequence,
        ImmutableArray<ChartBlock> plots,
        (string Title, ImmutableArray<string> Signs)? explained
    )
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
                    .. Plots(sequence, plots, explained),
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
        )
        {
            IsOfConclusions = true,
        };
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
        Sequence sequence,
        ImmutableArray<ChartBlock> plots,
        (string Title, ImmutableArray<string> Signs)? explained
    ) =>
        FigureRows.Captioned(
            TradeWords.Capital(MeanFinding.Of(sequence) ?? "change of each specimen") + ".",
            "Change of each specimen in percent against its baseline as measured, all time points on one scale; outside: in the reading that decides. "
                + (
                    explained is var (title, signs)
                        ? KeyBeside(plots, title, signs)
                        : FigureRows.KeyOf(plots)
                ),
            plots
        );

    private static string KeyBeside(
        ImmutableArray<ChartBlock> plots,
        string title,
        ImmutableArray<string> explained
    ) =>
        TradeWords.Capital(
            string.Join(
                "; ",
                FigureRows.SignsOf(plots).Except(explained).Append($"signs as under \"{title}\"")
            )
        ) + ".";

    private static ImmutableArray<ChartBlock> PlotsOf(Sequence sequence, SequenceNames names)
    {
        var axes = new CellAxes(sequence, names);
        var cells = sequence
            .Cells.Where(cell => cell.Pairs.Any(pair => pair.IsOfNumbers))
            .ToImmutableArray();
        var height = cells.Length <= 2 ? WidePlotHeight : PlotHeight;
        return [.. cells.Select(cell => DifferencePlot.Of(cell, names, axes, height))];
    }
}
