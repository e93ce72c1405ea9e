namespace StabilityStudy.Reporting.Model;

/// <summary>The part of a report that is read at once; its end tells what is left out and where that stands.</summary>
internal static class BriefReport
{
    /// <summary>Where everything stands; the last line of the brief form.</summary>
    public const string Whole =
        "All of it: report --full, the HTML, the PDF; every figure: analysis.json";

    private const string Title = "What is left out here";

    /// <summary>The sections of the brief form without their details.</summary>
    /// <param name="model">The whole report.</param>
    public static ReportModel Of(ReportModel model)
    {
        ImmutableArray<Section> kept = [.. model.Sections.Where(section => section.IsInBrief)];
        string[] away =
        [
            .. model.Sections.Where(section => !section.IsInBrief).Select(section => section.Title),
            .. kept.SelectMany(section =>
                All(section).SelectMany(Left).Select(what => $"{section.Title}: {what}")
            ),
        ];
        return model with
        {
            Sections =
            [
                .. kept.Select(section =>
                    section with
                    {
                        Blocks = Brief(section.Blocks),
                        Foot = Brief(section.Foot),
                    }
                ),
                new Section(
                    Title,
                    StartsOnNewPage: false,
                    [
                        .. away.Length == 0
                            ? ImmutableArray<Block>.Empty
                            : [new Bullets([.. away])],
                        new Paragraph(Whole, ParagraphStyle.Body),
                    ]
                ),
            ],
        };
    }

    private static IEnumerable<Block> All(Section section) => section.Blocks.Concat(section.Foot);

    private static ImmutableArray<Block> Brief(ImmutableArray<Block> blocks) =>
        [
            .. blocks.Select(block =>
                block switch
                {
                    KeepTogether group => group with { Blocks = Brief(group.Blocks) },
                    Table table => Brief(table),
                    _ => block,
                }
            ),
        ];

    private static Table Brief(Table table)
    {
        var kept = Enumerable
            .Range(0, table.Columns.Length)
            .Where(column => !table.Columns[column].IsDetail)
            .ToImmutableArray();
        return kept.Length == table.Columns.Length
            ? table
            : new Table(
                table.Caption,
                [.. kept.Select(column => table.Columns[column])],
                [
                    .. table.Rows.Select(row =>
                        row.Kind == RowKind.GroupHeading
                            ? row
                            : row with
                            {
                                Cells = [.. kept.Select(column => row.Cells[column])],
                            }
                    ),
                ],
                table.Note
            )
            {
                IsOfConclusions = table.IsOfConclusions,
            };
    }

    /// <summary>The columns that a block leaves out: "in "Items" "Answered in"".</summary>
    private static IEnumerable<string> Left(Block block) =>
        block switch
        {
            KeepTogether group => group.Blocks.SelectMany(Left),
            Table table when table.Columns.Any(column => column.IsDetail) =>
            [
                $"in \"{table.Caption}\" {string.Join(", ", table.Columns.Where(column => column.IsDetail).Select(column => $"\"{column.Header}\""))}",
            ],
            _ => [],
        };
}
