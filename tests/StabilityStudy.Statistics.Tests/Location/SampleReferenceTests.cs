using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

/// <summary>Ten samples (continuous, skewed, rounded with ties, far from zero) at two levels, computed in R.</summary>
public sealed class SampleReferenceTests
{
    private static readonly ReferenceTable s_results = ReferenceTable.Read(
        "computed/sample_results.csv"
    );
    private static readonly ReferenceTable s_samples = ReferenceTable.Read("computed/samples.csv");

    public static TheoryData<int> Rows => [.. Enumerable.Range(0, s_results.Count)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Mean_and_interval_agree_with_R(int row)
    {
        var interval = Computed.Value(ArithmeticMean.WithInterval(Sample(row), Level(row)));

        Agrees(row, "mean", interval.Mean);
        Agrees(row, "sd", interval.StandardDeviation);
        Agrees(row, "mean_lower", interval.Lower);
        Agrees(row, "mean_upper", interval.Upper);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Paired_t_test_agrees_with_R(int row)
    {
        var test = Computed.Value(
            PairedT.Compute(Computed.Value(ArithmeticMean.WithInterval(Sample(row), Level(row))))
        );

        Agrees(row, "t", test.T);
        Close.Relative(s_results.Number(row, "p"), test.PValue, 1e-8);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Spread_agrees_with_R(int row)
    {
        var sample = Sample(row);

        var spread = Computed.Value(Spread.Summarize(sample));

        Agrees(row, "sd", spread.StandardDeviation);
        Agrees(row, "skewness", spread.Skewness);
        Assert.Equal((sample.Min(), sample.Max()), (spread.Minimum, spread.Maximum));
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Median_and_interval_agree_with_R(int row)
    {
        var median = Computed.Value(Median.WithInterval(Sample(row), Level(row)));

        Agrees(row, "median", median.Value);
        Assert.Equal(s_results.Whole(row, "median_rank"), median.LowerRank);
        Agrees(row, "median_lower", median.Lower);
        Agrees(row, "median_upper", median.Upper);
        Agrees(row, "median_level", median.AchievedConfidence);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Hodges_Lehmann_estimate_and_interval_agree_with_R(int row)
    {
        var estimate = Computed.Value(HodgesLehmann.WithInterval(Sample(row), Level(row)));

        Agrees(row, "hl", estimate.Value);
        Assert.Equal(s_results.Whole(row, "hl_rank"), estimate.LowerRank);
        Agrees(row, "hl_lower", estimate.Lower);
        Agrees(row, "hl_upper", estimate.Upper);
        Agrees(row, "hl_level", estimate.AchievedConfidence);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Exact_intervals_of_limits_of_agreement_agree_with_R(int row)
    {
        var limits = Computed.Value(LimitsOfAgreement.Compute(Sample(row), Level(row)));

        // R's noncentral quantile warns that it may not have full precision here.
        Agrees(row, "loa_upper_exact_lower", limits.UpperExact.Lower, 1e-9);
        Agrees(row, "loa_upper_exact_upper", limits.UpperExact.Upper, 1e-9);
        Agrees(row, "loa_lower_exact_lower", limits.LowerExact.Lower, 1e-9);
        Agrees(row, "loa_lower_exact_upper", limits.LowerExact.Upper, 1e-9);
    }

    private static double Level(int row) => s_results.Number(row, "level");

    private static double[] Sample(int row)
    {
        var name = s_results.Text(row, "sample");
        return
        [
            .. Enumerable
                .Range(0, s_samples.Count)
                .Where(i => s_samples.Says(i, "sample", name))
                .Select(i => s_samples.Number(i, "value")),
        ];
    }

    /// <summary>Relative to the number or, where it is smaller, to the unit spread of the samples; 1e-11 far from zero.</summary>
    private static void Agrees(int row, string column, double actual, double tolerance = 1e-11)
    {
        var expected = s_results.Number(row, column);
        // The sample at 10⁶ holds its values to 10⁻¹⁰ only, so what depends on its spread agrees to that.
        var spread = s_results.Says(row, "sample", "far9") ? 100 : 1;
        Close.Absolute(expected, actual, tolerance * spread * Math.Max(1, Math.Abs(expected)));
    }
}
