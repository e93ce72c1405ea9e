using StabilityStudy.Reporting.Report.TimePoints;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>The clauses that such a study answers and the items that its report should have: what is missing, and the page of the rest.</summary>
internal static class RequirementSection
{
    public const string Title = "What the report lacks";
    public const string ClausesTitle = "Clauses of law and standard";

    private const string FromMemory =
        "named from memory and described in our own words: read the texts in force. Whether they apply, and whether the evidence is enough, is for the director and the inspector to judge.";

    /// <summary>The items of the published checklist of which something is missing.</summary>
    /// <param name="analysis">What the data say.</param>
    /// <param name="pages">Where the sections start.</param>
    /// <param name="full">Whether also what each asks for is said, in our own words.</param>
    public static Section Of(StudyAnalysis analysis, SectionPages pages, bool full) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                TableOf(
                    "Items of a report of a stability study",
                    "Item",
                    CompletenessItems.Of(analysis),
                    new Places(pages, GroupSections.FirstTitle(analysis)),
                    full,
                    $"Twenty items after the published checklist for reporting stability studies (2020), {FromMemory}"
                ),
            ]
        );

    /// <summary>The clauses that such a study answers, as far as it does.</summary>
    public static Section Clauses(StudyAnalysis analysis, SectionPages pages, bool full)
    {
        var clauses = RequirementClauses.Of(analysis);
        var places = new Places(pages, GroupSections.FirstTitle(analysis));
        return new(
            ClausesTitle,
            StartsOnNewPage: false,
            [
                full
                    ? TableOf(
                        "What this study leaves open of them",
                        "Clause",
                        clauses,
                        places,
                        full,
                        ""
                    )
                    : RunIn(clauses, places),
                new Paragraph(
                    $"Behind each clause what this study leaves open of it. Clauses are {FromMemory} A document for another reagent than the one used serves by analogy only, and is to be called so where it is named as a source.",
                    ParagraphStyle.Small
                ),
            ]
        );
    }

    private static DefinitionList RunIn(ImmutableArray<Requirement> clauses, Places places) =>
        new([
            .. clauses.Select(clause => new Definition(
                $"{clause.Name} ({places.InWords(clause)})",
                (clause.Missing ?? "nothing") + "."
            )),
        ])
        {
            IsRunIn = true,
        };

    /// <summary>What is missing as a table, and as a paragraph that nothing is.</summary>
    private static Block TableOf(
        string caption,
        string name,
        ImmutableArray<Requirement> lines,
        Places places,
        bool full,
        string note
    )
    {
        Requirement[] answered = [.. lines.Where(line => line.Missing is null)];
        var notes =
            (
                answered.Length == 0
                    ? ""
                    : $"Nothing is missing of {string.Join(", ", answered.Select(line => $"{line.Name} ({places.InWords(line)})"))}. "
            ) + note;
        return answered.Length == lines.Length
            ? new Paragraph(notes, ParagraphStyle.Small)
            : new Table(
                caption,
                [
                    new Column(name, ColumnAlignment.Left, 1.9),
                    .. full
                        ? [new Column("Requires", ColumnAlignment.Left, 3.8)]
                        : ImmutableArray<Column>.Empty,
                    places.Column,
                    new Column("Missing", ColumnAlignment.Left, full ? 3.8 : 8),
                ],
                [.. Missing(lines, places, full)],
                notes is "" ? null : notes
            );
    }

    private static IEnumerable<Row> Missing(
        ImmutableArray<Requirement> lines,
        Places places,
        bool full
    ) =>
        lines
            .Where(line => line.Missing is not null)
            .Select(line => new Row([
                new TableCell(line.Name),
                .. full ? [new TableCell(line.What)] : ImmutableArray<TableCell>.Empty,
                new TableCell(places.Of(line)),
                new TableCell(line.Missing!),
            ]));

    /// <summary>Where a requirement is answered: its page, or its section where nobody knows the page.</summary>
    private sealed record Places(SectionPages Pages, string FirstGroup)
    {
        public Column Column =>
            Pages.HavePages
                ? new Column("Page", ColumnAlignment.Right, 0.5)
                : new Column("Answered in", ColumnAlignment.Left, 1.9) { IsDetail = true };

        public string Of(Requirement line) =>
            !Pages.HavePages ? line.Section
            : Pages.PageOf(line.Section == Requirement.EachTimePoint ? FirstGroup : line.Section)
                is { } page
                ? NumberText.Count(page)
            : "–";

        public string InWords(Requirement line) => Pages.HavePages ? $"page {Of(line)}" : Of(line);
    }
}
