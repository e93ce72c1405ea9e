using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Regression;

/// <summary>
/// The slope between two pairs as a fraction of whole numbers. Run is never negative; a vertical slope is 1/0 and greater than
/// every other. Differences of scaled results stay below 2·10¹⁸, so a product of two fits into 128 bits.
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

    /// <summary>The denominator; 0 for a vertical slope.</summary>
    public long Run => _run;

    /// <summary>Whether the slope is vertical.</summary>
    public bool IsInfinite => _run == 0;

    /// <summary>Whether the slope is below −1.</summary>
    public bool IsBelowMinusOne => _rise < -_run;

    /// <summary>The nearest double, positive infinity for a vertical slope.</summary>
    public double Value => IsInfinite ? double.PositiveInfinity : (double)_rise / _run;

    /// <summary>The slope between two pairs; absent for 0/0 and for a slope of exactly −1, which have no place in the ranking.</summary>
    public static ExactSlope? Between(long deltaX, long deltaY)
    {
        if (deltaX == 0)
        {
            return deltaY == 0 ? null : new ExactSlope(1, 0);
        }

        if (deltaY == -deltaX)
        {
            return null;
        }

        return Finite(deltaX, deltaY);
    }

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
