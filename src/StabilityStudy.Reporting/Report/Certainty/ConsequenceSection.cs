using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Queries;

namespace StabilityStudy.Reporting.Report.Certainty;

/// <summary>How many patients' results would have stood on the other side of a decision level after the delay.</summary>
internal static class ConsequenceSection
{
    public const string Title = "What a delay could have meant for patients";

    /// <summary>The section; null where the protocol names no decision level.</summary>
    public static Section? Of(StudyAnalysis analysis)
    {
        if (analysis.Protocol.Analytes.All(analyte => analyte.DecisionLevels.IsEmpty))
        {
            return null;
        }

        var sequences = analysis
            .Sequences.Where(sequence => sequence.Cells.Any(IsCounted))
            .ToImmutableArray();
        return new Section(
            Title,
            StartsOnNewPage: false,
            sequences.IsEmpty
                ?
                [
                    new Paragraph(
                        "No specimen has two results that can be read against a decision level: nothing is known of changes of treatment.",
                        ParagraphStyle.Body
                    ),
                ]
                :
                [
                    new Paragraph(
                        $"Treatment may change where a result crosses a decision level. Counted are the specimens whose baseline and delayed result lie on different sides of a level; a result at the level is on its upper side. This describes; only a criterion of the protocol decides. In bold: over one more than imprecision alone would move. Not tested: fewer than {NumberText.Count(LevelCoverage.FewestOnEitherSide)} baselines on a side of the level, so absence of change proves nothing.",
                        ParagraphStyle.Body
                    ),
                    .. sequences
                        .GroupBy(sequence => sequence.Analyte)
                        .Select(of => TableOf(analysis, [.. of])),
                    .. Meanings(analysis),
                ]
        );
    }

    private static IEnumerable<Block> Meanings(StudyAnalysis analysis)
    {
        ImmutableArray<string> stated =
        [
            .. from analyte in analysis.Protocol.Analytes
            let meanings = LevelMeaningWords.Of(analyte)
            where meanings is not null
            select $"{analyte.Id}, in the words of the protocol: a result {meanings}.",
        ];
        return stated.IsEmpty ? [] : [new Bullets(stated)];
    }

    private static bool IsCounted(Cell cell) => cell.SideChanges.Any(change => change.Counted > 0);

    /// <summary>A row a time point under each group, a column a level.</summary>
    private static KeepTogether TableOf(StudyAnalysis analysis, ImmutableArray<Sequence> sequences)
    {
        var analyte = SequenceNames.Of(analysis, sequences[0]).Analyte;
        return new([
            new Table(
                $"{analyte.Id}: specimens on the other side of a decision level",
                [
                    new Column("Time", ColumnAlignment.Left, 0.6),
                    .. analyte.DecisionLevels.Select(level => new Column(
                        $"{NumberText.Plain(level)} {analyte.ShownUnit}".TrimEnd(),
                        ColumnAlignment.Left,
                        3
                    )),
                ],
                [
                    .. sequences.SelectMany(sequence =>
                        sequence
                            .Cells.Where(IsCounted)
                            .Select(cell => new Row([
                                new TableCell(cell.Key.TimePoint.ToString()),
                                .. analyte.DecisionLevels.Select(level => CellOf(cell, level)),
                            ]))
                            .Prepend(
                                new Row(
                                    [
                                        new TableCell(
                                            SequenceNames.Of(analysis, sequence).Title(analysis)
                                        ),
                                    ],
                                    RowKind.GroupHeading
                                )
                            )
                    ),
                ],
                null
            ),
        ]);
    }

    private static TableCell CellOf(Cell cell, decimal level)
    {
        var change = cell.SideChanges.Single(item => item.Level == level);
        if (change is { Changed: 0, IsCovered: false })
        {
            return new TableCell(
                $"not tested ({NumberText.Count(change.BaselinesBelow)} below, {NumberText.Count(change.Counted - change.BaselinesBelow)} above)",
                Emphasis.Muted
            );
        }

        var noise = change.ExpectedFromNoise is { } expected
            ? $"; imprecision alone {NumberText.Fixed(expected, 1)}"
            : "";
        string[] sides = [.. Side("up", change.Up), .. Side("down", change.Down)];
        var tested = change.IsCovered ? "" : "hardly tested; ";
        return new TableCell(
            tested
                + $"{NumberText.Count(change.Changed)} of {NumberText.Count(change.Counted)}"
                + (sides.Length == 0 ? "" : $", {string.Join("; ", sides)}")
                + noise,
            change.IsBeyondNoise ? Emphasis.Strong : Emphasis.None
        );
    }

    private static IEnumerable<string> Side(string where, ImmutableArray<string> specimens) =>
        specimens.IsEmpty
            ? []
            :
            [
                specimens.Length > SpecimenNames.Most
                    ? $"{NumberText.Count(specimens.Length)} {where}, see Every specimen"
                    : $"{where}: {SpecimenNames.Of(specimens)}",
            ];
}
