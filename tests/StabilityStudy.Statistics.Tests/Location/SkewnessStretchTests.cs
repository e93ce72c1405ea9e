using CsCheck;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class SkewnessStretchTests
{
    private static readonly Gen<double[]> s_samples = Gen.Int[-500, 500]
        .Select(tenths => tenths / 10.0)
        .Array[3, 40]
        .Where(values => values.Distinct().Count() > 1);

    /// <summary>R solves the transformation numerically; the program has its inverse in closed form.</summary>
    [Fact]
    public void Factors_agree_with_R()
    {
        var table = ReferenceTable.Read("computed/skewness_factors.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var found = SkewnessStretch.Of(
                table.Number(row, "skewness"),
                table.Whole(row, "n"),
                table.Number(row, "level")
            );

            Close.Relative(table.Number(row, "downward"), found.Downward, 1e-9);
            Close.Relative(table.Number(row, "upward"), found.Upward, 1e-9);
        }
    }

    /// <summary>Both forms of the inverse, where the printed one does not cancel.</summary>
    [Theory]
    [InlineData(-2)]
    [InlineData(0.3)]
    [InlineData(1.5)]
    public void Factors_are_those_of_the_printed_inverse(double g)
    {
        const int n = 40;
        var q = StudentT.Quantile(0.95, n - 1);
        double Inverse(double x) => 3 / g * (Math.Cbrt(1 + (g * (x - (g / (6 * n))))) - 1);

        var found = SkewnessStretch.Of(g, n, 0.9);

        var root = Math.Sqrt(n);
        Close.Relative(Math.Max(1, root * Inverse(q / root) / q), found.Downward, 1e-13);
        Close.Relative(Math.Max(1, -root * Inverse(-q / root) / q), found.Upward, 1e-13);
    }

    [Fact]
    public void A_half_is_never_shortened_and_a_tail_lengthens_its_own_side_only() =>
        s_samples.Sample(values =>
        {
            var found = SkewnessStretch.Compute(values, 0.9);

            Assert.True(found.Downward >= 1 && found.Upward >= 1);
            Assert.True(double.IsFinite(found.Downward) && double.IsFinite(found.Upward));
            if (Math.Abs(found.Skewness) > 0.01)
            {
                var (own, other) =
                    found.Skewness > 0
                        ? (found.Upward, found.Downward)
                        : (found.Downward, found.Upward);
                Assert.True(own > 1);
                Assert.Equal(1, other);
            }
        });

    [Fact]
    public void Shift_and_scale_change_nothing_and_the_other_sign_swaps_the_factors() =>
        Gen.Select(s_samples, Gen.Int[-1000, 1000], Gen.Double[0.01, 100])
            .Sample(
                (values, shift, scale) =>
                {
                    var found = SkewnessStretch.Compute(values, 0.95);
                    var moved = SkewnessStretch.Compute(
                        [.. values.Select(value => scale * (value + shift))],
                        0.95
                    );
                    var turned = SkewnessStretch.Compute([.. values.Select(value => -value)], 0.95);

                    // The transformation has a point where it is flat; beside it a rounding of the skewness shows as its cube root.
                    Close.Absolute(found.Downward, moved.Downward, 1e-5);
                    Close.Absolute(found.Upward, moved.Upward, 1e-5);
                    Close.Relative(found.Downward, turned.Upward, 1e-12);
                    Close.Relative(found.Upward, turned.Downward, 1e-12);
                }
            );

    [Theory]
    [InlineData(new double[] { 1, 5 })]
    [InlineData(new double[] { 4, 4, 4, 4 })]
    [InlineData(new double[] { -3, 0, 3 })]
    public void Without_skewness_both_factors_are_exactly_1(double[] values) =>
        Assert.Equal(new SkewnessStretch(0, 1, 1), SkewnessStretch.Compute(values, 0.9));

    /// <summary>So close to symmetry the factors pass into 1 without a step.</summary>
    [Fact]
    public void Hardly_any_skewness_hardly_lengthens()
    {
        foreach (var g in new[] { 1e-12, 1e-9, 1e-8 })
        {
            // First order in g: q/√n/3 + 1/(6√n·q), with c² + c + 1 ≈ 3 + u.
            var q = StudentT.Quantile(0.95, 39);
            var expected = g * ((q / Math.Sqrt(40) / 3) + (1 / (6 * Math.Sqrt(40) * q)));
            Close.Absolute(expected, SkewnessStretch.Of(g, 40, 0.9).Upward - 1, 1e-15);
        }
    }

    [Fact]
    public void What_no_factor_can_be_computed_of_throws()
    {
        Assert.Throws<ArgumentException>("values", () => SkewnessStretch.Compute([1], 0.9));
        Assert.Throws<ArgumentException>(
            "values",
            () => SkewnessStretch.Compute([1, double.NaN, 2], 0.9)
        );
        Assert.Throws<ArgumentException>(
            "confidenceLevel",
            () => SkewnessStretch.Compute([1, 2, 3], 1)
        );
    }
}
