using StabilityStudy.Core.Estimates;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Statistics;

namespace StabilityStudy.Reporting.Report.TimePoints;

/// <summary>The estimates of a cell, each beside the criterion it feeds, so that a reader sees which number decided.</summary>
internal static class EstimateTable
{
    public static Table Of(Cell cell, SequenceNames names, StudyProtocol protocol) =>
        new(
            "Estimates",
            [
                new Column("Estimate", ColumnAlignment.Left, 4),
                new Column("Value", ColumnAlignment.Left, 1.5),
                new Column("Interval", ColumnAlignment.Left, 2.5),
                new Column("Feeds", ColumnAlignment.Left, 1.6),
            ],
            [
                .. cell.Criteria.SelectMany(result =>
                    CriterionWords.Of(result, names, protocol).EstimateRows
                ),
                .. DescribingRows.Of(cell.Estimates, names),
                .. LineRows.Of(cell.Estimates, names),
            ],
            string.Join(
                " ",
                [
                    cell.Conclusion is Conclusion.NotAssessed or Conclusion.NotReached
                        ? "Nothing on this page decides."
                        : "Only the lines in bold decide.",
                    "The absence of a significant change is not equivalence; its test takes specimens for independent.",
                    .. Remarks(cell.Estimates),
                ]
            )
        );

    private static IEnumerable<string> Remarks(CellEstimates estimates) =>
        new (string Name, ImmutableArray<EstimateNote> Notes)[]
        {
            ("Mean change", estimates.MeanPercent.Notes),
            ("Hodges–Lehmann", estimates.HodgesLehmannPercent.Notes),
            ("Weighted Deming", estimates.WeightedDeming.Notes),
            ("Passing–Bablok", estimates.PassingBablok.Notes),
            ("Outlier test", estimates.Outliers.Notes),
        }.SelectMany(estimate =>
            estimate.Notes.Select(note => $"{estimate.Name}: {RefusalWords.Of(note)}")
        );
}
