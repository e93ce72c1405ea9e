namespace StabilityStudy.Reporting.Report.Record;

/// <summary>Every section behind the decision with the page where it starts, for readers on paper.</summary>
internal static class ContentsSection
{
    private const string Title = "Contents";

    public static Section Of(
        ImmutableArray<Section> core,
        ImmutableArray<Section> appendix,
        SectionPages pages
    ) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new DefinitionList([
                    new Definition("The study", Entries(core, pages)),
                    new Definition("Appendix", Entries(appendix, pages)),
                ]),
            ]
        )
        {
            IsLookedUp = true,
        };

    /// <summary>"How the study was run 2 · Drift with time 6".</summary>
    private static string Entries(ImmutableArray<Section> sections, SectionPages pages) =>
        string.Join(
            " · ",
            sections
                .Select(section => section.Title)
                .Distinct()
                .Select(title =>
                    $"{title} {(pages.PageOf(title) is { } page ? NumberText.Count(page) : "–")}"
                )
        );
}
