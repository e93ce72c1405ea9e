namespace StabilityStudy.Reporting.Report.Certainty;

/// <summary>What each conclusion would be if one thing were otherwise.</summary>
internal static class RobustnessSection
{
    public const string Title = "What could overturn this decision";

    /// <summary>The section.</summary>
    /// <param name="analysis">What the data say.</param>
    /// <param name="full">Whether also the questions that change nothing are listed.</param>
    public static Section Of(StudyAnalysis analysis, bool full)
    {
        var changing = analysis
            .Sequences.SelectMany(sequence => Changing(analysis, sequence))
            .ToImmutableArray();
        return new Section(
            Title,
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "What the results of a time point would show if one thing were otherwise. None of these lines decides; a conclusion that turns on a single specimen deserves a second look before it is put into force.",
                    ParagraphStyle.Body
                ),
                new Table(
                    "Choices that would change a conclusion",
                    [
                        new Column("Time", ColumnAlignment.Left, 0.6),
                        new Column("What is changed", ColumnAlignment.Left, 7),
                        new Column("Its own results", ColumnAlignment.Left, 1.5),
                        new Column("Would be", ColumnAlignment.Left, 1.6),
                    ],
                    changing,
                    changing.IsEmpty ? "None of those asked." : null
                ),
                .. full
                    ? analysis
                        .Sequences.Where(sequence =>
                            sequence.Cells.Any(cell => !cell.Robustness.IsEmpty)
                        )
                        .Select(sequence => Asked(analysis, sequence))
                    : [],
            ]
        );
    }

    /// <summary>Everything that was asked, a column a time point.</summary>
    private static Table Asked(StudyAnalysis analysis, Sequence sequence)
    {
        var cells = sequence.Cells.Where(cell => !cell.Robustness.IsEmpty).ToImmutableArray();
        var kinds = cells
            .SelectMany(cell => cell.Robustness)
            .Select(line => line.Question.Kind)
            .Distinct();
        return new Table(
            $"Everything asked: {SequenceNames.Of(analysis, sequence).Title(analysis)}",
            [
                new Column("What is changed", ColumnAlignment.Left, 4),
                .. cells.Select(cell => new Column(
                    cell.Key.TimePoint.ToString(),
                    ColumnAlignment.Left,
                    1.6
                )),
            ],
            [
                new Row([
                    new TableCell("Nothing: what its own figures say", Emphasis.Strong),
                    .. cells.Select(cell => Shaped(cell.OwnConclusion)),
                ]),
                .. kinds.Select(kind => new Row([
                    new TableCell(Question(kind, cells)),
                    .. cells.Select(cell => Answer(cell, kind)),
                ])),
            ],
            "Stays: the same conclusion."
        );
    }

    /// <summary>The question as it was asked, or in general where its numbers differ between time points.</summary>
    private static string Question(RobustnessKind kind, ImmutableArray<Cell> cells)
    {
        string[] asked =
        [
            .. cells
                .SelectMany(cell => cell.Robustness)
                .Where(line => line.Question.Kind == kind)
                .Select(line => RobustnessWords.Of(line.Question))
                .Distinct(StringComparer.Ordinal),
        ];
        return TradeWords.Capital(
            asked.Length == 1
                ? asked[0]
                : RobustnessWords.InGeneral(kind) ?? string.Join("; ", asked)
        );
    }

    private static TableCell Answer(Cell cell, RobustnessKind kind)
    {
        var lines = cell.Robustness.Where(line => line.Question.Kind == kind).ToImmutableArray();
        return lines.FirstOrDefault(line => line.Changes) is { } changing
                ? Shaped(changing.Conclusion)
            : lines.IsEmpty ? new TableCell("not asked", Emphasis.Muted)
            : new TableCell("stays");
    }

    private static IEnumerable<Row> Changing(StudyAnalysis analysis, Sequence sequence)
    {
        var rows =
            from cell in sequence.Cells
            from line in cell.Robustness
            where line.Changes
            select new Row([
                new TableCell(cell.Key.TimePoint.ToString()),
                new TableCell(RobustnessWords.WithCriterion(line.Question)),
                Shaped(cell.OwnConclusion),
                Shaped(line.Conclusion),
            ]);
        return Under(analysis, sequence, rows);
    }

    private static IEnumerable<Row> Under(
        StudyAnalysis analysis,
        Sequence sequence,
        IEnumerable<Row> rows
    ) =>
        rows.Any()
            ? rows.Prepend(
                new Row(
                    [new TableCell(SequenceNames.Of(analysis, sequence).Title(analysis))],
                    RowKind.GroupHeading
                )
            )
            : [];

    private static TableCell Shaped(Conclusion conclusion) =>
        new(TradeWords.Of(conclusion), Emphasis.Strong, TradeWords.ShapeOf(conclusion));
}
