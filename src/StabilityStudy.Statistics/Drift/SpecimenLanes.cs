using System.Runtime.Intrinsics;

namespace StabilityStudy.Statistics.Drift;

/// <summary>The sums of two specimens in each vector; where their number is odd the last stands beside one without results, which adds nothing.</summary>
internal sealed record SpecimenLanes(
    Vector128<double>[] Count,
    Vector128<double>[] SumG,
    Vector128<double>[] SumGG,
    Vector128<double>[] First,
    Vector128<double>[] Second
)
{
    public static SpecimenLanes Of(ImmutableArray<SpecimenSums> specimens) =>
        new(
            Both(specimens, static sums => sums.Moments.A),
            Both(specimens, static sums => sums.Moments.B),
            Both(specimens, static sums => sums.Moments.D),
            Both(specimens, static sums => sums.Products.First),
            Both(specimens, static sums => sums.Products.Second)
        );

    public MatrixLanes Moments(int place) => new(Count[place], SumG[place], SumGG[place]);

    private static Vector128<double>[] Both(
        ImmutableArray<SpecimenSums> specimens,
        Func<SpecimenSums, double> of
    )
    {
        var lanes = new Vector128<double>[(specimens.Length + 1) / 2];
        for (var i = 0; i < lanes.Length; i++)
        {
            lanes[i] = Vector128.Create(
                of(specimens[2 * i]),
                (2 * i) + 1 < specimens.Length ? of(specimens[(2 * i) + 1]) : 0
            );
        }

        return lanes;
    }
}
