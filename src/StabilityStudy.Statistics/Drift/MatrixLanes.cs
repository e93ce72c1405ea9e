using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace StabilityStudy.Statistics.Drift;

/// <summary>A symmetric 2×2 matrix of each of two specimens.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct MatrixLanes(Vector128<double> a, Vector128<double> b, Vector128<double> d)
{
    public readonly Vector128<double> A = a;
    public readonly Vector128<double> B = b;
    public readonly Vector128<double> D = d;

    public static MatrixLanes OfBoth(SymmetricMatrix matrix) =>
        new(Vector128.Create(matrix.A), Vector128.Create(matrix.B), Vector128.Create(matrix.D));

    public Vector128<double> Determinant => (A * D) - (B * B);
}
