using System.Globalization;
using StabilityStudy.Statistics.Distributions;

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// The slopes between all twos of pairs in exact order, with the ranks that Passing and Bablok select. Every rank is shifted by the number of
/// slopes below −1; a rank beyond the last is absent.
/// </summary>
internal sealed class RankedSlopes
{
    /// <summary>All slopes are kept in memory, 16 bytes each: 0.2 GB at this size.</summary>
    private const int MostPairs = 5000;

    private readonly List<ExactSlope> _sorted;
    private readonly int _lowerRank;

    private RankedSlopes(
        List<ExactSlope> sorted,
        int belowMinusOne,
        int lowerRank,
        KendallTau association
    )
    {
        _sorted = sorted;
        _lowerRank = lowerRank;
        BelowMinusOne = belowMinusOne;
        Association = association;
    }

    /// <summary>N, the number of ranked slopes.</summary>
    public int Count => _sorted.Count;

    /// <summary>K, the number of ranked slopes below −1.</summary>
    public int BelowMinusOne { get; }

    /// <summary>The rank correlation that shows that y rises with x.</summary>
    public KendallTau Association { get; }

    /// <summary>Lower end of the interval, rank M₁.</summary>
    public ExactSlope? Lower => AtShifted(_lowerRank);

    /// <summary>The slope in the middle when N is odd, else the lower of the two.</summary>
    public ExactSlope? LowerMiddle => AtShifted((Count + 1) / 2);

    /// <summary>The slope in the middle when N is odd, else the upper of the two.</summary>
    public ExactSlope? UpperMiddle => AtShifted((Count / 2) + 1);

    /// <summary>Upper end of the interval, rank N − M₁ + 1.</summary>
    public ExactSlope? Upper => AtShifted(Count - _lowerRank + 1);

    /// <summary>Ranks the slopes, or says why the method does not apply; the order of the checks is that of <see cref="PassingBablok.Fit"/>.</summary>
    public static Estimate<RankedSlopes> Of(ExactPairs pairs, double confidenceLevel)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        Require.InsideUnitInterval(confidenceLevel, nameof(confidenceLevel));
        if (pairs.Count > MostPairs)
        {
            return new Estimate<RankedSlopes>(null, PairsRefusal.TooManySlopes(MostPairs), []);
        }

        var association = KendallRankCorrelation.Compute(pairs, confidenceLevel);
        if (!association.TryGet(out var tau))
        {
            return new Estimate<RankedSlopes>(null, association.NotComputable, []);
        }

        if (tau.Lower <= 0)
        {
            return Estimate.Refused<RankedSlopes>(
                AssumptionCode.NoPositiveAssociation,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The method presumes that y rises with x; the interval of Kendall's tau-b, {tau.Lower:F3} to {tau.Upper:F3}, does not show that it does."
                )
            );
        }

        var sorted = Sorted(pairs);
        var rank = LowerRank(pairs.Count, sorted.Count, confidenceLevel);
        return rank < 1
            ? Estimate.Refused<RankedSlopes>(
                AssumptionCode.NoIntervalAtThisSize,
                "So few slopes give no interval at this confidence level."
            )
            : Estimate.Of(
                new RankedSlopes(sorted, sorted.Count(slope => slope.IsBelowMinusOne), rank, tau)
            );
    }

    private static List<ExactSlope> Sorted(ExactPairs pairs)
    {
        var n = pairs.Count;
        var x = pairs.ScaledX.AsSpan();
        var y = pairs.ScaledY.AsSpan();
        var slopes = new List<ExactSlope>(n * (n - 1) / 2);
        for (var i = 0; i < n; i++)
        {
            for (var j = i + 1; j < n; j++)
            {
                if (ExactSlope.Between(x[j] - x[i], y[j] - y[i]) is { } slope)
                {
                    slopes.Add(slope);
                }
            }
        }

        slopes.Sort(ExactSlope.Compare);
        return slopes;
    }

    /// <summary>M₁ = (N − C)/2 rounded half up, C = z·√(n(n − 1)(2n + 5)/18); below 1 when there is no interval.</summary>
    private static int LowerRank(int pairCount, int slopeCount, double confidenceLevel)
    {
        double n = pairCount;
        var halfWidth =
            Normal.Quantile((1 + confidenceLevel) / 2)
            * Math.Sqrt(n * (n - 1) * ((2 * n) + 5) / 18);
        return (int)Math.Floor(((slopeCount - halfWidth) / 2) + 0.5);
    }

    private ExactSlope? AtShifted(int rank) =>
        rank + BelowMinusOne <= Count ? _sorted[rank + BelowMinusOne - 1] : null;
}
