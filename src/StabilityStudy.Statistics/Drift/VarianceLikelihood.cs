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

    /// <summary>The sums over the results of two together.</summary>
    public static SpecimenSums Add(SpecimenSums one, SpecimenSums other) =>
        new(
            one.Count + other.Count,
            one.Moments + other.Moments,
            (
                one.Products.First + other.Products.First,
                one.Products.Second + other.Products.Second
            ),
            one.Squares + other.Squares
        );

    /// <summary>q − Mβ: the products with what a line leaves of the results.</summary>
    public (double First, double Second) LeftBeside((double First, double Second) line)
    {
        var fitted = Moments.Times(line);
        return (Products.First - fitted.First, Products.Second - fitted.Second);
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

    private readonly SpecimenSums _all = specimens.Aggregate(
        default(SpecimenSums),
        SpecimenSums.Add
    );

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
        var pulled = 0.0;
        var outer = default(SymmetricMatrix);
        var between = default(SquaredSums);
        for (var i = 0; i < specimens.Length; i++)
        {
            var left = specimens[i].LeftBeside(line);
            ref readonly var shrinkage = ref shrinkages[i];
            var residual = shrinkage.Times(left);
            var (first, second) = relative.Times(residual);
            pulled += (left.First * first) + (left.Second * second);
            outer += SymmetricMatrix.Square(residual);
            between.Add(shrinkage.Precision);
        }

        var leftOfAll = _all.LeftBeside(line);
        var squares =
            _all.Squares
            - (_all.Products.First * line.First)
            - (_all.Products.Second * line.Second)
            - (leftOfAll.First * line.First)
            - (leftOfAll.Second * line.Second)
            - pulled;
        var degrees = isRestricted ? _all.Count - FixedEffects : _all.Count;
        var gradient = information - ((degrees / squares) * outer);
        return new VarianceLikelihoodPoint(
            determinants
                + (isRestricted ? Math.Log(information.Determinant) : 0)
                + (degrees * (1 + Math.Log(2 * Math.PI * squares / degrees))),
            isRestricted ? gradient - between.Around(covariance) : gradient,
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
                covariance
                    .Times(
                        Shrinkage
                            .Of(specimen.Moments, relative)
                            .Times(specimen.LeftBeside(point.Line))
                    )
                    .Second
            ),
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
            var ofMoments = moments.Determinant;

            // |I + MD| as a sum of terms that are never negative where D is a covariance.
            var determinant =
                1
                + (moments.A * relative.A)
                + (2 * moments.B * relative.B)
                + (moments.D * relative.D)
                + (ofMoments * relative.Determinant);
            var share = 1 / determinant;
            return new(
                share * (1 + (moments.B * relative.B) + (moments.D * relative.D)),
                -share * ((moments.A * relative.B) + (moments.B * relative.D)),
                -share * ((moments.B * relative.A) + (moments.D * relative.B)),
                share * (1 + (moments.A * relative.A) + (moments.B * relative.B)),
                determinant,
                // (I + MD)⁻¹M = (M + |M|·adj D)/|I + MD|
                share
                    * new SymmetricMatrix(
                        moments.A + (ofMoments * relative.D),
                        moments.B - (ofMoments * relative.B),
                        moments.D + (ofMoments * relative.A)
                    )
            );
        }

        public (double First, double Second) Times((double First, double Second) vector) =>
            (
                (K11 * vector.First) + (K12 * vector.Second),
                (K21 * vector.First) + (K22 * vector.Second)
            );
    }

    /// <summary>Sums of the products of the elements of P, from which ΣPCP follows for any C.</summary>
    [StructLayout(LayoutKind.Auto)]
    private struct SquaredSums
    {
        private double _aa;
        private double _ab;
        private double _bb;
        private double _ad;
        private double _bd;
        private double _dd;

        public void Add(SymmetricMatrix matrix)
        {
            _aa += matrix.A * matrix.A;
            _ab += matrix.A * matrix.B;
            _bb += matrix.B * matrix.B;
            _ad += matrix.A * matrix.D;
            _bd += matrix.B * matrix.D;
            _dd += matrix.D * matrix.D;
        }

        public readonly SymmetricMatrix Around(SymmetricMatrix middle) =>
            new(
                (_aa * middle.A) + (2 * _ab * middle.B) + (_bb * middle.D),
                (_ab * middle.A) + ((_ad + _bb) * middle.B) + (_bd * middle.D),
                (_bb * middle.A) + (2 * _bd * middle.B) + (_dd * middle.D)
            );
    }
}
