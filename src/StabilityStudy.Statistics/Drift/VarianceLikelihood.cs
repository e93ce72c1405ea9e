using System.Buffers;
using System.Runtime.Intrinsics;

namespace StabilityStudy.Statistics.Drift;

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
/// <remarks>
/// A search asks for it some hundred times, so two specimens are computed at a time, in the two lanes of a vector: every processor has them, and the digits are those of one by one.
/// </remarks>
internal sealed class VarianceLikelihood
{
    private const int FixedEffects = 2;

    private readonly ImmutableArray<SpecimenSums> _specimens;
    private readonly SpecimenSums _all;
    private readonly SpecimenLanes _lanes;
    private readonly bool _isRestricted;

    /// <summary>The restricted or full likelihood of the results of specimens.</summary>
    public VarianceLikelihood(ImmutableArray<SpecimenSums> specimens, bool isRestricted)
    {
        foreach (var specimen in specimens)
        {
            _all = SpecimenSums.Add(_all, specimen);
        }

        (_specimens, _lanes, _isRestricted) = (
            specimens,
            SpecimenLanes.Of(specimens),
            isRestricted
        );
    }

    public int SpecimenCount => _specimens.Length;

    /// <summary>The likelihood with its derivative at relative variances.</summary>
    public VarianceLikelihoodPoint At(SymmetricMatrix relative)
    {
        var shares = ArrayPool<Vector128<double>>.Shared.Rent(_lanes.Count.Length);
        var point = At(relative, shares.AsSpan(0, _lanes.Count.Length));
        ArrayPool<Vector128<double>>.Shared.Return(shares);
        return point;
    }

    /// <param name="relative">The relative covariance D.</param>
    /// <param name="shares">Room for 1/|I + MD| of every specimen.</param>
    private VarianceLikelihoodPoint At(SymmetricMatrix relative, Span<Vector128<double>> shares)
    {
        var shrinkage = new Shrinkage(relative);
        var logarithms = 0.0;
        var precisions = default(MatrixSum);
        var squared = default(SquaredSums);
        var (right1, right2) = (default(OrderedSum), default(OrderedSum));
        for (var i = 0; i < shares.Length; i++)
        {
            var moments = _lanes.Moments(i);
            var determinant = shrinkage.Determinant(moments);
            var share = shares[i] = Vector128<double>.One / determinant;
            logarithms = logarithms + Math.Log(determinant[0]) + Math.Log(determinant[1]);
            var precision = shrinkage.Precision(moments, share);
            precisions.Add(precision.A, precision.B, precision.D);
            squared.Add(precision);
            var (first, second) = shrinkage.Times(
                moments,
                share,
                _lanes.First[i],
                _lanes.Second[i]
            );
            right1.Add(first);
            right2.Add(second);
        }

        var information = precisions.Value;
        var covariance = information.Inverted();
        var line = covariance.Times((right1.Value, right2.Value));
        var (pulled, outer) = Residuals(shrinkage, shares, line);
        var leftOfAll = _all.LeftBeside(line);
        var squares =
            _all.Squares
            - (_all.Products.First * line.First)
            - (_all.Products.Second * line.Second)
            - (leftOfAll.First * line.First)
            - (leftOfAll.Second * line.Second)
            - pulled;
        var degrees = _isRestricted ? _all.Count - FixedEffects : _all.Count;
        var gradient = information - ((degrees / squares) * outer);
        return new VarianceLikelihoodPoint(
            logarithms
                + (_isRestricted ? Math.Log(information.Determinant) : 0)
                + (degrees * (1 + Math.Log(2 * Math.PI * squares / degrees))),
            _isRestricted ? gradient - squared.Around(covariance) : gradient,
            line,
            information,
            squares / degrees
        );
    }

    /// <summary>Σ(q − Mβ)′Du, by which the specimens' own lines lessen the residual squares, and Σuu′.</summary>
    private (double Pulled, SymmetricMatrix Outer) Residuals(
        Shrinkage shrinkage,
        ReadOnlySpan<Vector128<double>> shares,
        (double First, double Second) line
    )
    {
        var (line1, line2) = (Vector128.Create(line.First), Vector128.Create(line.Second));
        var pulled = default(OrderedSum);
        var outer = default(MatrixSum);
        for (var i = 0; i < shares.Length; i++)
        {
            var moments = _lanes.Moments(i);
            var left1 = _lanes.First[i] - ((moments.A * line1) + (moments.B * line2));
            var left2 = _lanes.Second[i] - ((moments.B * line1) + (moments.D * line2));
            var (u1, u2) = shrinkage.Times(moments, shares[i], left1, left2);
            var relative = shrinkage.Relative;
            pulled.Add(
                (left1 * ((relative.A * u1) + (relative.B * u2)))
                    + (left2 * ((relative.B * u1) + (relative.D * u2)))
            );
            outer.Add(u1 * u1, u1 * u2, u2 * u2);
        }

        return (pulled.Value, outer.Value);
    }

    /// <summary>What each specimen contributes to the slope at a minimum: the second part of S⁻¹(I + MD)⁻¹(q − Mβ). They add up to zero.</summary>
    public ImmutableArray<double> SlopeContributions(VarianceMinimum minimum)
    {
        var (shrinkage, point) = (new Shrinkage(minimum.Relative), minimum.Point);
        var covariance = point.Information.Inverted();
        var contributions = ImmutableArray.CreateBuilder<double>(_specimens.Length);
        for (var i = 0; i < _specimens.Length; i++)
        {
            var left = _specimens[i].LeftBeside(point.Line);
            var moments = MatrixLanes.OfBoth(_specimens[i].Moments);
            var (first, second) = shrinkage.Times(
                moments,
                Vector128<double>.One / shrinkage.Determinant(moments),
                Vector128.Create(left.First),
                Vector128.Create(left.Second)
            );
            contributions.Add(covariance.Times((first[0], second[0])).Second);
        }

        return contributions.MoveToImmutable();
    }
}
