using StabilityStudy.Reporting.Report.TimePoints;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>Every section behind the decision with the page where it starts, for readers on paper.</summary>
internal static class ContentsSection
{
    private const string Title = "Contents";

    /// <summary>Two lists side by side, read down the left one first.</summary>
    public static Section Of(
        StudyAnalysis analysis,
        ImmutableArray<Section> sections,
        SectionPages pages
    )
    {
        var times = analysis
            .Sequences.SelectMany(sequence => TimePoints(analysis, sequence))
            .ToImmutableDictionary();
        var entries = sections
            .Select(section => section.Title)
            .Distinct()
            .Select(title => (Title: title, Shown: times.GetValueOrDefault(title, title)))
            .Where(entry => entry.Shown.Length > 0)
            .ToImmutableArray();
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

    /// <summary>The time points of a sequence are one entry, "aPTT · No anticoagulant: 6 h, 8 h", at the page of the first; the others have none.</summary>
    private static IEnumerable<KeyValuePair<string, string>> TimePoints(
        StudyAnalysis analysis,
        Sequence sequence
    ) =>
        sequence.Cells.Select(
            (cell, i) =>
                KeyValuePair.Create(
                    CellSections.TitleOf(analysis, sequence, cell),
                    i == 0
                        ? $"{SequenceNames.Of(analysis, sequence).Title(analysis)}: {string.Join(", ", sequence.Cells.Select(other => other.Key.TimePoint))}"
                        : ""
                )
        );

    private static TableCell[] Entry((string Title, string Shown) entry, SectionPages pages) =>
        [
            new(pages.Pages.TryGetValue(entry.Title, out var page) ? NumberText.Count(page) : "–"),
            new(entry.Shown),
        ];
}
