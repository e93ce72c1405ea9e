using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Study;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Core.Analysis;

/// <summary>
/// Changes that vary less than two measurements can: a sign of results copied, computed from one another, or chosen. Looked at from the baseline, about a straight line through the baselines, and from the time point before.
/// </summary>
internal static class SpreadQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind SpreadBelowNoise = Kinds.Add("spread-below-noise", QueryRank.Specimen, "the changes spread far less than the imprecision of the test alone would make them", "compare with the own record of the instrument");
    // csharpier-ignore-end

    /// <summary>Fewer changes than this vary too much in their own SD.</summary>
    private const int FewestForSpread = 10;

    /// <summary>Ten normal changes have an SD below this share of the true one with a probability under 0.01.</summary>
    private const double LeastShareOfNoise = 0.4;

    /// <summary>SD in percent of a difference that no coagulation test falls below, whatever is stated or not: that of two results with a CV of 0.5 %.</summary>
    private const double LeastNoisePercent = 0.5 * 1.41421356;

    /// <summary>One query a cell, of the smallest spread.</summary>
    public static IEnumerable<DataQuery> Of(Sequence sequence, StudyProtocol protocol)
    {
        var analyte = protocol.Analytes.Single(item => item.Id == sequence.Analyte);
        var before = ImmutableArray<PairRecord>.Empty;
        foreach (var cell in sequence.Cells)
        {
            var pairs = cell.Pairs.Where(pair => pair.IsOfNumbers).ToImmutableArray();
            var (stated, noise) = cell.Estimates.NoisePercent is { } own
                ? ("the stated between-run imprecision alone", own)
                : ("the least imprecision of such a test", LeastNoisePercent);
            var smallest = Spreads(pairs, before, Math.Pow(10, -analyte.Decimals), noise)
                .Where(item => item.Percent < LeastShareOfNoise * noise)
                .OrderBy(item => item.Percent)
                .FirstOrDefault();
            if (smallest is not null)
            {
                yield return new(
                    SpreadBelowNoise,
                    new(StudyFileNames.Usual.Results, null, null),
                    "",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{smallest.What} vary by an SD of {smallest.Percent:0.00} %, far less than the {noise:0.0} % expected from {stated}."
                    ),
                    "Check that delayed results are measurements of their own, and that the stated between-run CV is true."
                )
                {
                    Scope = QueryScope.Of(cell.Key),
                };
            }

            before = pairs;
        }
    }

    /// <summary>The spreads that were large enough to be seen in the last reported digit.</summary>
    private static IEnumerable<SpreadOfChanges> Spreads(
        ImmutableArray<PairRecord> pairs,
        ImmutableArray<PairRecord> before,
        double increment,
        double noise
    )
    {
        var values = pairs.Select(pair => pair.Values()).ToImmutableArray();
        var earlier = before
            .GroupBy(pair => pair.Specimen)
            .ToDictionary(same => same.Key, same => same.First().Values().Delayed);
        foreach (
            var (what, data) in new[]
            {
                ("the changes", values),
                (
                    "the changes since the time point before",
                    [
                        .. pairs
                            .Where(pair => earlier.ContainsKey(pair.Specimen))
                            .Select(pair => (earlier[pair.Specimen], pair.Values().Delayed)),
                    ]
                ),
            }
        )
        {
            if (
                data.Length < FewestForSpread
                || data.Any(item => item.Item1 <= 0)
                || data.Average(item => (double)item.Item1) * noise / 100 < increment
            )
            {
                continue;
            }

            var exact = ExactPairs.Create(
                [.. data.Select(item => item.Item1)],
                [.. data.Select(item => item.Item2)]
            );
            if (
                RelativeChange
                    .Percent(exact)
                    .Then(changes => Spread.Summarize(changes.AsSpan()))
                    .TryGet(out var spread)
            )
            {
                yield return new(what, spread.StandardDeviation);
            }

            if (
                WeightedLeastSquares
                    .Fit(
                        exact.X.AsSpan(),
                        exact.Y.AsSpan(),
                        [.. exact.X.Select(x => 1 / (x * x))],
                        CellEstimates.DescriptiveConfidence
                    )
                    .TryGet(out var line)
            )
            {
                yield return new(
                    $"{what}, taken from a straight line,",
                    100 * line.ResidualStandardDeviation
                );
            }
        }
    }

    private sealed record SpreadOfChanges(string What, double Percent);
}
