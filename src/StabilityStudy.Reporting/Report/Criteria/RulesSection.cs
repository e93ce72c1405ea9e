namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>Every rule beside the limits that bears on a verdict.</summary>
internal static class RulesSection
{
    public const string Title = "Everything else that bears on a verdict";

    public static Section Of(StudyAnalysis analysis) =>
        new(Title, StartsOnNewPage: false, [new Bullets(DoubtRules.Of(analysis.Protocol))]);
}
