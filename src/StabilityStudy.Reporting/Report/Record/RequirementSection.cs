using StabilityStudy.Reporting.Report.TimePoints;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>The clauses that such a study answers and the items that its report should have, each with its page; what is missing is shown as missing.</summary>
internal static class RequirementSection
{
    public const string Title = "Requirements and completeness";

    public static Section Of(StudyAnalysis analysis, SectionPages pages) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "Clauses are named from memory and said in our own words, as far as a study of delay answers them: read the texts in force. Whether they apply, and whether the evidence is enough, is for the director and the inspector to say.",
                    ParagraphStyle.Body
                ),
                TableOf(
                    "Clauses that such a study answers",
                    "Clause",
                    RequirementClauses.Of(analysis),
                    pages,
                    GroupSections.FirstTitle(analysis),
                    "A document for another reagent than the one used serves by analogy only, and is to be called so where it is named as a source."
                ),
                TableOf(
                    "What a report of a stability study should tell",
                    "Item",
                    CompletenessItems.Of(analysis),
                    pages,
                    GroupSections.FirstTitle(analysis),
                    "Twenty items after the published checklist for reporting stability studies (2020), put together from memory in our own words; the wording of the items was not seen."
                ),
            ]
        );

    private static Table TableOf(
        string caption,
        string name,
        ImmutableArray<Requirement> lines,
        SectionPages pages,
        string firstTimePoint,
        string note
    ) =>
        new(
            caption,
            [
                new Column(name, ColumnAlignment.Left, 1.9),
                new Column("Asks for", ColumnAlignment.Left, 3.3),
                pages.HavePages
                    ? new Column("Page", ColumnAlignment.Right, 0.6)
                    : new Column("Answered in", ColumnAlignment.Left, 1.9),
                new Column("Missing", ColumnAlignment.Left, 3.4),
            ],
            [
                .. lines.Select(line => new Row([
                    new TableCell(line.Name),
                    new TableCell(line.What),
                    pages.HavePages
                        ? PageOf(line.Section, pages, firstTimePoint)
                        : new TableCell(line.Section),
                    line.Missing is { } missing
                        ? new TableCell(missing, Emphasis.Strong)
                        : new TableCell("nothing"),
                ])),
            ],
            note
        );

    private static TableCell PageOf(string section, SectionPages pages, string firstTimePoint) =>
        new(
            pages.Pages.TryGetValue(
                section == Requirement.EachTimePoint ? firstTimePoint : section,
                out var page
            )
                ? NumberText.Count(page)
                : "–"
        );
}
