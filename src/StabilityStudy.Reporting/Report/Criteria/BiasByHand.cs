using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Reporting.Report.Record;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>A mean change and its interval worked out by hand from the listed changes.</summary>
internal static class BiasByHand
{
    /// <summary>The changes and the steps; nothing without a mean.</summary>
    public static IEnumerable<Block> Of(BiasWords words, Cell cell) =>
        words.Result.Mean.TryGet(out var mean)
            ?
            [
                new KeepTogether([Changes(cell, words.Result, words.Names.Analyte.ShownUnit)]),
                new KeepTogether([Steps(cell, words, mean)]),
            ]
            : [];

    private static Table Changes(Cell cell, BiasResult bias, string unit)
    {
        var days = ByDay(cell);
        return new Table(
            $"Changes for the mean (criterion {bias.Criterion}), by collection day: {HandChange.Recipe(bias, unit)}",
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

    private static Table Steps(Cell cell, BiasWords words, ClusteredMeanInterval mean)
    {
        var bias = words.Result;
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
            $"From the lower of the lower ends to the higher of the upper ends{(mean.DecidedBy == WidestInterval.Subjects ? ", and of the interval over persons, since some gave more than one specimen" : "")}; in this report: {words.Figure(mean.Mean)} ({words.Interval(mean.Lower, mean.Upper)}), held to {words.AllowedInBrief}: {ReasonWords.Of(bias.Reasons[0])}. Worked out from the rounded changes above, so the last digit may differ. t: from any table of Student's distribution."
        );
    }

    private static string Shown(decimal value) =>
        NumberText.Fixed((double)decimal.Round(value, HandChange.Decimals), HandChange.Decimals);
}
