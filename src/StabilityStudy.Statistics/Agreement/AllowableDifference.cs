namespace StabilityStudy.Statistics.Agreement;

/// <summary>Compares the difference y − x of each pair with an allowance A(x) = max(absolute, percent·x/100), decided exactly.</summary>
/// <remarks>
/// A pair is within when |y − x| ≤ A(x), the boundary included. Both sides are brought to whole numbers and
/// compared by cross-multiplication in 128 bits: in binary fractions 0.3 − 0.1 is more than 0.2, and a pair exactly on the limit would be outside.
/// A first member of zero or below makes the percentage part zero or negative, so that the amount alone can bring the pair within.
/// Smallest n: 0. Assumptions: none; this is a definition, not an estimate.
/// </remarks>
public static class AllowableDifference
{
    /// <summary>Judges every pair, in the order of the pairs.</summary>
    public static ImmutableArray<AllowanceVerdict> Judge(ExactPairs pairs, Allowance allowance)
    {
        var scaled = new ScaledAllowance(allowance, pairs.Decimals);
        var verdicts = ImmutableArray.CreateBuilder<AllowanceVerdict>(pairs.Count);
        for (var i = 0; i < pairs.Count; i++)
        {
            verdicts.Add(
                scaled.Allows(pairs.ScaledX[i], pairs.ScaledY[i])
                    ? AllowanceVerdict.Within
                    : AllowanceVerdict.Outside
            );
        }

        return verdicts.MoveToImmutable();
    }

    /// <summary>Judges one pair.</summary>
    /// <param name="x">First member, in the unit of the data.</param>
    /// <param name="y">Second member, same unit.</param>
    /// <param name="allowance">The allowance, its amount in the same unit.</param>
    /// <exception cref="ArgumentException">A member has more than nine decimals or is beyond ±9 × 10⁸.</exception>
    public static AllowanceVerdict Judge(decimal x, decimal y, Allowance allowance) =>
        Judge(ExactPairs.Create([x], [y]), allowance)[0];

    /// <summary>
    /// Share of the allowance that each difference uses, u = (y − x)/A(x), signed and without unit: 1 and −1 are the limits.
    /// Each is a double of the exact quotient, the same for the same pair on any decimal scale.
    /// </summary>
    /// <exception cref="ArgumentException">The allowance is a percentage only and a first member is not above zero.</exception>
    public static ImmutableArray<double> Shares(ExactPairs pairs, Allowance allowance)
    {
        var scaled = new ScaledAllowance(allowance, pairs.Decimals);
        var shares = ImmutableArray.CreateBuilder<double>(pairs.Count);
        for (var i = 0; i < pairs.Count; i++)
        {
            shares.Add(scaled.Share(pairs.ScaledX[i], pairs.ScaledY[i]));
        }

        return shares.MoveToImmutable();
    }
}
