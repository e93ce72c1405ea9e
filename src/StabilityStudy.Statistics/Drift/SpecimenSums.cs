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
