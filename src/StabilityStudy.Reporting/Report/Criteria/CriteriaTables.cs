namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The limits and criteria of the protocol, with their sources.</summary>
internal static class CriteriaTables
{
    /// <summary>The limits with their sources.</summary>
    public static Table Limits(StudyProtocol protocol) =>
        new(
            "Limits",
            [
                new Column("Limit", ColumnAlignment.Left, 1.2),
                new Column("Allows", ColumnAlignment.Left, 2.4),
                new Column("Source", ColumnAlignment.Left, 5),
            ],
            [
                .. protocol.Limits.Select(limit => new Row([
                    new TableCell(limit.Id),
                    new TableCell(TradeWords.Of(limit, UnitOf(protocol, limit))),
                    new TableCell(limit.Source + Basis(protocol, limit)),
                ])),
            ],
            null
        );

    private static string Basis(StudyProtocol protocol, Limit limit) =>
        limit.Basis is { } basis
            ? $" The goal from biological variation (CVI {NumberText.Plain(basis.WithinCvPercent)} %, CVG {NumberText.Plain(basis.BetweenCvPercent)} %, {TradeWords.Of(basis.Grade)} {TradeWords.Of(basis.Goal)}) is {NumberText.Fixed(basis.GoalPercent, 2)} %."
                + BesideNature(basis, AnalyteOf(protocol, limit)?.BetweenRunCvPercent)
            : "";

    /// <summary>What moves a result between two draws of a healthy person, for comparison with what waiting may add.</summary>
    private static string BesideNature(LimitBasis basis, decimal? betweenRunCv)
    {
        if (betweenRunCv is not { } cv)
        {
            return "";
        }

        var change = basis.ReferenceChangeWith(cv);
        return $" For comparison: two results of one healthy person differ by {NumberText.Interval(change.FallPercent, change.RisePercent, 1)} % in 19 of 20 (reference change value, lognormal, between-run CV {NumberText.Plain(cv)} %).";
    }

    /// <summary>The criteria in words.</summary>
    public static Table Criteria(StudyProtocol protocol) =>
        new(
            "Criteria",
            [
                new Column("Criterion", ColumnAlignment.Left, 1),
                new Column("Applies to", ColumnAlignment.Left, 1.5),
                new Column("Met when", ColumnAlignment.Left, 5.8),
                new Column("Not met when", ColumnAlignment.Left, 2.6),
            ],
            [
                .. from criterion in protocol.Criteria
                let rule = CriterionWords.OfRule(criterion, protocol)
                select new Row([
                    new TableCell(criterion.Id),
                    new TableCell(AppliesTo(criterion)),
                    new TableCell(rule.MetWhen),
                    new TableCell(rule.NotMetWhen),
                ]),
            ],
            protocol.Criteria.IsEmpty
                ? "The protocol has no criterion."
                : "Between the two the criterion is inconclusive."
        );

    private static string AppliesTo(Criterion criterion) =>
        string.Join(
            ", ",
            criterion.Limits.Select(choice =>
                choice.Limit is { } limit ? $"{choice.Analyte} (limit {limit})" : choice.Analyte
            )
        )
        + (
            criterion.Groups.IsEmpty
                ? ", all groups"
                : ", groups " + string.Join(", ", criterion.Groups)
        );

    private static string UnitOf(StudyProtocol protocol, Limit limit) =>
        AnalyteOf(protocol, limit)?.ShownUnit ?? "";

    private static Analyte? AnalyteOf(StudyProtocol protocol, Limit limit)
    {
        var analyte = protocol
            .Criteria.SelectMany(criterion => criterion.Limits)
            .Where(choice => choice.Limit == limit.Id)
            .Select(choice => choice.Analyte)
            .FirstOrDefault();
        return protocol.Analytes.FirstOrDefault(item => item.Id == analyte);
    }
}
