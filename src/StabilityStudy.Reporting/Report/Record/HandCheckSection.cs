using StabilityStudy.Core.Estimates;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Decision;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>The numbers that decided, step by step with a pocket calculator from the listed changes, and the way from each conclusion to its specimens.</summary>
internal static class HandCheckSection
{
    public const string Title = "Check by hand";

    public static Section Of(StudyAnalysis analysis) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                .. Deciding(analysis) is var (sequence, cell)
                    ? OfCell(analysis, sequence, cell)
                    :
                    [
                        new Paragraph(
                            "No time point was concluded on by a mean or a count of specimens, so there is no number to check.",
                            ParagraphStyle.Body
                        ),
                    ],
                SpecimenTrail.Of(analysis),
            ]
        );

    /// <summary>The time point that set the first window; without a window the first that was concluded on.</summary>
    private static (Sequence Sequence, Cell Cell)? Deciding(StudyAnalysis analysis)
    {
        var all =
            from sequence in analysis.Sequences
            from cell in sequence.Cells
            select (Sequence: sequence, Cell: cell);
        return all.Where(item => item.Sequence.Window?.Planned == item.Cell.Key.TimePoint)
            .Concat(all)
            .Where(item =>
                item.Cell.Pairs.Any(pair => pair.IsOfNumbers)
                && ByHand(analysis, item.Sequence, item.Cell).Any()
            )
            .Select(item => ((Sequence, Cell)?)item)
            .FirstOrDefault();
    }

    private static IEnumerable<Block> OfCell(StudyAnalysis analysis, Sequence sequence, Cell cell)
    {
        var names = SequenceNames.Of(analysis, sequence);
        yield return new Paragraph(
            $"{names.Title(analysis)} at {cell.Key.TimePoint}: {TradeWords.Of(cell.Conclusion)}. {Worked(cell)} With a pocket calculator and no program; carry every digit and round at the end. Skewness, the number of days, what was left out and the controls are read off the page of the group and the estimates. Another time point is checked in the same way from \"{PairSection.Title}\".",
            ParagraphStyle.Body
        );
        foreach (var block in ByHand(analysis, sequence, cell))
        {
            yield return block;
        }
    }

    /// <summary>Which numbers are worked out: those that decided, or those as measured where another reading decided.</summary>
    private static string Worked(Cell cell) =>
        cell.Criteria.All(result => ReadingMarks.ReadingOf(result) == ChangeReading.AsMeasured)
            ? "The numbers that decided are worked out below from the pairs themselves."
            : "The numbers as measured are worked out below from the pairs themselves. Those that decided are corrected: they follow in the same way once each delayed result is divided by the ratio of what its run and the baseline's run read in the bridging plasma, and they stand among the estimates.";

    private static IEnumerable<Block> ByHand(StudyAnalysis analysis, Sequence sequence, Cell cell)
    {
        var names = SequenceNames.Of(analysis, sequence);
        return cell.Criteria.SelectMany(result =>
            CriterionWords.Of(result, names, analysis.Protocol).ByHand(cell)
        );
    }
}
