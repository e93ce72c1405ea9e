using StabilityStudy.Core.Study;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The limits and criteria of the protocol, with their sources.</summary>
internal static class CriteriaTables
{
    /// <summary>The limits with their sources, who chose each and why.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="people">Persons of the study; empty before it has any.</param>
    public static Table Limits(StudyProtocol protocol, ImmutableArray<Person> people) =>
        new(
            "Limits",
            [
                new Column("Limit", ColumnAlignment.Left, 1.2),
                new Column("Allows", ColumnAlignment.Left, 2.4),
                new Column("Source; who chose it, and why", ColumnAlignment.Left, 5),
            ],
            [
                .. protocol.Limits.Select(limit => new Row([
                    new TableCell(limit.Id),
                    new TableCell(TradeWords.Of(limit, UnitOf(protocol, limit))),
                    new TableCell(SourceOf(protocol, limit, people)),
                ])),
            ],
            NotStated(MissingRationales.OfLimits(protocol))
        );

    private static string SourceOf(
        StudyProtocol protocol,
        Limit limit,
        ImmutableArray<Person> people
    )
    {
        var further =
            Basis(protocol, limit) + RationaleWords.Stated("this limit", limit.Rationale, people);
        return further.Length == 0
            ? limit.Source
            : $"{RationaleWords.Unstopped(limit.Source)}.{further}";
    }

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

    /// <summary>The criteria in words, with who chose each share and why.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="people">Persons of the study; empty before it has any.</param>
    public static Table Criteria(StudyProtocol protocol, ImmutableArray<Person> people) =>
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
                    new TableCell(
                        rule.MetWhen
                            + RationaleWords.Stated("this share", criterion.Rationale, people)
                    ),
                    new TableCell(rule.NotMetWhen),
                ]),
            ],
            protocol.Criteria.IsEmpty
                ? "The protocol has no criterion."
                : string.Join(
                    " ",
                    new[]
                    {
                        "Between the two the criterion is inconclusive.",
                        NotStated(MissingRationales.OfShares(protocol)),
                    }.OfType<string>()
                )
        );

    private static string? NotStated(string? missing) =>
        missing is null ? null : $"The protocol does not state {missing}.";

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
