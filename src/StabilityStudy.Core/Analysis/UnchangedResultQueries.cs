using System.Runtime.InteropServices;
using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Core.Analysis;

/// <summary>
/// Results that are the same to the last digit at one time and the next. Measurements agree so far by chance now and then, as often as their imprecision and the last digit
/// let them (<see cref="ChanceAgreement.OfTimes"/>); more often, rows were copied. Looked at in two ways:
/// <list type="bullet">
/// <item>over the specimens at two times, how many agree, against the binomial distribution;</item>
/// <item>over the analytes of one specimen, where a of m are the same at every time: n specimens would have C(m, a)·n·p of that kind by chance, p being the product of
/// their chances.</item>
/// </list>
/// </summary>
internal static class UnchangedResultQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind ResultsUnchanged = Kinds.Add("results-unchanged", QueryRank.Measurement, "more results are the same to the last digit at two times, or at every time of a specimen, than the imprecision of the test allows", "compare with the instrument's own record: were rows copied, and is the stated between-run CV true?", point: "Too many results did not change.");
    // csharpier-ignore-end

    private const int FewestSame = 5;

    /// <summary>Rarer than this by chance (binomial), agreement asks for an answer.</summary>
    public const double Rare = 1e-4;

    public static IEnumerable<DataQuery> Of(ImmutableArray<AnalyzedSeries> analytes) =>
        SideBySide.Of([
            .. analytes.Select(analyzed =>
                (Func<IEnumerable<DataQuery>>)(() => OfAnalyte(analyzed))
            ),
            () => OfSpecimens(analytes),
        ]);

    private static IEnumerable<DataQuery> OfAnalyte(AnalyzedSeries analyzed)
    {
        var analyte = analyzed.Analyte;
        var steps = Steps(analyzed).OrderBy(step => step.Key.To.TimePoint?.Delay);
        foreach (var ((from, to), step) in steps)
        {
            var chance = step.Chances / step.All;
            if (
                step.Same >= FewestSame
                && chance < 1
                && 1 - Binomial.Cdf(step.Same - 1, step.All, chance) < Rare
            )
            {
                yield return Query(
                    step.Line,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{analyte.Id}: {step.Same} of {step.All} specimens have the same result at {from} and at {to}, where the imprecision of the test would give at most about {chance * step.All:0}."
                    )
                );
            }
        }
    }

    /// <summary>One query about every specimen whose results are the same at every time in more analytes than chance allows.</summary>
    private static IEnumerable<DataQuery> OfSpecimens(ImmutableArray<AnalyzedSeries> analytes)
    {
        var unchanged = analytes
            .SelectMany(analyzed => analyzed.Series.Where(series => series.IsUnchanged))
            .Select(series => series.Specimen)
            .ToHashSet(StringComparer.Ordinal);
        var all = analytes
            .SelectMany(analyzed => analyzed.Specimens)
            .Select(rows => rows.Span[0].Specimen)
            .Distinct()
            .Count();
        var specimens = analytes
            .SelectMany(analyzed => analyzed.Series.Select(series => (analyzed, series)))
            .Where(item => unchanged.Contains(item.series.Specimen))
            .GroupBy(item => item.series.Specimen);
        var found = specimens
            .Where(own =>
                SameResultQueries.Choose(own.Count(), own.Count(item => item.series.IsUnchanged))
                    * all
                    * own.Where(item => item.series.IsUnchanged)
                        .Aggregate(
                            1.0,
                            (chance, item) =>
                                chance
                                * ChanceAgreement.OfTimes(
                                    item.analyzed.Analyte,
                                    item.series.Values[0],
                                    item.series.Values.Length,
                                    item.analyzed.Step
                                )
                        )
                < SameResultQueries.Rare
            )
            .ToImmutableArray();
        if (found is not [var first, ..])
        {
            yield break;
        }

        yield return Query(
            first.Min(item => item.series.Line),
            $"{string.Join(", ", first.Where(item => item.series.IsUnchanged).Select(item => item.analyzed.Analyte.Id))}: the results of {(found.Length == 1 ? "specimen" : "specimens")} {Doubts.ControlDoubts.Names([.. found.Select(own => own.Key)])} are the same at every time{(found.Length == 1 ? "" : $", those of {first.Key} in these analytes")}."
        );
    }

    /// <summary>From one time to the next at which there is a number, the first replicate of each.</summary>
    private static Dictionary<(TestOccasion From, TestOccasion To), Step> Steps(
        AnalyzedSeries analyzed
    )
    {
        var steps = new Dictionary<(TestOccasion From, TestOccasion To), Step>();
        foreach (var specimen in analyzed.Specimens)
        {
            ResultRow? before = null;
            foreach (var row in specimen.Span)
            {
                if (row.Result is not MeasuredResult || row.Occasion == before?.Occasion)
                {
                    continue;
                }

                if (before is not null)
                {
                    ref var step = ref CollectionsMarshal.GetValueRefOrAddDefault(
                        steps,
                        (before.Occasion, row.Occasion),
                        out var isKnown
                    );
                    step = (isKnown ? step : Step.None).With(before, row, analyzed);
                }

                before = row;
            }
        }

        return steps;
    }

    private static decimal ValueOf(ResultRow row) => ((MeasuredResult)row.Result).Value;

    private static DataQuery Query(int line, string message) =>
        new(ResultsUnchanged, DataFiles.ResultsAt(line, null), "", message);

    /// <summary>The specimens at two times.</summary>
    /// <param name="All">How many have a number at both.</param>
    /// <param name="Same">How many have the same number.</param>
    /// <param name="Chances">The sum of the chances that they have.</param>
    /// <param name="Line">The first line of a later result that is the same.</param>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Step(int All, int Same, double Chances, int Line)
    {
        public static Step None { get; } = new(0, 0, 0, int.MaxValue);

        public Step With(ResultRow first, ResultRow second, AnalyzedSeries analyzed)
        {
            var value = ValueOf(first);
            var isSame = value == ValueOf(second);
            return new(
                All + 1,
                Same + (isSame ? 1 : 0),
                Chances + ChanceAgreement.OfTimes(analyzed.Analyte, value, 2, analyzed.Step),
                isSame ? Math.Min(Line, second.SourceRow) : Line
            );
        }
    }
}
