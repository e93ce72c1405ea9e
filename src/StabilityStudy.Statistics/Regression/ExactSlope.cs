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

    private bool IsNarrow => unchecked(_rise == (int)_rise && _run == (int)_run);
}
