using System.Buffers;
using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Drift;

/// <summary>What the likelihood needs of one specimen: sums over its results, with z = (1, g).</summary>
/// <param name="Count">Number of results.</param>
/// <param name="Moments">M = Σzz′.</param>
/// <param name="Products">q = Σzy.</param>
/// <param name="Squares">Σy².</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct SpecimenSums(
    int Count,
    SymmetricMatrix Moments,
    (double First, double Second) Products,
    double Squares
)
{
    /// <summary>The sums of a specimen with g in units of <paramref name="scale"/> and y from <paramref name="center"/> on.</summary>
    public static SpecimenSums Of(SpecimenResponses specimen, double scale, double center)
    {
        var (sumG, sumGG, sumY, sumGY, sumYY) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < specimen.Growth.Length; i++)
        {
            var g = specimen.Growth[i] / scale;
            var y = specimen.Response[i] - center;
            sumG += g;
            sumGG += g * g;
            sumY += y;
            sumGY += g * y;
            sumYY += y * y;
        }

        return new(
            specimen.Growth.Length,
            new(specimen.Growth.Length, sumG, sumGG),
            (sumY, sumGY),
            sumYY
        );
    }
}

/// <summary>The likelihood at given relative variances, with the residual variance and the fixed line at their best.</summary>
/// <param name="Deviance">−2 ln L, constants included.</param>
/// <param name="Gradient">Derivative of the deviance by the relative covariance matrix D.</param>
/// <param name="Line">Mean intercept and slope.</param>
/// <param name="Information">S = ΣZ′V⁻¹Z, in units of 1/σ²; its inverse times σ² is the covariance of the line.</param>
/// <param name="ResidualVariance">σ².</param>
internal sealed record VarianceLikelihoodPoint(
    double Deviance,
    SymmetricMatrix Gradient,
    (double First, double Second) Line,
    SymmetricMatrix Information,
    double ResidualVariance
);

/// <summary>
/// Restricted or full likelihood of y = Z(β + b) + e with b ~ N(0, σ²D) by specimen and e ~ N(0, σ²), profiled over β and σ².
/// Since fixed and random effects have the same columns, sums of 2×2 matrices are all it takes: with P = (I + MD)⁻¹M,
/// S = ΣP, u = (I + MD)⁻¹(q − Mβ) and r² the weighted residual squares,
/// deviance = Σ ln|I + MD| + [ln|S|] + ν(1 + ln(2πr²/ν)), and its derivative by D is ΣP − [ΣP S⁻¹ P] − (ν/r²)Σuu′;
/// ν = N − 2 with the terms in brackets (restricted), ν = N without (full).
/// </summary>
internal sealed class VarianceLikelihood(ImmutableArray<SpecimenSums> specimens, bool isRestricted)
{
    private const int FixedEffects = 2;

    private readonly int _results = specimens.Sum(item => item.Count);

    public int SpecimenCount => specimens.Length;

    /// <summary>The likelihood with its derivative at relative variances.</summary>
    public VarianceLikelihoodPoint At(SymmetricMatrix relative)
    {
        var shrinkages = ArrayPool<Shrinkage>.Shared.Rent(specimens.Length);
        var point = At(relative, shrinkages.AsSpan(0, specimens.Length));
        ArrayPool<Shrinkage>.Shared.Return(shrinkages);
        return point;
    }

    private VarianceLikelihoodPoint At(SymmetricMatrix relative, Span<Shrinkage> shrinkages)
    {
        var determinants = 0.0;
        var information = default(SymmetricMatrix);
        var right = (First: 0.0, Second: 0.0);
        for (var i = 0; i < specimens.Length; i++)
        {
            var specimen = specimens[i];
            var shrinkage = shrinkages[i] = Shrinkage.Of(specimen.Moments, relative);
            determinants += Math.Log(shrinkage.Determinant);
            information += shrinkage.Precision;
            var weighted = shrinkage.Times(specimen.Products);
            right = (right.First + weighted.First, right.Second + weighted.Second);
        }

        var covariance = information.Inverted();
        var line = covariance.Times(right);
        var squares = 0.0;
        var outer = default(SymmetricMatrix);
        var between = default(SymmetricMatrix);
        for (var i = 0; i < specimens.Length; i++)
        {
            var (specimen, shrinkage) = (specimens[i], shrinkages[i]);
            var fitted = specimen.Moments.Times(line);
            var left = (
                First: specimen.Products.First - fitted.First,
                Second: specimen.Products.Second - fitted.Second
            );
            var residual = shrinkage.Times(left);
            var pulled = relative.Times(residual);
            squares +=
                specimen.Squares
                - (specimen.Products.First * line.First)
                - (specimen.Products.Second * line.Second)
                - (left.First * line.First)
                - (left.Second * line.Second)
                - (left.First * pulled.First)
                - (left.Second * pulled.Second);
            outer += SymmetricMatrix.Square(residual);
            between += shrinkage.Precision.Around(covariance);
        }

        var degrees = isRestricted ? _results - FixedEffects : _results;
        var gradient = information - ((degrees / squares) * outer);
        return new VarianceLikelihoodPoint(
            determinants
                + (isRestricted ? Math.Log(information.Determinant) : 0)
                + (degrees * (1 + Math.Log(2 * Math.PI * squares / degrees))),
            isRestricted ? gradient - between : gradient,
            line,
            information,
            squares / degrees
        );
    }

    /// <summary>What each specimen contributes to the slope at a minimum: the second part of S⁻¹(I + MD)⁻¹(q − Mβ). They add up to zero.</summary>
    public ImmutableArray<double> SlopeContributions(VarianceMinimum minimum)
    {
        var (relative, point) = (minimum.Relative, minimum.Point);
        var covariance = point.Information.Inverted();
        return
        [
            .. specimens.Select(specimen =>
            {
                var fitted = specimen.Moments.Times(point.Line);
                return covariance
                    .Times(
                        Shrinkage
                            .Of(specimen.Moments, relative)
                            .Times(
                                (
                                    specimen.Products.First - fitted.First,
                                    specimen.Products.Second - fitted.Second
                                )
                            )
                    )
                    .Second;
            }),
        ];
    }

    /// <summary>K = (I + MD)⁻¹ of a specimen.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Shrinkage(
        double K11,
        double K12,
        double K21,
        double K22,
        double Determinant,
        SymmetricMatrix Precision
    )
    {
        public static Shrinkage Of(SymmetricMatrix moments, SymmetricMatrix relative)
        {
            var a = 1 + (moments.A * relative.A) + (moments.B * relative.B);
            var b = (moments.A * relative.B) + (moments.B * relative.D);
            var c = (moments.B * relative.A) + (moments.D * relative.B);
            var d = 1 + (moments.B * relative.B) + (moments.D * relative.D);

            // |I + MD| as a sum of terms that are never negative where D is a covariance.
            var determinant =
                1
                + (moments.A * relative.A)
                + (2 * moments.B * relative.B)
                + (moments.D * relative.D)
                + (moments.Determinant * relative.Determinant);
            var (k11, k12, k21, k22) = (
                d / determinant,
                -b / determinant,
                -c / determinant,
                a / determinant
            );
            return new(
                k11,
                k12,
                k21,
                k22,
                determinant,
                new(
                    (k11 * moments.A) + (k12 * moments.B),
                    (k11 * moments.B) + (k12 * moments.D),
                    (k21 * moments.B) + (k22 * moments.D)
                )
            );
        }

        public (double First, double Second) Times((double First, double Second) vector) =>
            (
                (K11 * vector.First) + (K12 * vector.Second),
                (K21 * vector.First) + (K22 * vector.Second)
            );
    }
}
