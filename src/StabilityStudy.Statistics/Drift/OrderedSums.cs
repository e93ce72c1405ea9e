using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace StabilityStudy.Statistics.Drift;

/// <summary>A sum over specimens in their order, whichever lane they stand in, so that it has the same digits as one taken one by one.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct OrderedSum
{
    public double Value { get; private set; }

    public void Add(Vector128<double> both) => Value = Value + both[0] + both[1];
}

/// <summary>The sum of symmetric 2×2 matrices.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct MatrixSum
{
    private OrderedSum _a;
    private OrderedSum _b;
    private OrderedSum _d;

    public readonly SymmetricMatrix Value => new(_a.Value, _b.Value, _d.Value);

    public void Add(Vector128<double> a, Vector128<double> b, Vector128<double> d)
    {
        _a.Add(a);
        _b.Add(b);
        _d.Add(d);
    }
}

/// <summary>Sums of the products of the elements of P, from which ΣPCP follows for any C.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct SquaredSums
{
    private OrderedSum _aa;
    private OrderedSum _ab;
    private OrderedSum _bb;
    private OrderedSum _ad;
    private OrderedSum _bd;
    private OrderedSum _dd;

    public void Add(MatrixLanes matrix)
    {
        _aa.Add(matrix.A * matrix.A);
        _ab.Add(matrix.A * matrix.B);
        _bb.Add(matrix.B * matrix.B);
        _ad.Add(matrix.A * matrix.D);
        _bd.Add(matrix.B * matrix.D);
        _dd.Add(matrix.D * matrix.D);
    }

    public readonly SymmetricMatrix Around(SymmetricMatrix middle)
    {
        var (aa, ab, bb) = (_aa.Value, _ab.Value, _bb.Value);
        var (ad, bd, dd) = (_ad.Value, _bd.Value, _dd.Value);
        return new(
            (aa * middle.A) + (2 * ab * middle.B) + (bb * middle.D),
            (ab * middle.A) + ((ad + bb) * middle.B) + (bd * middle.D),
            (bb * middle.A) + (2 * bd * middle.B) + (dd * middle.D)
        );
    }
}
