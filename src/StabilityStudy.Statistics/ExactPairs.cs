using System.Runtime.InteropServices;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics;

/// <summary>
/// Pairs of decimal results as whole numbers on one scale, so that differences, ties and comparisons with limits are
/// decided exactly: 0.3 − 0.1 equals 0.2 here. Estimates use the doubles of <see cref="X"/> and <see cref="Y"/>.
/// </summary>
public sealed class ExactPairs
{
    /// <summary>Most decimals of a result or an allowance.</summary>
    public const int MostDecimals = 9;

    /// <summary>Largest result or allowance; with nine decimals it is still a 64-bit whole number.</summary>
    public const decimal Largest = 900_000_000m;

    private int[]? _byXThenY;
    private double[]? _x;
    private double[]? _y;
    private double[]? _difference;
    private SlopeSelection? _slopes;
    private Estimate<RelativeChanges>? _percent;
    private Estimate<RelativeChanges>? _logRatio;
    private AssociationAtLevel? _association;

    private ExactPairs(ImmutableArray<long> scaledX, ImmutableArray<long> scaledY, int decimals)
    {
        ScaledX = scaledX;
        ScaledY = scaledY;
        Decimals = decimals;
    }

    /// <summary>Number of pairs.</summary>
    public int Count => ScaledX.Length;

    /// <summary>Decimals of the common scale: the value is the whole number divided by 10 to this power.</summary>
    public int Decimals { get; }

    /// <summary>First members of the pairs, as whole numbers on the common scale.</summary>
    public ImmutableArray<long> ScaledX { get; }

    /// <summary>Second members of the pairs, as whole numbers on the common scale.</summary>
    public ImmutableArray<long> ScaledY { get; }

    /// <summary>First members as the nearest doubles, in the unit of the data.</summary>
    public ImmutableArray<double> X => Divided(ref _x, static (x, _) => x);

    /// <summary>Second members as the nearest doubles, in the unit of the data.</summary>
    public ImmutableArray<double> Y => Divided(ref _y, static (_, y) => y);

    /// <summary>y − x, each the nearest double of the exact difference, in the unit of the data.</summary>
    public ImmutableArray<double> Difference => Divided(ref _difference, static (x, y) => y - x);

    /// <summary>The numbers of the pairs from the smallest x up, those of one x from the smallest y up; sorted at the first call.</summary>
    internal ImmutableArray<int> ByXThenY =>
        ImmutableCollectionsMarshal.AsImmutableArray(
            LazyInitializer.EnsureInitialized(ref _byXThenY, Ordered)
        );

    /// <summary>100·(y − x)/x of each pair, see <see cref="RelativeChange.Percent"/>.</summary>
    internal Estimate<RelativeChanges> Percent =>
        LazyInitializer.EnsureInitialized(ref _percent, () => RelativeChange.PercentOf(this));

    /// <summary>100·ln(y/x) of each pair, see <see cref="RelativeChange.LogRatio"/>.</summary>
    internal Estimate<RelativeChanges> LogRatio =>
        LazyInitializer.EnsureInitialized(ref _logRatio, () => RelativeChange.LogRatioOf(this));

    /// <summary>The slopes between all twos of the pairs; prepared at the first call, for every method that ranks them.</summary>
    internal SlopeSelection Slopes =>
        LazyInitializer.EnsureInitialized(ref _slopes, () => new SlopeSelection(this));

    /// <summary>Kendall's rank correlation, see <see cref="KendallRankCorrelation.Compute"/>; that of the level asked for last is remembered.</summary>
    internal Estimate<KendallTau> Association(double confidenceLevel)
    {
        var known = _association;
        if (known is null || known.Level != confidenceLevel)
        {
            known = new(KendallRankCorrelation.Of(this, confidenceLevel), confidenceLevel);
            _association = known;
        }

        return known.Estimate;
    }

    private sealed record AssociationAtLevel(Estimate<KendallTau> Estimate, double Level);

    /// <summary>Puts decimal pairs on one scale; trailing zeros do not matter (2.50 is 2.5).</summary>
    /// <param name="x">First members, in the unit of the data.</param>
    /// <param name="y">Second members, same unit and length.</param>
    /// <exception cref="ArgumentException">The lengths differ, or a value has more than nine decimals or is beyond ±9 × 10⁸.</exception>
    public static ExactPairs Create(ReadOnlySpan<decimal> x, ReadOnlySpan<decimal> y)
    {
        if (x.Length != y.Length)
        {
            throw new ArgumentException("Each first member needs one second member.", nameof(y));
        }

        var decimals = MostDecimalsOf(y, MostDecimalsOf(x, 0, nameof(x)), nameof(y));
        return new ExactPairs(Scale(x, decimals), Scale(y, decimals), decimals);
    }

    /// <summary>Whether all pairs lie on one straight line, decided exactly; true of fewer than three.</summary>
    public bool AreOnOneLine()
    {
        var second = Enumerable
            .Range(0, Count)
            .FirstOrDefault(i => ScaledX[i] != ScaledX[0] || ScaledY[i] != ScaledY[0]);
        if (Count == 0 || second == 0)
        {
            return true;
        }

        Int128 dx = ScaledX[second] - ScaledX[0];
        Int128 dy = ScaledY[second] - ScaledY[0];
        for (var i = 0; i < Count; i++)
        {
            if (dx * (ScaledY[i] - ScaledY[0]) != dy * (ScaledX[i] - ScaledX[0]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The pairs without one of them, on the same scale.</summary>
    /// <param name="index">The pair that is left out, counted from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such pair.</exception>
    public ExactPairs Without(int index) =>
        new(ScaledX.RemoveAt(index), ScaledY.RemoveAt(index), Decimals);

    /// <summary>Whole numbers of the pairs as doubles in the unit of the data, made at the first call.</summary>
    private ImmutableArray<double> Divided(ref double[]? known, Func<long, long, long> of)
    {
        if (known is null)
        {
            var divisor = Math.Pow(10, Decimals);
            var values = new double[Count];
            for (var i = 0; i < values.Length; i++)
            {
                values[i] = of(ScaledX[i], ScaledY[i]) / divisor;
            }

            known = values;
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(known);
    }

    private int[] Ordered()
    {
        var points = new Point[Count];
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = new(ScaledX[i], ScaledY[i], i);
        }

        var byXThenY = new ByXThenYOfPoints();
        MergeSort.Sort(points.AsSpan(), ref byXThenY);
        return Array.ConvertAll(points, point => point.Pair);
    }

    /// <summary>A pair with its number.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Point(long X, long Y, int Pair);

    [StructLayout(LayoutKind.Auto)]
    private readonly struct ByXThenYOfPoints : IMergeOrder<Point>
    {
        public bool LaterFirst(Point earlier, Point later) =>
            later.X < earlier.X || (later.X == earlier.X && later.Y < earlier.Y);

        public void Passed(ReadOnlySpan<Point> earlier, Point later) { }
    }

    private static int MostDecimalsOf(ReadOnlySpan<decimal> values, int atLeast, string parameter)
    {
        var most = atLeast;
        foreach (var value in values)
        {
            if (value is < -Largest or > Largest)
            {
                throw new ArgumentException(
                    "The value is too large to be a laboratory result.",
                    parameter
                );
            }

            // Most values have as many decimals as those before them: then none need be counted.
            most = value.Scale <= most ? most : Math.Max(most, DecimalsOf(value, parameter));
        }

        return most;
    }

    private static int DecimalsOf(decimal value, string parameter)
    {
        for (var decimals = 0; decimals <= MostDecimals; decimals++)
        {
            if (decimal.Round(value, decimals) == value)
            {
                return decimals;
            }
        }

        throw new ArgumentException("The value has more than nine decimals.", parameter);
    }

    private static ImmutableArray<long> Scale(ReadOnlySpan<decimal> values, int decimals)
    {
        var factor = 1m;
        for (var i = 0; i < decimals; i++)
        {
            factor *= 10m;
        }

        var scaled = ImmutableArray.CreateBuilder<long>(values.Length);
        foreach (var value in values)
        {
            scaled.Add(decimal.ToInt64(value * factor));
        }

        return scaled.MoveToImmutable();
    }
}
