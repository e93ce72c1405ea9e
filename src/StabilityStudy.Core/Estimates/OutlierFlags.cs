using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Outliers;

namespace StabilityStudy.Core.Estimates;

/// <summary>Outliers are flagged and stay in every figure.</summary>
internal static class OutlierFlags
{
    /// <summary>The test looks for at most one outlier in ten pairs.</summary>
    private const int PairsPerOutlier = 10;

    /// <summary>And for at most ten, as in the example of Rosner (1983); more would cost time in proportion and tell of a skewed sample, not of outliers.</summary>
    private const int MostOutliers = 10;

    /// <summary>Tests the percent changes of a cell.</summary>
    public static Estimate<ExtremeStudentizedDeviate> Find(ImmutableArray<double> percentChanges) =>
        GeneralizedExtremeStudentizedDeviate.Find(
            percentChanges.AsSpan(),
            Math.Clamp(percentChanges.Length / PairsPerOutlier, 1, MostOutliers),
            CellEstimates.OutlierSignificance
        );

    /// <summary>The pairs with the flag set on those that the test names.</summary>
    public static ImmutableArray<PairRecord> Mark(ImmutableArray<PairRecord> pairs)
    {
        var (compared, exact) = CellData.NumbersOf(pairs);
        if (
            !RelativeChange.Percent(exact).TryGet(out var relative)
            || !Find(relative.Values).TryGet(out var found)
        )
        {
            return pairs;
        }

        var flagged = found.OutlierIndices.Select(index => compared[index].Specimen).ToHashSet();
        return pairs.Map(pair =>
            pair.Status == PairStatus.Compared && flagged.Contains(pair.Specimen)
                ? pair with
                {
                    IsOutlier = true,
                }
                : pair
        );
    }
}
