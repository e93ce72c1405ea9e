using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// The slope between two pairs of different x as a fraction of whole numbers, its run above zero. Differences of scaled results stay below 2·10¹⁸, so a product of two fits into 128 bits.
/// </summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct ExactSlope
{
    private readonly long _rise;
    private readonly long _run;

    private ExactSlope(long rise, long run)
    {
        _rise = rise;
        _run = run;
    }

    /// <summary>The numerator.</summary>
    public long Rise => _rise;

    /// <summary>The denominator, above zero.</summary>
    public long Run => _run;

    /// <summary>The nearest double.</summary>
    public double Value => (double)_rise / _run;

    /// <summary>The slope between two pairs of different x, whatever its value.</summary>
    public static ExactSlope Finite(long deltaX, long deltaY) =>
        deltaX > 0 ? new ExactSlope(deltaY, deltaX) : new ExactSlope(-deltaY, -deltaX);

    /// <summary>
    /// Orders by the exact value; equal fractions such as 1/2 and 2/4 compare as 0. Numerators and denominators within 32 bits, which is every
    /// usual laboratory result, have exact products in 64 bits, several times faster.
    /// </summary>
    public static int Compare(ExactSlope first, ExactSlope second) =>
        first.IsNarrow && second.IsNarrow
            ? (first._rise * second._run).CompareTo(second._rise * first._run)
            : ((Int128)first._rise * second._run).CompareTo((Int128)second._rise * first._run);

    /// <summary>Slopes in ascending order, those that are equal in any.</summary>
    public static ExactSlope[] InOrder(List<ExactSlope> slopes)
    {
        var ordered = slopes.ToArray();
        var order = new Ascending();
        MergeSort.Sort(ordered.AsSpan(), ref order);
        return ordered;
    }

    /// <summary>Slopes in ascending order as doubles, with what belongs to each. Those below another slope stand before it; those with the same double follow each other in any order.</summary>
    /// <remarks>
    /// Numerators and denominators of up to 52 bits are doubles, and a quotient is rounded to the nearest one, which never turns an order round: then the doubles are sorted, which is several times faster than comparing fractions.
    /// </remarks>
    public static (double[] Slopes, T[] Items) InOrder<T>(List<(ExactSlope Slope, T Item)> slopes)
    {
        if (!slopes.TrueForAll(slope => slope.Slope.IsOfDoubles))
        {
            slopes.Sort((a, b) => Compare(a.Slope, b.Slope));
            return (
                [.. slopes.Select(slope => slope.Slope.Value)],
                [.. slopes.Select(slope => slope.Item)]
            );
        }

        double[] values = [.. slopes.Select(slope => slope.Slope.Value)];
        T[] items = [.. slopes.Select(slope => slope.Item)];
        Array.Sort(values, items);
        return (values, items);
    }

    private bool IsOfDoubles => Math.Abs(_rise) <= 1L << 52 && _run <= 1L << 52;

    private bool IsNarrow => unchecked(_rise == (int)_rise && _run == (int)_run);

    [StructLayout(LayoutKind.Auto)]
    private readonly struct Ascending : IMergeOrder<ExactSlope>
    {
        public bool LaterFirst(ExactSlope earlier, ExactSlope later) => Compare(later, earlier) < 0;

        public void Passed(ReadOnlySpan<ExactSlope> earlier, ExactSlope later) { }
    }
}
