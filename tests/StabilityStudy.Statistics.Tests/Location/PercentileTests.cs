using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

/// <summary>Percentiles by type against R (scripts/percentiles.R).</summary>
public sealed class PercentileTests
{
    private static readonly ReferenceTable s_samples = ReferenceTable.Read("computed/samples.csv");

    private static readonly ReferenceTable s_expected = ReferenceTable.Read(
        "computed/percentiles.csv"
    );

    private static double[] Sample(string name) =>
        [
            .. Enumerable
                .Range(0, s_samples.Count)
                .Where(row => s_samples.Says(row, "sample", name))
                .Select(row => s_samples.Number(row, "value")),
        ];

    public static TheoryData<int> Rows => [.. Enumerable.Range(0, s_expected.Count)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Percentiles_are_those_of_R_or_refused_where_R_gives_the_end(int row)
    {
        var values = Sample(s_expected.Text(row, "sample"));
        var share = s_expected.Number(row, "share");
        if (share == 0.5)
        {
            // The median is neither end of a range.
            return;
        }

        var expected = s_expected.Number(row, "value");
        var range = Percentile.Range(
            values,
            Math.Abs((2 * share) - 1),
            Enum.Parse<PercentileType>("Type" + s_expected.Text(row, "type"))
        );

        if (range.TryGet(out var found))
        {
            Close.Absolute(
                expected,
                share < 0.5 ? found.Lower : found.Upper,
                1e-12 * values.Max(Math.Abs)
            );
        }
        else
        {
            Assert.Equal(share < 0.5 ? values.Min() : values.Max(), expected);
            Computed.Refusal(AssumptionCode.TooFewValues, range);
        }
    }

    [Theory]
    [InlineData(PercentileType.Type6, 39)]
    [InlineData(PercentileType.Type8, 27)]
    public void Far_percentiles_need_many_values(PercentileType type, int fewest)
    {
        double[] values = [.. Enumerable.Range(1, fewest).Select(i => (double)i)];

        Computed.Value(Percentile.Range(values, 0.95, type));
        Computed.Refusal(
            AssumptionCode.TooFewValues,
            Percentile.Range(values.AsSpan(1), 0.95, type)
        );
    }

    [Fact]
    public void Wrong_arguments_are_the_callers_mistake()
    {
        Assert.Throws<ArgumentException>(() => Percentile.Range([1, 2], 1, PercentileType.Type6));
        Assert.Throws<ArgumentException>(() => Percentile.Range([1, 2], 0.5, (PercentileType)9));
        Assert.Throws<ArgumentException>(() =>
            Percentile.Range([double.NaN, 2], 0.5, PercentileType.Type7)
        );
    }
}
