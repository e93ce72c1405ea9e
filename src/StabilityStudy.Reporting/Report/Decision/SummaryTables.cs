using StabilityStudy.Reporting.Report.Criteria;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>The criteria of a sequence, time point by time point, for the terminal.</summary>
internal static class SummaryTables
{
    public static Section Of(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        return new Section(
            names.Title(analysis),
            StartsOnNewPage: false,
            [
                .. sequence.Cells.SelectMany(cell =>
                    new Block[]
                    {
                        new Heading(cell.Key.TimePoint.ToString()),
                        CriterionTable.Of(cell, analysis.Protocol, names),
                    }
                ),
            ]
        );
    }
}
