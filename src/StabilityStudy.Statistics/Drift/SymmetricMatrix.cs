using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Drift;

/// <summary>A symmetric 2×2 matrix.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct SymmetricMatrix(double A, double B, double D)
{
    public double Determinant => (A * D) - (B * B);

    public SymmetricMatrix Inverted() => new(D / Determinant, -B / Determinant, A / Determinant);

    public static SymmetricMatrix operator +(SymmetricMatrix left, SymmetricMatrix right) =>
        new(left.A + right.A, left.B + right.B, left.D + right.D);

    public static SymmetricMatrix operator -(SymmetricMatrix left, SymmetricMatrix right) =>
        new(left.A - right.A, left.B - right.B, left.D - right.D);

    public static SymmetricMatrix operator *(double factor, SymmetricMatrix matrix) =>
        new(factor * matrix.A, factor * matrix.B, factor * matrix.D);

    /// <summary>The product with a vector.</summary>
    public (double First, double Second) Times((double First, double Second) vector) =>
        ((A * vector.First) + (B * vector.Second), (B * vector.First) + (D * vector.Second));

    /// <summary>The product of a vector with itself.</summary>
    public static SymmetricMatrix Square((double First, double Second) vector) =>
        new(
            vector.First * vector.First,
            vector.First * vector.Second,
            vector.Second * vector.Second
        );
}
