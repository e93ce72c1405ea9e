using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Reporting.Report.Record;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>A mean change as measured and its interval worked out by hand from the listed changes, over specimens and over the clusters with the widest interval.</summary>
internal static class BiasByHand
{
    /// <summary>The changes and the steps; nothing without a mean.</summary>
    public static IEnumerable<Block> Of(BiasWords words, Cell cell) =>
        words.Result.Readings is [{ Mean.Value: { } mean }, ..]
            ?
            [
                new KeepTogether([
                    Changes(cell, words.Result, words.Names.Analyte.ShownUnit, Widest(mean)),
                ]),
                new KeepTogether([Steps(cell, words, mean)]),
            ]
            : [];

    /// <summary>The clusters with the widest interval, each result having one of them; days where there are none.</summary>
    private static ClusterInterval? Widest(ClusteredMeanInterval mean) =>
        mean
            .ByCluster.Where(item => item.Source != IntervalSource.CrossedRuns)
            .MaxBy(item => item.Upper - item.Lower);

    private static Table Changes(Cell cell, BiasResult bias, string unit, ClusterInterval? widest)
    {
        var days = ByCluster(cell, widest);
        return new Table(
            $"Changes as measured for the mean (criterion {bias.Criterion}), {ReadingWords.Over(SourceOf(widest))}: {HandChange.Recipe(bias, unit)}",
            [
                new Column(
                    SourceOf(widest) switch
                    {
                        IntervalSource.BaselineRuns => "Baseline run",
                        IntervalSource.DelayedRuns => "Delayed run",
                        IntervalSource.Persons => "Person",
                        IntervalSource.CollectionDays
                        or IntervalSource.Specimens
                        or IntervalSource.CrossedRuns => "Day",
                    },
                    ColumnAlignment.Left,
                    1.2
                ),
                new Column("Specimen and change", ColumnAlignment.Left, 7),
                new Column("Number", ColumnAlignment.Right, 0.9),
                new Column("Sum", ColumnAlignment.DecimalPoint, 1.1),
                new Column("Mean", ColumnAlignment.DecimalPoint, 1),
            ],
            [
                .. days.Select(day => new Row([
                    new TableCell(day.Key),
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

    private static IntervalSource SourceOf(ClusterInterval? widest) =>
        widest?.Source ?? IntervalSource.CollectionDays;

    private static ImmutableArray<IGrouping<string, PairRecord>> ByCluster(
        Cell cell,
        ClusterInterval? widest
    ) =>
        [
            .. cell
                .Pairs.Where(pair => pair.IsOfNumbers)
                .OrderBy(pair => pair.Specimen, StringComparer.Ordinal)
                .GroupBy(pair =>
                    SourceOf(widest) switch
                    {
                        IntervalSource.BaselineRuns => Run(pair.Baseline),
                        IntervalSource.DelayedRuns => Run(pair.Delayed),
                        IntervalSource.Persons => pair.Subject,
                        IntervalSource.CollectionDays
                        or IntervalSource.Specimens
                        or IntervalSource.CrossedRuns => Day(pair.CollectionDay),
                    }
                )
                .OrderBy(cluster => cluster.Key, StringComparer.Ordinal),
        ];

    private static string Run(Measurement? result) =>
        result is { Run.Length: > 0 } ? result.Run
        : result?.TestedAt is { } testedAt
            ? $"{Day(DateOnly.FromDateTime(testedAt.DateTime))} {result.Instrument}".TrimEnd()
        : "";

    private static string Day(DateOnly day) =>
        day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static Table Steps(Cell cell, BiasWords words, ClusteredMeanInterval mean)
    {
        var bias = words.Result;
        var widest = Widest(mean);
        var clusters = ByCluster(cell, widest);
        var specimens = HandInterval.Of(
            [.. clusters.SelectMany(cluster => cluster).Select(pair => HandChange.Of(pair, bias))],
            mean.BySpecimen
        );
        var means = widest is null
            ? null
            : HandInterval.Of(
                [
                    .. clusters.Select(cluster =>
                        decimal.Round(
                            cluster.Average(pair => HandChange.Of(pair, bias)),
                            HandChange.Decimals
                        )
                    ),
                ],
                widest
            );
        Row Line(string step, Func<HandInterval, string> text) =>
            new([
                new TableCell(step),
                new TableCell(text(specimens)),
                new TableCell(means is null ? "none with several" : text(means)),
            ]);
        return new Table(
            $"The mean change and its {NumberText.Percent(bias.ConfidenceLevel)} interval",
            [
                new Column("Step", ColumnAlignment.Left, 4),
                new Column("Specimens", ColumnAlignment.Left, 3),
                new Column($"Means {ReadingWords.Over(SourceOf(widest))}", ColumnAlignment.Left, 3),
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
            $"Each half of an interval is lengthened for skewness, downward × {NumberText.Fixed(mean.Stretch.Downward, HandChange.Decimals)} and upward × {NumberText.Fixed(mean.Stretch.Upward, HandChange.Decimals)} (METHODS.md), and the interval reaches from the lowest lower end to the highest upper end of all, the clusters not shown here being no wider; in this report: {words.Figure(mean.Mean)} ({words.Interval(mean.Lower, mean.Upper)}), held to {words.AllowedInBrief}: {ReasonWords.Of(bias.Reasons[0])}.{(bias.Reading == ChangeReading.AsMeasured ? "" : $" The mean change {ReadingWords.Of(bias.Reading)} decided; it stands with the estimates of the time point.")} Worked out from the rounded changes above, so the last digit may differ. t: from any table of Student's distribution."
        );
    }

    private static string Shown(decimal value) =>
        NumberText.Fixed((double)decimal.Round(value, HandChange.Decimals), HandChange.Decimals);
}
