using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Core.Analysis;

/// <summary>
/// Specimens whose result is the same to the last digit at one time and the next. Measurements agree so far by chance
/// now and then, as often as their imprecision and the last digit let them; more often, rows were copied.
/// </summary>
internal static class UnchangedResultQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind ResultsUnchanged = Kinds.Add("results-unchanged", QueryRank.Measurement, "more results are the same to the last digit at two times than the imprecision of the test allows", "compare with the instrument's own record", point: "Too many results did not change.");
    // csharpier-ignore-end

    /// <summary>Two results of one run vary less than the stated variation between runs; half of it is taken.</summary>
    private const double ShareWithinRun = 0.5;

    /// <summary>No coagulation test repeats itself better than this CV in percent, whatever is stated or not.</summary>
    public const double LeastCvPercent = 0.5;

    private const int FewestSame = 5;

    /// <summary>Rarer than this by chance (binomial), agreement asks for an answer.</summary>
    public const double Rare = 1e-4;

    public static IEnumerable<DataQuery> Of(StudyInputs inputs) =>
        inputs
            .Protocol.Analytes.Where(analyte => analyte.Categories.IsEmpty)
            .SelectMany(analyte => OfAnalyte(analyte, inputs));

    private static IEnumerable<DataQuery> OfAnalyte(Analyte analyte, StudyInputs inputs)
    {
        var series = inputs
            .Results.Where(row => row.Analyte == analyte.Id && row.Result is MeasuredResult)
            .GroupBy(row => row.Specimen)
            .Select(rows =>
                rows.GroupBy(row => row.Occasion)
                    .Select(same => same.MinBy(row => row.Replicate)!)
                    .OrderBy(row => row.Occasion.TimePoint?.Delay ?? TimeSpan.Zero)
                    .ToImmutableArray()
            );
        var steps = series
            .SelectMany(rows => rows.Zip(rows.Skip(1)))
            .GroupBy(step => (From: step.First.Occasion, To: step.Second.Occasion))
            .OrderBy(step => step.Key.To.TimePoint?.Delay);
        foreach (var step in steps)
        {
            var same = step.Where(item => ValueOf(item.First) == ValueOf(item.Second))
                .ToImmutableArray();
            var chance = step.Average(item => ChanceOf(analyte, ValueOf(item.First)));
            if (
                same.Length >= FewestSame
                && chance < 1
                && 1 - Binomial.Cdf(same.Length - 1, step.Count(), chance) < Rare
            )
            {
                yield return new(
                    ResultsUnchanged,
                    DataFiles.ResultsAt(same.Min(item => item.Second.SourceRow), null),
                    "",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{analyte.Id}: {same.Length} of {step.Count()} specimens have the same result at {step.Key.From} and at {step.Key.To}, where the imprecision of the test would give at most about {chance * step.Count():0}."
                    ),
                    "Compare with the analyzer's own record: were rows copied, and is the stated between-run CV true?"
                );
            }
        }
    }

    private static decimal ValueOf(ResultRow row) => ((MeasuredResult)row.Result).Value;

    /// <summary>At most the density of a normal difference at zero times the reporting increment.</summary>
    public static double ChanceOf(Analyte analyte, decimal value)
    {
        var percent = Math.Max(
            LeastCvPercent,
            ShareWithinRun * (double)(analyte.BetweenRunCvPercent ?? 0)
        );
        var deviation = percent / 100 * (double)Math.Abs(value);
        return deviation == 0
            ? 1
            : Math.Min(1, Math.Pow(10, -analyte.Decimals) / (2 * deviation * Math.Sqrt(Math.PI)));
    }
}
