namespace StabilityStudy.Reporting.Report.Record;

/// <summary>Every section behind the decision with the page where it starts, for readers on paper.</summary>
internal static class ContentsSection
{
    private const string Title = "Contents";

    /// <summary>Two lists side by side, read down the left one first.</summary>
    public static Section Of(ImmutableArray<Section> sections, SectionPages pages)
    {
        var entries = sections.Select(section => section.Title).Distinct().ToImmutableArray();
        var rows = (entries.Length + 1) / 2;
        return new Section(
            Title,
            StartsOnNewPage: false,
            [
                new KeepTogether([
                    new Table(
                        "Sections and their pages",
                        [
                            new Column("Page", ColumnAlignment.Right, 0.5),
                            new Column("Section", ColumnAlignment.Left, 5),
                            new Column("Page", ColumnAlignment.Right, 0.5),
                            new Column("Section", ColumnAlignment.Left, 5),
                        ],
                        [
                            .. Enumerable
                                .Range(0, rows)
                                .Select(row => new Row([
                                    .. Entry(entries[row], pages),
                                    .. rows + row < entries.Length
                                        ? Entry(entries[rows + row], pages)
                                        : [new TableCell(""), new TableCell("")],
                                ])),
                        ],
                        null
                    ),
                ]),
            ]
        );
    }

    private static TableCell[] Entry(string title, SectionPages pages) =>
        [
            new(pages.Pages.TryGetValue(title, out var page) ? NumberText.Count(page) : "–"),
            new(title),
        ];
}
