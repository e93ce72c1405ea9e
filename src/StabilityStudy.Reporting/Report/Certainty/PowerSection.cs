using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Planning;
using StabilityStudy.Statistics.Planning;
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
                        $"Simulated: {power.Studies.ToString("N0", CultureInfo.InvariantCulture)} studies for each line, seed {power.Seed}, with the collection days, runs and spread that each time point had here, judged by the criteria of this protocol. The mean change is supposed, in the direction of the one found: none, half, and all of the smallest change at which a criterion is no longer true. The last line of a time point thus shows how often \"supported\" would be wrong; with the larger spread fewer specimens stay inside their limit, and lines before the last may be wrong ones too. The spread found is an estimate, of what runs add from as many values as there are days; so each chance stands twice, with the spread as found and with every standard deviation at its one-sided {NumberText.Percent(SupposedSpread.ConfidenceLevel)} upper bound. Rely on the less favorable of the two when you plan."
                    ),
                    ParagraphStyle.Body
                ),
                .. analysis.Sequences.SelectMany(sequence => Tables(analysis, sequence, power)),
                .. Reservations(power),
            ]
        );

    private static IEnumerable<Paragraph> Reservations(StudyPower power)
    {
        yield return Small(
            "Both results of a specimen have the imprecision of a repeat of their own and the error of their run. The repeat CV is the stated between-run CV less what the runs of this study show, and 0 where the protocol states none. What the changes of a day share is taken to come from its two runs in equal parts; where runs cross days, a part of it counts as the specimens' own."
        );
        yield return Small(
            "This says what the study could show, not what it showed: the conclusions stand on the criteria alone."
        );
        yield return Small(
            "Each time point is simulated on its own. Left out are: that every earlier time point must be supported first, that each of several instruments must support it, a second look at the data, specimens and tubes that are lost or fail and the share that may be left out, specimens in reserve, controls and bridging plasma, results beyond the measuring interval, several draws of one person, and a first test that comes too late. Most of these make support rarer. Left out too is what goes along with time and cannot be told from it, such as another lot, instrument or operator for the delayed tubes; that can make a wrong \"supported\" more frequent."
        );
        var few = power
            .TimePoints.Where(cell =>
                cell.Power.Value?.Supposed.Found.Conduct.Specimens < BiasCriterion.FewestForRare
            )
            .Select(cell => cell.Key.TimePoint)
            .Distinct()
            .ToImmutableArray();
        yield return Small(
            "Changes are drawn from a normal distribution: rare unstable specimens and long tails are not in it."
                + (
                    few.IsEmpty
                        ? ""
                        : Invariant(
                            $" With fewer than {BiasCriterion.FewestForRare} specimens ({string.Join(", ", few)}) the study could not show that there are none: of one unstable specimen in 20 it may have drawn none, its spread is then too small even at the upper bound, and skewness or a change that depends on the level can go unseen. A wrong \"supported\" can then be more frequent than the last line says."
                        )
                )
        );
    }

    private static Paragraph Small(string text) => new(text, ParagraphStyle.Small);

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
                    new Column("All criteria, spread as found", ColumnAlignment.Left, 2.2),
                    new Column("All criteria, spread at its bound", ColumnAlignment.Left, 2.2),
                ],
                rows,
                Invariant(
                    $"Chance in percent that all criteria are met; in brackets the {NumberText.Percent(CriterionSetCharacteristic.ConfidenceLevel)} interval that the simulation leaves. “Alone”: that one criterion is met, by formula, as if results of one day had nothing in common and without the doubts that the criterion has of few days, uneven days, skewness and a change that depends on the level, which weigh most where specimens or days are few; – where its limit is not in percent alone. Mean change in percent of the baseline."
                )
            );
        }

        if (cells.Any(cell => cell.Power.Value is not null))
        {
            yield return Supposed(title, cells);
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

    private static Table Supposed(string title, ImmutableArray<CellPower> cells) =>
        new(
            $"{title}: what was supposed",
            [
                new Column("Time", ColumnAlignment.Left, 0.7),
                new Column("Specimens of each day", ColumnAlignment.Left, 2.4),
                new Column("Runs, baseline and delayed", ColumnAlignment.Left, 1.3),
                new Column("Repeat CV, %", ColumnAlignment.DecimalPoint, 1),
                new Column("SD of specimens, %", ColumnAlignment.Left, 1.6),
                new Column("SD of a run, %", ColumnAlignment.Left, 1.6),
            ],
            [
                .. from cell in cells
                where cell.Power.Value is not null
                let found = cell.Power.Value!.Supposed.Found
                let bound = cell.Power.Value!.Supposed.AtBound
                select new Row([
                    new TableCell(cell.Key.TimePoint.ToString()),
                    new TableCell(Days(found.Conduct.SpecimensOfDays)),
                    new TableCell(Runs(found)),
                    new TableCell(Percent(found.RepeatCvPercent)),
                    new TableCell(UpTo(found.SpecimenSdPercent, bound.SpecimenSdPercent)),
                    new TableCell(
                        found.SameRun ? "–" : UpTo(found.RunSdPercent, bound.RunSdPercent)
                    ),
                ]),
            ],
            note: null
        );

    private static string Days(ImmutableArray<int> specimens) =>
        specimens.Distinct().Count() == 1
            ? Invariant($"{specimens[0]} on each of {specimens.Length}")
            : string.Join(", ", specimens);

    private static string Runs(SupposedResults supposed) =>
        supposed.SameRun
            ? "one for both results"
            : $"{NumberText.Count(supposed.Conduct.BaselineRun.Distinct().Count())} and {NumberText.Count(supposed.Conduct.DelayedRun.Distinct().Count())}";

    private static string UpTo(double found, double bound) =>
        $"{Percent(found)} (up to {Percent(bound)})";

    private static string Percent(double value) => NumberText.Fixed(value, PercentDecimals + 1);

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
            new TableCell(Chance(point.Together)),
            new TableCell(Chance(point.AtSpreadBound)),
        ]));

    private static string Chance(CharacteristicPoint point) =>
        $"{Chance(point.Probability)} ({Chance(point.Lower)} to {Chance(point.Upper)})";

    private static string Chance(double probability) =>
        NumberText.Fixed(100 * probability, PercentDecimals);
}
