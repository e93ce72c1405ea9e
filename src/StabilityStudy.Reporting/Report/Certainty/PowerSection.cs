using StabilityStudy.Core.Planning;
using static System.FormattableString;

namespace StabilityStudy.Reporting.Report.Certainty;

/// <summary>How often studies like this one would support each time point, for the terminal.</summary>
internal static class PowerSection
{
    public const string Title = "How often studies like this one would support a time point";

    private const int PercentDecimals = 1;

    public static Section Of(StudyAnalysis analysis, StudyPower power) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                new Paragraph(
                    Invariant(
                        $"Simulated: {power.Studies.ToString("N0", CultureInfo.InvariantCulture)} studies for each line, seed {power.Seed}, with as many specimens and days and as much spread as each time point had here, judged by the criteria of this protocol. The mean change is supposed, in the direction of the one found: none, half, and all of the smallest change at which a criterion is no longer true. The last line of a time point thus shows how often \"supported\" would be wrong. The spread is taken as found; with few specimens the true one may be larger, and the chances lower."
                    ),
                    ParagraphStyle.Body
                ),
                .. analysis.Sequences.SelectMany(sequence => Tables(analysis, sequence, power)),
                new Paragraph(
                    "This says what the study could show, not what it showed: the conclusions stand on the criteria alone. Real studies lose specimens and tubes, which these do not; their chance of support is rather lower.",
                    ParagraphStyle.Small
                ),
            ]
        );

    private static IEnumerable<Block> Tables(
        StudyAnalysis analysis,
        Sequence sequence,
        StudyPower power
    )
    {
        var cells = power
            .TimePoints.Where(cell => sequence.Cells.Any(item => item.Key == cell.Key))
            .ToImmutableArray();
        if (cells.IsEmpty)
        {
            yield break;
        }

        var title = SequenceNames.Of(analysis, sequence).Title(analysis);
        var criteria = cells
            .SelectMany(cell => cell.Power.Value?.Points ?? [])
            .SelectMany(point => point.Alone)
            .Select(item => item.Criterion)
            .Distinct(StringComparer.Ordinal)
            .ToImmutableArray();
        var rows = cells
            .Where(cell => cell.Power.Value is not null)
            .SelectMany(cell => Rows(cell, cell.Power.Value!, criteria))
            .ToImmutableArray();
        if (!rows.IsEmpty)
        {
            yield return new Table(
                title,
                [
                    new Column("Time", ColumnAlignment.Left, 0.7),
                    new Column("Mean change, %", ColumnAlignment.DecimalPoint, 1.3),
                    .. criteria.Select(criterion => new Column(
                        $"“{criterion}” alone",
                        ColumnAlignment.DecimalPoint,
                        1.2
                    )),
                    new Column("All criteria, simulated", ColumnAlignment.Left, 2.5),
                ],
                rows,
                Invariant(
                    $"Chance in percent that all criteria are met; in brackets the {NumberText.Percent(CriterionSetCharacteristic.ConfidenceLevel)} interval that the simulation leaves. “Alone”: that one criterion is met, by formula, as if results of one day had nothing in common; – where its limit is not in percent alone. Mean change in percent of the baseline."
                )
            );
        }

        foreach (var cell in cells)
        {
            if (cell.Power.NotComputable is { } why)
            {
                yield return new Paragraph(
                    $"{title}, {cell.Key.TimePoint}: not simulated. {RefusalWords.Sentence(why)}",
                    ParagraphStyle.Small
                );
            }
        }
    }

    private static IEnumerable<Row> Rows(
        CellPower cell,
        TimePointPower power,
        ImmutableArray<string> criteria
    ) =>
        power.Points.Select(point => new Row([
            new TableCell(cell.Key.TimePoint.ToString()),
            new TableCell(NumberText.Change(point.MeanChangePercent, PercentDecimals + 1)),
            .. criteria.Select(criterion => new TableCell(
                point.Alone.FirstOrDefault(item => item.Criterion == criterion) is { } alone
                    ? Chance(alone.Power)
                    : "–"
            )),
            new TableCell(
                $"{Chance(point.Together.Probability)} ({Chance(point.Together.Lower)} to {Chance(point.Together.Upper)})"
            ),
        ]));

    private static string Chance(double probability) =>
        NumberText.Fixed(100 * probability, PercentDecimals);
}
