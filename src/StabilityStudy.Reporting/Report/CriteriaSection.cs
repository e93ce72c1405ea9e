using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Report;

/// <summary>The limits and criteria of the protocol, with their sources.</summary>
internal static class CriteriaSection
{
    public static Section Of(StudyAnalysis analysis) =>
        new(
            "Limits and criteria",
            StartsOnNewPage: true,
            [
                new Paragraph(
                    $"The protocol is {TradeWords.Of(analysis.Lock)}.",
                    ParagraphStyle.Body
                ),
                Limits(analysis),
                Criteria(analysis),
                new Paragraph(
                    "A time point is supported when every criterion that applies is met, not supported when any is not met, and inconclusive otherwise. Time points are concluded in order, each at its full level, and the sequence stops at the first that is not supported: so a wrong \"supported\" has at most the stated chance per sequence, not over all sequences of a study (15 independent ones exactly at their limits would have a 54 % chance of at least one). It is assumed that change does not reverse between time points.",
                    ParagraphStyle.Body
                ),
            ]
        );

    private static Table Limits(StudyAnalysis analysis) =>
        new(
            "Limits",
            [
                new Column("Limit", ColumnAlignment.Left, 1.2),
                new Column("Allows", ColumnAlignment.Left, 2.4),
                new Column("Source", ColumnAlignment.Left, 5),
            ],
            [
                .. analysis.Protocol.Limits.Select(limit => new Row([
                    new TableCell(limit.Id),
                    new TableCell(TradeWords.Of(limit, UnitOf(analysis, limit))),
                    new TableCell(limit.Source),
                ])),
            ],
            null
        );

    private static Table Criteria(StudyAnalysis analysis) =>
        new(
            "Criteria",
            [
                new Column("Criterion", ColumnAlignment.Left, 1.2),
                new Column("Applies to", ColumnAlignment.Left, 2.4),
                new Column("Met when", ColumnAlignment.Left, 5),
            ],
            [
                .. analysis.Protocol.Criteria.Select(criterion => new Row([
                    new TableCell(criterion.Id),
                    new TableCell(AppliesTo(criterion)),
                    new TableCell(MetWhen(criterion)),
                ])),
            ],
            null
        );

    private static string AppliesTo(Criterion criterion) =>
        string.Join(
            ", ",
            criterion.Limits.Select(choice => $"{choice.Analyte} (limit {choice.Limit})")
        )
        + (
            criterion.Groups.IsEmpty
                ? ", all groups"
                : ", groups " + string.Join(", ", criterion.Groups)
        );

    private static string MetWhen(Criterion criterion) =>
        criterion switch
        {
            BiasCriterion =>
                $"the {NumberText.Percent(criterion.ConfidenceLevel)} interval of the mean change lies strictly inside the limit; the interval is the wider of that by specimens and that by collection days.",
            IndividualCriterion individual =>
                $"the exact one-sided {NumberText.Percent(criterion.ConfidenceLevel)} lower bound of the share of specimens within the limit reaches {NumberText.Plain(individual.SharePercentMinimum)} %; delayed tubes that failed count as outside.",
            _ => "",
        };

    private static string UnitOf(StudyAnalysis analysis, Limit limit)
    {
        var analyte = analysis
            .Protocol.Criteria.SelectMany(criterion => criterion.Limits)
            .Where(choice => choice.Limit == limit.Id)
            .Select(choice => choice.Analyte)
            .FirstOrDefault();
        return analysis.Protocol.Analytes.FirstOrDefault(item => item.Id == analyte)?.Unit ?? "";
    }
}
