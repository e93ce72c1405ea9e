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
    internal static readonly QueryKind SpreadBelowNoise = Kinds.Add("spread-below-noise", QueryRank.Specimen, "the changes spread far less than the imprecision of the test alone would make them", "compare with the own record of the instrument", point: "The changes spread too little.");
    // csharpier-ignore-end

    /// <summary>Fewer changes than this vary too much in their own SD.</summary>
    private const int FewestForSpread = 10;

    /// <summary>Ten normal changes have an SD below this share of the true one with a probability under 0.01.</summary>
    private const double LeastShareOfNoise = 0.4;

    /// <summary>SD in percent of a difference that no coagulation test falls below, whatever is stated or not: that of two results.</summary>
    private static readonly double s_leastNoisePercent =
        Math.Sqrt(2) * ChanceAgreement.LeastCvPercent;

    /// <summary>One query a cell, of the smallest spread.</summary>
    public static IEnumerable<DataQuery> Of(Sequence sequence, StudyProtocol protocol)
    {
        var analyte = protocol.Analytes.Single(item => item.Id == sequence.Analyte);
        var before = ImmutableArray<PairRecord>.Empty;
        foreach (var cell in sequence.Cells)
        {
            var pairs = cell.Pairs.Keep(pair => pair.IsOfNumbers);
            var (stated, noise) = cell.Estimates.NoisePercent is { } own
                ? ("the stated between-run imprecision alone", own)
                : ("the least imprecision of such a test", s_leastNoisePercent);
            var visible = Math.Pow(10, -analyte.Decimals) * 100 / noise;
            var smallest = SpreadsOf(pairs, cell.Estimates, visible)
                .Concat(SpreadsSince(before, pairs, visible))
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

    /// <summary>From the baseline, as the cell's estimates have it.</summary>
    private static IEnumerable<SpreadOfChanges> SpreadsOf(
        ImmutableArray<PairRecord> pairs,
        CellEstimates estimates,
        double visible
    ) =>
        IsVisible(pairs.Map(pair => pair.Values().Baseline).AsSpan(), visible)
            ? Spreads(
                "the changes",
                estimates.SpreadPercent,
                estimates.Further.WeightedLeastSquares
            )
            : [];

    /// <summary>From the time point before, of the specimens that have both.</summary>
    private static IEnumerable<SpreadOfChanges> SpreadsSince(
        ImmutableArray<PairRecord> before,
        ImmutableArray<PairRecord> pairs,
        double visible
    )
    {
        var places = new Dictionary<string, int>(before.Length, StringComparer.Ordinal);
        for (var i = 0; i < before.Length; i++)
        {
            places.TryAdd(before[i].Specimen, i);
        }

        var (first, second) = (new decimal[pairs.Length], new decimal[pairs.Length]);
        var both = 0;
        foreach (var pair in pairs)
        {
            if (places.TryGetValue(pair.Specimen, out var place))
            {
                first[both] = before[place].Values().Delayed;
                second[both] = pair.Values().Delayed;
                both++;
            }
        }

        if (!IsVisible(first.AsSpan(0, both), visible))
        {
            return [];
        }

        var exact = ExactPairs.Create(first.AsSpan(0, both), second.AsSpan(0, both));
        return Spreads(
            "the changes since the time point before",
            RelativeChange.Percent(exact).Then(changes => Spread.Summarize(changes.AsSpan())),
            FurtherEstimates.ByBaseline(exact, CellEstimates.DescriptiveConfidence)
        );
    }

    /// <summary>Whether there are enough results, and so large that the noise shows in the last reported digit.</summary>
    private static bool IsVisible(ReadOnlySpan<decimal> first, double smallest)
    {
        var sum = 0.0;
        foreach (var value in first)
        {
            if (value <= 0)
            {
                return false;
            }

            sum += (double)value;
        }

        return first.Length >= FewestForSpread && sum / first.Length >= smallest;
    }

    private static IEnumerable<SpreadOfChanges> Spreads(
        string what,
        Estimate<SpreadSummary> spread,
        Estimate<LineFit> line
    )
    {
        if (spread.TryGet(out var changes))
        {
            yield return new(what, changes.StandardDeviation);
        }

        if (line.TryGet(out var fit))
        {
            yield return new(
                $"{what}, taken from a straight line,",
                100 * fit.ResidualStandardDeviation
            );
        }
    }

    private sealed record SpreadOfChanges(string What, double Percent);
}
