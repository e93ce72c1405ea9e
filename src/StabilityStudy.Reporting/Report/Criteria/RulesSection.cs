using StabilityStudy.Reporting.Report.Certainty;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>The criteria in words, and every rule beside the limits that bears on a verdict.</summary>
internal static class RulesSection
{
    public const string Title = "Criteria and rules";

    /// <summary>Heading of the rules beside the criteria.</summary>
    public const string Others = "Everything else that bears on a verdict";

    /// <summary>The section.</summary>
    /// <param name="analysis">What the data say.</param>
    /// <param name="full">Whether also the criteria stand here once more in one table, beside the pages of the groups that name what each requires.</param>
    public static Section Of(StudyAnalysis analysis, bool full) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                .. full
                    ? [CriteriaTables.Criteria(analysis.Protocol, analysis.Facts.People)]
                    : ImmutableArray<Block>.Empty,
                new Paragraph(ErrorControl.Of(analysis), ParagraphStyle.Body),
                new Heading(Others),
                new Bullets(DoubtRules.Of(analysis.Protocol)),
            ]
        );
}
