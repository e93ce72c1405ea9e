using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Reporting.Report;

/// <summary>The numbers that decided, step by step with a pocket calculator from the listed changes, and the way from each conclusion to its specimens.</summary>
internal static class HandCheckSection
{
    public const string Title = "Check by hand";

    /// <summary>The word under which the analysis says that persons with several specimens made the interval wider.</summary>
    private const string OverPersons = "subjects";

    public static Section Of(StudyAnalysis analysis) =>
        new(
            Title,
            StartsOnNewPage: false,
            [
                .. Deciding(analysis) is var (sequence, cell)
                    ? OfCell(analysis, sequence, cell)
                    :
                    [
                        new Paragraph(
                            "No time point was concluded on by a mean or a count of specimens, so there is no number to check.",
                            ParagraphStyle.Body
                        ),
                    ],
                SpecimenTrail.Of(analysis),
            ]
        );

    /// <summary>The time point that set the first window; without a window the first that was concluded on.</summary>
    private static (Sequence Sequence, Cell Cell)? Deciding(StudyAnalysis analysis)
    {
        var all = (
            from sequence in analysis.Sequences
            from cell in sequence.Cells
            where cell.Criteria.Any(IsByHand) && cell.Pairs.Any(pair => pair.IsOfNumbers)
            select (Sequence: sequence, Cell: cell)
        ).ToImmutableArray();
        var deciding = all.Where(item => item.Sequence.Window?.Planned == item.Cell.Key.TimePoint)
            .Concat(all)
            .Take(1)
            .ToImmutableArray();
        return deciding.IsEmpty ? null : deciding[0];
    }

    private static bool IsByHand(CriterionResult result) =>
        result
            is BiasResult { Mean.Value: not null }
                or IndividualResult { Bounds.Value: not null };

    private static IEnumerable<Block> OfCell(StudyAnalysis analysis, Sequence sequence, Cell cell)
    {
        var names = SequenceNames.Of(analysis, sequence);
        yield return new Paragraph(
            $"{names.Title(analysis)} at {cell.Key.TimePoint}: {TradeWords.Of(cell.Conclusion)}. The numbers that decided are worked out below from the pairs themselves, with a pocket calculator and no program; carry every digit and round at the end. Skewness, the number of days, what was left out and the controls are read off the page of the time point. Another time point is checked in the same way from its lines under \"{PairSection.Title}\".",
            ParagraphStyle.Body
        );
        foreach (var result in cell.Criteria)
        {
            switch (result)
            {
                case BiasResult bias when bias.Mean.TryGet(out var mean):
                    yield return new KeepTogether([Changes(cell, bias, names)]);
                    yield return new KeepTogether([Steps(cell, bias, mean, names)]);
                    break;
                case IndividualResult { Bounds.Value: not null } individual:
                    yield return new KeepTogether([HandCount.Of(individual, cell, names)]);
                    break;
            }
        }
    }

    private static Table Changes(Cell cell, BiasResult bias, SequenceNames names)
    {
        var days = ByDay(cell);
        return new Table(
            $"Changes for the mean (criterion {bias.Criterion}), by collection day: {HandChange.Recipe(bias, names.Analyte.ShownUnit)}",
            [
                new Column("Day", ColumnAlignment.Left, 1.2),
                new Column("Specimen and change", ColumnAlignment.Left, 7),
                new Column("Number", ColumnAlignment.Right, 0.9),
                new Column("Sum", ColumnAlignment.DecimalPoint, 1.1),
                new Column("Mean", ColumnAlignment.DecimalPoint, 1),
            ],
            [
                .. days.Select(day => new Row([
                    new TableCell(day.Key.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
                    new TableCell(
                        string.Join(
                            "; ",
                            day.Select(pair =>
                                $"{pair.Specimen} {NumberText.Change((double)HandChange.Of(pair, bias), HandChange.Decimals)}"
                            )
                        )
                    ),
                    new TableCell(NumberText.Count(day.Count())),
                    new TableCell(Shown(day.Sum(pair => HandChange.Of(pair, bias)))),
                    new TableCell(Shown(day.Average(pair => HandChange.Of(pair, bias)))),
                ])),
            ],
            $"For example {HandChange.WorkedOut(days[0].First(), bias)}. Baselines and delayed results: \"{PairSection.Title}\"."
        );
    }

    private static ImmutableArray<IGrouping<DateOnly, PairRecord>> ByDay(Cell cell) =>
        [
            .. cell
                .Pairs.Where(pair => pair.IsOfNumbers)
                .OrderBy(pair => pair.Specimen, StringComparer.Ordinal)
                .GroupBy(pair => pair.CollectionDay)
                .OrderBy(day => day.Key),
        ];

    private static Table Steps(
        Cell cell,
        BiasResult bias,
        ClusteredMeanInterval mean,
        SequenceNames names
    )
    {
        var days = ByDay(cell);
        var specimens = HandInterval.Of(
            [.. days.SelectMany(day => day).Select(pair => HandChange.Of(pair, bias))],
            mean.BySpecimen
        );
        var dayMeans = mean.ByCluster.TryGet(out var byDay)
            ? HandInterval.Of(
                [
                    .. days.Select(day =>
                        decimal.Round(
                            day.Average(pair => HandChange.Of(pair, bias)),
                            HandChange.Decimals
                        )
                    ),
                ],
                byDay
            )
            : null;
        Row Line(string step, Func<HandInterval, string> text) =>
            new([
                new TableCell(step),
                new TableCell(text(specimens)),
                new TableCell(dayMeans is null ? "one day only" : text(dayMeans)),
            ]);
        return new Table(
            $"The mean change and its {NumberText.Percent(bias.ConfidenceLevel)} interval",
            [
                new Column("Step", ColumnAlignment.Left, 4),
                new Column("Specimens", ColumnAlignment.Left, 3),
                new Column("Day means", ColumnAlignment.Left, 3),
            ],
            [
                Line("Number n", item => NumberText.Count(item.Count)),
                Line(
                    "Sum; sum of squares",
                    item => $"{Shown(item.Sum)}; {Shown(item.SumOfSquares)}"
                ),
                Line("Mean = sum ÷ n", item => Shown(item.Mean)),
                Line(
                    "SD = √((sum of squares − sum² ÷ n) ÷ (n − 1))",
                    item => NumberText.Fixed(item.StandardDeviation, HandChange.Decimals)
                ),
                Line(
                    "Standard error = SD ÷ √n",
                    item => NumberText.Fixed(item.StandardError, HandChange.Decimals)
                ),
                Line(
                    $"t, two-sided {NumberText.Percent(bias.ConfidenceLevel)}, n − 1 degrees of freedom",
                    item => NumberText.Fixed(item.T, HandChange.Decimals)
                ),
                Line(
                    "Mean ± t × standard error",
                    item => NumberText.Interval(item.Lower, item.Upper, HandChange.Decimals)
                ),
            ],
            $"From the lower of the lower ends to the higher of the upper ends{(mean.DecidedBy == OverPersons ? ", and of the interval over persons, since some gave more than one specimen" : "")}; in this report: {CriterionWords.Figure(bias, mean.Mean, names)} ({CriterionWords.Interval(bias, mean.Lower, mean.Upper, names)}), held to {CriterionFigures.Allowed(bias, names)}: {TradeWords.Clause(bias.Reasons[0].Text)}. Worked out from the rounded changes above, so the last digit may differ. t: from any table of Student's distribution."
        );
    }

    private static string Shown(decimal value) =>
        NumberText.Fixed((double)decimal.Round(value, HandChange.Decimals), HandChange.Decimals);
}
