using CsCheck;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class WalshAveragesTests
{
    [Fact]
    public void Walsh_averages_of_small_samples_agree_with_listing_them_all() =>
        Gen.Double[-10, 10].Select(v => Math.Round(v, 1)).Array[1, 12].Sample(RequireAll);

    /// <summary>Values of very different size, many of them equal, so that interpolated bounds gain little and the range is halved.</summary>
    [Fact]
    public void Walsh_averages_of_values_far_apart_agree_with_listing_them_all() =>
        Gen.Select(Gen.Int[-3, 3], Gen.Int[-300, 300])
            .Select((digit, power) => digit * Math.Pow(10, digit % 2 == 0 ? 0 : power))
            .Array[20, 60]
            .Sample(RequireAll, iter: 60);

    private static void RequireAll(double[] values)
    {
        var all = (
            from i in Enumerable.Range(0, values.Length)
            from j in Enumerable.Range(i, values.Length - i)
            select (values[i] / 2) + (values[j] / 2)
        )
            .Order()
            .ToArray();

        var averages = new WalshAverages(values);

        Assert.Equal(all.Length, averages.Count);
        Assert.Equal(all, Enumerable.Range(1, all.Length).Select(r => averages.OfRank(r)));
        Assert.Equal((all[(all.Length - 1) / 2] / 2) + (all[all.Length / 2] / 2), averages.Median);
    }
}
