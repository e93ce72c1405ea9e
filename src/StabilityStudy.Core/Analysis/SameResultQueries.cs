namespace StabilityStudy.Core.Analysis;

/// <summary>
/// Two specimens with the same results at every time: as a rule rows that were copied. Results of few digits agree by
/// chance, so there are to be more such specimens than the digits of this analyte would give.
/// </summary>
internal static class SameResultQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind SameResults = Kinds.Add("same-results", QueryRank.Measurement, "results of different specimens are alike in a way that copied rows would be", "compare with the instrument's own record", point: "Results are alike.");
    // csharpier-ignore-end

    /// <summary>How many times the number expected by chance stands out: changes within a specimen go together, so the expected number is too small.</summary>
    private const int TimesExpected = 4;

    /// <summary>Rarer than this by chance (Poisson), agreement asks for an answer.</summary>
    private const double Rare = 0.005;

    /// <summary>A term of the Poisson sum that changes no digit of it.</summary>
    private const double Negligible = 1e-20;

    public static IEnumerable<DataQuery> Of(StudyInputs inputs) =>
        inputs.Results.GroupBy(row => row.Analyte).SelectMany(OfAnalyte);

    private static IEnumerable<DataQuery> OfAnalyte(IGrouping<string, ResultRow> rows)
    {
        var specimens = rows.GroupBy(row => row.Specimen)
            .Select(Series.Of)
            .OfType<Series>()
            .GroupBy(series => series.Times);
        foreach (var comparable in specimens)
        {
            var all = comparable.ToImmutableArray();
            var copies = all.GroupBy(series => series.Texts)
                .Where(same => same.Skip(1).Any())
                .ToImmutableArray();
            var observed = copies.Sum(same => PairsOf(same.Count()));
            if (observed > 0 && ChanceOf(observed, TimesExpected * Expected(all, observed)) < Rare)
            {
                foreach (var same in copies)
                {
                    yield return Query(rows.Key, [.. same.OrderBy(series => series.Line)]);
                }
            }
        }
    }

    /// <summary>
    /// Pairs of specimens that would agree by chance, were baseline and every change independent; estimated from the
    /// other pairs, so that copies do not vouch for themselves.
    /// </summary>
    private static double Expected(ImmutableArray<Series> all, double observed)
    {
        var pairs = PairsOf(all.Length);
        var others = pairs - observed;
        return others <= 0
            ? 0
            : Enumerable
                .Range(0, all[0].Steps.Length)
                .Select(i =>
                    (
                        all.GroupBy(series => series.Steps[i]).Sum(same => PairsOf(same.Count()))
                        - observed
                    ) / others
                )
                .Aggregate(pairs, (product, one) => product * one);
    }

    /// <summary>Chance of at least so many events where a mean number is expected, by the Poisson distribution.</summary>
    private static double ChanceOf(double atLeast, double mean)
    {
        var term = Math.Exp(-mean);
        var below = 0.0;
        // Far above the mean further terms add nothing, however many there are.
        for (var count = 0.0; count < atLeast && !(count > mean && term < Negligible); count++)
        {
            below += term;
            term *= mean / (count + 1);
        }

        return Math.Max(0, 1 - below);
    }

    private static double PairsOf(int count) => count * (count - 1.0) / 2;

    private static DataQuery Query(string analyte, ImmutableArray<Series> same) =>
        new(
            SameResults,
            DataFiles.ResultsAt(same[^1].Line, null),
            "",
            string.Create(
                CultureInfo.InvariantCulture,
                $"{analyte}: specimens {string.Join(", ", same.Select(series => series.Specimen))} have the same result at every time."
            ),
            "Compare with the analyzer's own record: were rows copied?"
        );

    /// <summary>The measured results of one specimen in order of time.</summary>
    private sealed record Series(
        string Specimen,
        int Line,
        string Times,
        string Texts,
        ImmutableArray<decimal> Steps
    )
    {
        /// <summary>The series; null without a delayed result, a result that is no number, or numbers without variation.</summary>
        public static Series? Of(IGrouping<string, ResultRow> rows)
        {
            var ordered = rows.OrderBy(row => row.Occasion.TimePoint?.Delay ?? TimeSpan.Zero)
                .ThenBy(row => row.TestedAt)
                .ThenBy(row => row.SourceRow)
                .ToImmutableArray();
            var values = ordered
                .Select(row => row.Result)
                .OfType<MeasuredResult>()
                .Select(result => result.Value)
                .ToImmutableArray();
            return
                values.Length < ordered.Length
                || !ordered[0].Occasion.IsBaseline
                || ordered.All(row => row.Occasion.IsBaseline)
                || values.Distinct().Count() < 2
                ? null
                : new(
                    rows.Key,
                    ordered.Min(row => row.SourceRow),
                    string.Join('|', ordered.Select(row => row.Occasion)),
                    string.Join(
                        '|',
                        values.Select(value =>
                            value.ToString("0.#########", CultureInfo.InvariantCulture)
                        )
                    ),
                    [.. values.Select((value, i) => i == 0 ? value : value - values[0])]
                );
        }
    }
}
