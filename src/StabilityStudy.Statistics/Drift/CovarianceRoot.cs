using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Drift;

/// <summary>The lower triangle Λ of a covariance D = ΛΛ′ of level and slope.</summary>
/// <param name="L11">Root of the variance that comes first.</param>
/// <param name="L21">What the other shares with it.</param>
/// <param name="L22">What the other has alone.</param>
/// <param name="SlopeFirst">Whether the slope comes first.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct CovarianceRoot(double L11, double L21, double L22, bool SlopeFirst)
{
    /// <summary>D = ΛΛ′.</summary>
    public SymmetricMatrix Squared
    {
        get
        {
            var (first, second) = (L11 * L11, (L21 * L21) + (L22 * L22));
            return SlopeFirst ? new(second, L11 * L21, first) : new(first, L11 * L21, second);
        }
    }

    /// <summary>One of the three numbers.</summary>
    public double this[int index] =>
        index switch
        {
            0 => L11,
            1 => L21,
            _ => L22,
        };

    /// <summary>The triangle of a covariance; what rounding took below zero is zero.</summary>
    public static CovarianceRoot RootOf(SymmetricMatrix matrix, bool slopeFirst)
    {
        var (first, last) = slopeFirst ? (matrix.D, matrix.A) : (matrix.A, matrix.D);
        var root = Math.Sqrt(Math.Max(first, 0));
        var between = root > 0 ? matrix.B / root : 0;
        return new(root, between, Math.Sqrt(Math.Max(last - (between * between), 0)), slopeFirst);
    }

    /// <summary>2GΛ, with G the derivative by the covariance.</summary>
    public double[] Gradient(SymmetricMatrix derivative)
    {
        var (first, last) = SlopeFirst
            ? (derivative.D, derivative.A)
            : (derivative.A, derivative.D);
        return
        [
            2 * ((first * L11) + (derivative.B * L21)),
            2 * ((derivative.B * L11) + (last * L21)),
            2 * last * L22,
        ];
    }

    /// <summary>The same with another number in one place.</summary>
    public CovarianceRoot With(int index, double value) =>
        index switch
        {
            0 => this with { L11 = value },
            1 => this with { L21 = value },
            _ => this with { L22 = value },
        };
}
