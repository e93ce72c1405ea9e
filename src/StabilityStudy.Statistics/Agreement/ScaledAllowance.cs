namespace StabilityStudy.Statistics.Agreement;

/// <summary>
/// An allowance as a whole number of a small part of the scaled unit of some pairs, so that it can be compared with their
/// differences exactly. The part is 10⁻¹¹, or as many times that as all numbers of the allowance allow: with 10 % it is a tenth, and products of usual results fit 64 bits.
/// With allowances and results of at most 9 × 10⁸ and nine decimals every product stays below 10³⁸ and fits 128 bits.
/// </summary>
internal sealed class ScaledAllowance
{
    private const decimal PartScale = 1_000_000_000m;

    /// <summary>Parts are scaled by 10⁹, and a percentage by another 10².</summary>
    private static readonly Int128 s_smallest = 100_000_000_000;

    private readonly Int128 _unit;
    private readonly Int128? _absolute;
    private readonly Int128? _percent;

    // Up to this distance from zero, two results have all products that are doubles; usual ones have.
    private readonly long _usual;

    /// <summary>Scales the allowance for pairs of the given number of decimals.</summary>
    public ScaledAllowance(Allowance allowance, int decimals)
    {
        var hundredfold = (Int128)100;
        for (var i = 0; i < decimals; i++)
        {
            hundredfold *= 10;
        }

        var absolute = (Int128?)(allowance.Absolute * PartScale) * hundredfold;
        var percent = (Int128?)(allowance.Percent * PartScale);
        var common = ExactQuotient.CommonDivisor(
            s_smallest,
            ExactQuotient.CommonDivisor(absolute ?? 0, percent ?? 0)
        );
        (_unit, _absolute, _percent) = (s_smallest / common, absolute / common, percent / common);
        _usual =
            _absolute > ExactQuotient.LargestExact
                ? 0
                : (long)(ExactQuotient.LargestExact / Int128.Max(2 * _unit, _percent ?? 0));
    }

    /// <summary>|y − x| is at most the allowance.</summary>
    public bool Allows(long x, long y) =>
        AreUsual(x, y)
            ? Math.Abs(y - x) * (long)_unit <= OfUsual(x)
            : Int128.Abs((Int128)y - x) * _unit <= At(x);

    /// <summary>(y − x) divided by the allowance.</summary>
    /// <exception cref="ArgumentException">The allowance is not above zero.</exception>
    public double Share(long x, long y)
    {
        if (AreUsual(x, y) && OfUsual(x) is > 0 and var usual)
        {
            return (double)((y - x) * (long)_unit) / usual;
        }

        var allowed = At(x);
        return allowed > 0
            ? ExactQuotient.Of(((Int128)y - x) * _unit, allowed)
            : throw new ArgumentException(
                "A percentage of a first member that is not above zero allows nothing.",
                nameof(x)
            );
    }

    private bool AreUsual(long x, long y) => Math.Abs(x) <= _usual && Math.Abs(y) <= _usual;

    private long OfUsual(long x)
    {
        var byPercent = (long)(_percent ?? 0) * x;
        return _absolute is { } amount && !(_percent is not null && byPercent > (long)amount)
            ? (long)amount
            : byPercent;
    }

    private Int128 At(long x)
    {
        var byPercent = _percent * x;
        return _absolute is { } amount && !(byPercent > amount) ? amount : byPercent ?? 0;
    }
}
