using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Figures;

namespace StabilityStudy.Reporting.Report.TimePoints;

/// <summary>A page for each time point of a sequence: conclusion, criteria, figures, estimates.</summary>
internal static class CellSections
{
    private static readonly HeightRange s_figureHeights = new(Least: 42, Usual: 54, Most: 90);

    public static IEnumerable<Section> Of(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var axes = new CellAxes(sequence, names);
        return sequence.Cells.Select(cell =>
            Page(TitleOf(analysis, sequence, cell), analysis, cell, names, axes)
        );
    }

    /// <summary>Title of the page of a time point.</summary>
    public static string TitleOf(StudyAnalysis analysis, Sequence sequence, Cell cell) =>
        $"{SequenceNames.Of(analysis, sequence).Title(analysis)} at {cell.Key.TimePoint}";

    /// <summary>Title of the first page of a time point; empty without any.</summary>
    public static string FirstTitle(StudyAnalysis analysis) =>
        (
            from sequence in analysis.Sequences
            from cell in sequence.Cells
            select TitleOf(analysis, sequence, cell)
        ).FirstOrDefault("");

    private static Section Page(
        string title,
        StudyAnalysis analysis,
        Cell cell,
        SequenceNames names,
        CellAxes axes
    )
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.Add(
            new VerdictBlock([
                new VerdictLine(
                    TradeWords.ShapeOf(cell.Conclusion),
                    TradeWords.Capital(TradeWords.Of(cell.Conclusion)),
                    $"{names.Title(analysis)} · {cell.Key.TimePoint}",
                    Sentence(cell)
                ),
            ])
        );
        blocks.Add(CriterionTable.Of(cell, analysis.Protocol, names));
        if (!cell.Doubts.IsEmpty)
        {
            blocks.Add(new Heading("What holds this time point back"));
            blocks.Add(
                new Bullets([
                    .. cell.Doubts.Select(doubt => TradeWords.Capital(ReasonWords.Of(doubt)) + "."),
                ])
            );
        }

        if (cell.MoreSpecimens is { } more)
        {
            blocks.Add(new Paragraph(MoreSpecimensWords.Of(more), ParagraphStyle.Body));
        }

        if (cell.Pairs.Any(pair => pair.IsOfNumbers))
        {
            blocks.Add(
                new ChartRow([
                    DifferencePlot.Of(cell, names, axes, s_figureHeights.Usual),
                    RegressionPlot.Of(cell, names, axes, s_figureHeights.Usual),
                ])
                {
                    Flexible = s_figureHeights,
                }
            );
        }

        blocks.Add(
            new KeepTogether([
                .. cell.Criteria.SelectMany(result =>
                    CriterionWords.Of(result, names, analysis.Protocol).Blocks(cell, axes)
                ),
                names.Analyte.IsQualitative
                    ? new Paragraph(
                        "The results are classes: no mean, line or drift is computed of them.",
                        ParagraphStyle.Small
                    )
                    : EstimateTable.Of(cell, names, analysis.Protocol),
            ])
        );
        return new Section(title, StartsOnNewPage: true, blocks.ToImmutable());
    }

    private static string Sentence(Cell cell)
    {
        var compared = cell
            .Pairs.Where(pair => pair.Status == PairStatus.Compared)
            .ToImmutableArray();
        var days = compared.Select(pair => pair.CollectionDay).Distinct().Count();
        var counted =
            $"{Counted.Of(compared.Length, "compared pair")} on {Counted.Of(days, "collection day")}.";
        return cell.Conclusion == Conclusion.NotReached
            ? $"An earlier time point did not come out as supported, so this one is not concluded on; its figures alone would say {TradeWords.Of(cell.OwnConclusion)}. {counted}"
            : counted;
    }
}
