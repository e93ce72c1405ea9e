using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace StabilityStudy.Statistics.Drift;

/// <summary>A symmetric 2×2 matrix of each of two specimens.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct MatrixLanes(
    Vector128<double> a,
    Vector128<double> b,
    Vector128<double> d
)
{
    public readonly Vector128<double> A = a;
    public readonly Vector128<double> B = b;
    public readonly Vector128<double> D = d;

    public static MatrixLanes OfBoth(SymmetricMatrix matrix) =>
        new(
            Vector128.Create(matrix.A),
            Vector128.Create(matrix.B),
            Vector128.Create(matrix.D)
        );

    public Vector128<double> Determinant => (A * D) - (B * B);

    public static MatrixLanes operator +(MatrixLanes left, MatrixLanes right) =>
        new(left.A + right.A, left.B + right.B, left.D + right.D);

    /// <summary>The matrices of both specimens added up.</summary>
    public SymmetricMatrix Sum() =>
        new(Vector128.Sum(A), Vector128.Sum(B), Vector128.Sum(D));
}

/// <summary>Sums of the products of the elements of P, from which ΣPCP follows for any C.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct SquaredSums
{
    private Vector128<double> _aa;
    private Vector128<double> _ab;
    private Vector128<double> _bb;
    private Vector128<double> _ad;
    private Vector128<double> _bd;
    private Vector128<double> _dd;

    public void Add(MatrixLanes matrix)
    {
        _aa += matrix.A * matrix.A;
        _ab += matrix.A * matrix.B;
        _bb += matrix.B * matrix.B;
        _ad += matrix.A * matrix.D;
        _bd += matrix.B * matrix.D;
        _dd += matrix.D * matrix.D;
    }

    public readonly SymmetricMatrix Around(SymmetricMatrix middle)
    {
        var (aa, ab, bb) = (Vector128.Sum(_aa), Vector128.Sum(_ab), Vector128.Sum(_bb));
        var (ad, bd, dd) = (Vector128.Sum(_ad), Vector128.Sum(_bd), Vector128.Sum(_dd));
        return new(
            (aa * middle.A) + (2 * ab * middle.B) + (bb * middle.D),
            (ab * middle.A) + ((ad + bb) * middle.B) + (bd * middle.D),
            (bb * middle.A) + (2 * bd * middle.B) + (dd * middle.D)
        );
    }
}
