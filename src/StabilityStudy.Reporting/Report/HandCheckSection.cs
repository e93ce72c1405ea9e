using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Reporting.Report;

/// <summary>The numbers that decided, step by step with a pocket calculator from the listed changes, and the way from each conclusion to its specimens.</summary>
internal static class HandCheckSection
{
    public const string Title = "Check by hand";

    /// <summary>More terms than these nobody adds up by hand.</summary>
    private const int MostTerms = 6;

    private const int MostNamed = 12;

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
                Specimens(analysis),
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
        var set = all.Where(item => item.Sequence.Window?.Planned == item.Cell.Key.TimePoint)
            .ToImmutableArray();
        return set.IsEmpty
            ? all.IsEmpty
                ? null
                : all[0]
            : set[0];
    }

    private static bool IsByHand(CriterionResult result) =>
        result
            is BiasResult { Mean.Value: not null }
                or IndividualResult { Bounds.Value: not null };

    private static IEnumerable<Block> OfCell(StudyAnalysis analysis, Sequence sequence, Cell cell)
    {
        var names = SequenceNames.Of(analysis, sequence);
        yield return new Paragraph(
            $"{names.Title(analysis)} at {cell.Key.TimePoint}: {TradeWords.Of(cell.Conclusion)}. The numbers that decided are worked out below from the pairs themselves, with a pocket calculator and no program. Every other time point is checked in the same way from its lines under \"{PairSection.Title}\".",
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
                    yield return new KeepTogether([Count(individual, cell, names)]);
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

    /// <summary>The word under which the analysis says that persons with several specimens made the interval wider.</summary>
    private const string OverPersons = "subjects";

    private static Row Step(string step, string result) =>
        new([new TableCell(step), new TableCell(result)]);

    private static string Shown(decimal value) =>
        NumberText.Fixed((double)decimal.Round(value, HandChange.Decimals), HandChange.Decimals);

    private static Table Count(IndividualResult individual, Cell cell, SequenceNames names)
    {
        var agreement = individual.Agreement;
        var (n, outside) = (agreement.Counted, agreement.Outside);
        var most = individual.MostOutside;
        return new Table(
            $"Single specimens (criterion {individual.Criterion})",
            [
                new Column("Step", ColumnAlignment.Left, 5),
                new Column("Result", ColumnAlignment.Left, 5),
            ],
            [
                Step(
                    $"Specimens that count; outside {TradeWords.Of(individual.Limit, names.Analyte.ShownUnit)}",
                    $"{NumberText.Count(n)}; {NumberText.Count(outside)}"
                ),
                Step("Outside", Outside(individual, cell)),
                Step(
                    "Most that may be outside",
                    most is { } allowed ? NumberText.Count(allowed) : "none can show it"
                ),
                .. Chance(individual, n, outside),
                Step(
                    $"Required: at least {NumberText.Percent(individual.RequiredShare)} of specimens inside",
                    TradeWords.Clause(individual.Reasons[0].Text)
                ),
            ],
            null
        );
    }

    /// <summary>The binomial sum behind the exact bound, written out where it has few terms.</summary>
    private static IEnumerable<Row> Chance(IndividualResult individual, int n, int outside)
    {
        if (outside >= MostTerms || n == 0)
        {
            yield break;
        }

        var share = individual.RequiredShare;
        var terms = new List<string>();
        var total = 0.0;
        var ways = 1.0;
        for (var i = 0; i <= outside; i++)
        {
            total += ways * Math.Pow(1 - share, i) * Math.Pow(share, n - i);
            var inside = NumberText.Plain((decimal)share) + Power(n - i);
            terms.Add(
                i == 0
                    ? inside
                    : $"{NumberText.Fixed(ways, 0)} × {NumberText.Plain((decimal)(1 - share))}{Power(i)} × {inside}"
            );
            ways = ways * (n - i) / (i + 1);
        }

        yield return Step(
            $"Chance of so few outside, were the true share {NumberText.Percent(share)}: {string.Join(" + ", terms)}",
            $"{NumberText.Fixed(total, 4)}, {(total <= 1 - individual.ConfidenceLevel ? "at most" : "above")} {NumberText.Fixed(1 - individual.ConfidenceLevel, 2)}"
        );
    }

    private static string Power(int exponent) =>
        exponent == 1
            ? ""
            : string.Concat(NumberText.Count(exponent).Select(digit => "⁰¹²³⁴⁵⁶⁷⁸⁹"[digit - '0']));

    private static string Outside(IndividualResult individual, Cell cell)
    {
        var outside = individual.Agreement.OutsideSpecimens;
        return outside.IsEmpty ? "none"
            : outside.Length > MostNamed
                ? $"{NumberText.Count(outside.Length)}, marked under \"{PairSection.Title}\""
            : string.Join(", ", outside.Select(specimen => WithLines(specimen, cell)));
    }

    /// <summary>"N-034 (lines 131, 267)": the lines in the laboratory's own file.</summary>
    private static string WithLines(string specimen, Cell cell)
    {
        var pair = cell.Pairs.First(item => item.Specimen == specimen);
        int[] lines =
        [
            .. new[] { pair.Baseline?.SourceRow, pair.Delayed?.SourceRow }.OfType<int>(),
        ];
        return lines.Length == 0
            ? specimen
            : $"{specimen} ({(lines.Length == 1 ? "line" : "lines")} {string.Join(", ", lines.Select(NumberText.Count))})";
    }

    private static Table Specimens(StudyAnalysis analysis)
    {
        return new Table(
            $"From each conclusion to its specimens in {analysis.Facts.Files.Results}",
            [
                new Column("Time", ColumnAlignment.Left, 0.8),
                new Column("Conclusion", ColumnAlignment.Left, 1.6),
                new Column("By", ColumnAlignment.Left, 2.2),
                new Column("Outside, failed or undecidable", ColumnAlignment.Left, 5.6),
            ],
            [.. analysis.Sequences.SelectMany(sequence => Lines(analysis, sequence))],
            $"By: the criteria that made the conclusion. A mean rests on every compared pair: \"{PairSection.Title}\", where each stands with its lines."
        );
    }

    private static IEnumerable<Row> Lines(StudyAnalysis analysis, Sequence sequence)
    {
        yield return new Row(
            [new TableCell(SequenceNames.Of(analysis, sequence).Title(analysis))],
            RowKind.GroupHeading
        );
        foreach (var cell in sequence.Cells)
        {
            var outside = cell
                .Criteria.OfType<IndividualResult>()
                .Select(result => Outside(result, cell))
                .Distinct(StringComparer.Ordinal);
            yield return new Row([
                new TableCell(cell.Key.TimePoint.ToString()),
                new TableCell(
                    TradeWords.Of(cell.Conclusion),
                    Emphasis.Strong,
                    TradeWords.ShapeOf(cell.Conclusion)
                ),
                new TableCell(By(cell)),
                new TableCell(string.Join("; ", outside)),
            ]);
        }
    }

    private static string By(Cell cell)
    {
        if (cell.Conclusion is Conclusion.NotReached or Conclusion.NotAssessed)
        {
            return cell.Conclusion == Conclusion.NotReached
                ? "an earlier time point"
                : "see its page";
        }

        var verdict = cell.Conclusion switch
        {
            Conclusion.Supported => Verdict.Met,
            Conclusion.NotSupported => Verdict.NotMet,
            _ => Verdict.Inconclusive,
        };
        string[] by =
        [
            .. cell
                .Criteria.Where(result => result.Verdict == verdict)
                .Select(result => result.Criterion),
            .. cell.Doubts.IsEmpty ? [] : new[] { "a doubt on its page" },
        ];
        return string.Join(", ", by);
    }
}
