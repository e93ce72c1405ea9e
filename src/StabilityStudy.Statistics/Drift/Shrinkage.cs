using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace StabilityStudy.Statistics.Drift;

/// <summary>(I + MD)⁻¹ of specimens, by the reciprocal of the determinant, which is their share.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct Shrinkage(SymmetricMatrix relative)
{
    public readonly MatrixLanes Relative = MatrixLanes.OfBoth(relative);
    private readonly Vector128<double> _determinant = Vector128.Create(relative.Determinant);

    /// <summary>|I + MD| as a sum of terms that are never negative where D is a covariance.</summary>
    public Vector128<double> Determinant(MatrixLanes moments) =>
        Vector128<double>.One
        + (moments.A * Relative.A)
        + (2 * (moments.B * Relative.B))
        + (moments.D * Relative.D)
        + (moments.Determinant * _determinant);

    /// <summary>(I + MD)⁻¹M = (M + |M|·adj D)/|I + MD|.</summary>
    public MatrixLanes Precision(MatrixLanes moments, Vector128<double> share)
    {
        var ofMoments = moments.Determinant;
        return new(
            share * (moments.A + (ofMoments * Relative.D)),
            share * (moments.B - (ofMoments * Relative.B)),
            share * (moments.D + (ofMoments * Relative.A))
        );
    }

    /// <summary>(I + MD)⁻¹ times a vector of each specimen.</summary>
    public (Vector128<double> First, Vector128<double> Second) Times(
        MatrixLanes moments,
        Vector128<double> share,
        Vector128<double> first,
        Vector128<double> second
    )
    {
        var (a, b, d) = (Relative.A, Relative.B, Relative.D);
        var k11 = share * (Vector128<double>.One + (moments.B * b) + (moments.D * d));
        var k12 = -share * ((moments.A * b) + (moments.B * d));
        var k21 = -share * ((moments.B * a) + (moments.D * b));
        var k22 = share * (Vector128<double>.One + (moments.A * a) + (moments.B * b));
        return ((k11 * first) + (k12 * second), (k21 * first) + (k22 * second));
    }
}
