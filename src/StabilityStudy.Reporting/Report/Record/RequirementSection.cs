using StabilityStudy.Reporting.Report.TimePoints;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>The clauses that such a study answers and the items that its report should have, each with its page; what is missing is shown as missing.</summary>
internal static class RequirementSection
{
    public const string Title = "Requirements and completeness";

    public static Section Of(StudyAnalysis analysis, SectionPages pages)
    {
        var clauses = RequirementClauses.Of(analysis);
        var items = CompletenessItems.Of(analysis);
        var firstTimePoint = GroupSections.FirstTitle(analysis);
        Requirement[] answered = [.. clauses.Concat(items).Where(line => line.Missing is null)];
        return new(
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
                    clauses,
                    pages,
                    firstTimePoint,
                    "A document for another reagent than the one used serves by analogy only, and is to be called so where it is named as a source."
                ),
                TableOf(
                    "What a report of a stability study should tell",
                    "Item",
                    items,
                    pages,
                    firstTimePoint,
                    "Twenty items after the published checklist for reporting stability studies (2020), put together from memory in our own words; the wording of the items was not seen."
                ),
                .. answered.Length == 0
                    ? ImmutableArray<Block>.Empty
                    : [Answered(answered, pages, firstTimePoint)],
            ]
        );
    }

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
                new Column(name, ColumnAlignment.Left, 1.6),
                new Column("Asks for", ColumnAlignment.Left, 3.8),
                pages.HavePages
                    ? new Column("Page", ColumnAlignment.Right, 0.5)
                    : new Column("Answered in", ColumnAlignment.Left, 1.9),
                new Column("Missing", ColumnAlignment.Left, 3.8),
            ],
            [
                .. lines
                    .Where(line => line.Missing is not null)
                    .Select(line => new Row([
                        new TableCell(line.Name),
                        new TableCell(line.What),
                        new TableCell(PlaceOf(line.Section, pages, firstTimePoint)),
                        new TableCell(line.Missing!, Emphasis.Strong),
                    ])),
            ],
            note
        );

    private const int AnsweredAcross = 3;

    /// <summary>What is answered in full, each with its place, a few side by side: a page number then moves nothing.</summary>
    private static Table Answered(Requirement[] lines, SectionPages pages, string firstTimePoint) =>
        new(
            "Items of which nothing is missing",
            [
                .. Enumerable
                    .Range(0, AnsweredAcross)
                    .SelectMany(_ =>
                        new[]
                        {
                            new Column("Item", ColumnAlignment.Left, 2),
                            new Column(
                                pages.HavePages ? "Page" : "Answered in",
                                ColumnAlignment.Left,
                                pages.HavePages ? 0.7 : 2
                            ),
                        }
                    ),
            ],
            [
                .. lines
                    .Chunk(AnsweredAcross)
                    .Select(row => new Row([
                        .. row.SelectMany(line =>
                            new[]
                            {
                                new TableCell(line.Name),
                                new TableCell(PlaceOf(line.Section, pages, firstTimePoint)),
                            }
                        ),
                        .. Enumerable.Repeat(new TableCell(""), 2 * (AnsweredAcross - row.Length)),
                    ])),
            ],
            null
        );

    private static string PlaceOf(string section, SectionPages pages, string firstTimePoint) =>
        !pages.HavePages ? section
        : pages.PageOf(section == Requirement.EachTimePoint ? firstTimePoint : section) is { } page
            ? NumberText.Count(page)
        : "–";
}
