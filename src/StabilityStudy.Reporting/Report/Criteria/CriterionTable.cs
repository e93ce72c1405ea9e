namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>Each criterion of a cell: what it asks, the figure that decided, what it says and why.</summary>
internal static class CriterionTable
{
    public static Table Of(Cell cell, StudyProtocol protocol, SequenceNames names)
    {
        var counts = cell.Conclusion != Conclusion.NotAssessed;
        var emphasis = counts ? Emphasis.Strong : Emphasis.Muted;
        return new(
            "Criteria of the protocol",
            [
                new Column("Criterion", ColumnAlignment.Left, 1),
                new Column("Requirement", ColumnAlignment.Left, 3.6),
                new Column("Deciding figure", ColumnAlignment.Left, 2.3),
                new Column("Verdict", ColumnAlignment.Left, 1),
                new Column("Reason", ColumnAlignment.Left, 3.3),
            ],
            [
                .. from result in cell.Criteria
                let words = CriterionWords.Of(result, names, protocol)
                select new Row([
                    new TableCell(result.Criterion),
                    new TableCell(words.Requirement),
                    new TableCell(words.DecidingFigure, emphasis),
                    new TableCell(
                        TradeWords.Of(result.Verdict),
                        emphasis,
                        counts ? TradeWords.ShapeOf(result.Verdict) : null
                    ),
                    new TableCell(string.Join("; ", result.Reasons.Select(ReasonWords.Of)) + "."),
                ]),
            ],
            cell.Criteria.IsEmpty ? "No criterion of the protocol applies."
                : cell.Conclusion == Conclusion.NotAssessed
                    ? "The time point is not assessed, so nothing that the criteria say of it counts."
                : null
        );
    }
}
