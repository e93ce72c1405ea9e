using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Planning;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Planning;

public sealed class OperatingCharacteristicTests
{
    [Fact]
    public void Agrees_with_the_exact_power_of_a_criterion_that_has_one()
    {
        const int studies = 4000;
        double[] means = [0, 3, 5, 6, 7.5];
        var curve = OperatingCharacteristic.Curve(means, studies, 7, 0.999, IsInside);

        foreach (var point in curve)
        {
            var exact = EquivalencePower.Of(20, point.Truth, 3, -7.5, 7.5, 0.90);
            Assert.InRange(exact, point.Lower, point.Upper);
            Assert.Equal(studies, point.Studies);
            Assert.Equal((double)point.Accepted / studies, point.Probability);
        }

        static bool IsInside(double mean, SeededRandom random)
        {
            double[] changes =
            [
                .. Enumerable.Range(0, 20).Select(_ => mean + (3 * random.NextNormal())),
            ];
            var interval = Computed.Value(ArithmeticMean.WithInterval(changes, 0.90));
            return interval.Lower > -7.5 && interval.Upper < 7.5;
        }
    }

    [Fact]
    public void The_same_seed_gives_the_same_curve_and_every_truth_the_same_studies()
    {
        var first = OperatingCharacteristic.Curve([1, 2, 1], 500, 3, 0.95, Accepts);

        Assert.Equal(first, OperatingCharacteristic.Curve([1, 2, 1], 500, 3, 0.95, Accepts));
        Assert.Equal(first[0], first[2]);
        Assert.True(first[1].Accepted > first[0].Accepted);
        Assert.NotEqual(
            first[0].Accepted,
            OperatingCharacteristic.Curve([1], 500, 4, 0.95, Accepts)[0].Accepted
        );

        static bool Accepts(double truth, SeededRandom random) => 3 * random.NextDouble() < truth;
    }

    [Theory]
    [InlineData(1)]
    [InlineData(1_000_000)]
    public void One_study_or_a_million_are_allowed(int studies)
    {
        var point = OperatingCharacteristic.Curve([1], studies, 1, 0.95, (_, _) => true)[0];

        Assert.Equal((studies, 1), (point.Accepted, point.Upper));
        // Without a failure the exact lower bound is (α/2)^(1/n).
        Close.Relative(Math.Pow(0.025, 1.0 / studies), point.Lower, 1e-9);
    }

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        static bool Accepts(double truth, SeededRandom random) => true;
        Assert.Throws<ArgumentException>(() =>
            OperatingCharacteristic.Curve([double.NaN], 10, 1, 0.95, Accepts)
        );
        Assert.Throws<ArgumentException>(() =>
            OperatingCharacteristic.Curve([1], 0, 1, 0.95, Accepts)
        );
        Assert.Throws<ArgumentException>(() =>
            OperatingCharacteristic.Curve([1], 1_000_001, 1, 0.95, Accepts)
        );
        Assert.Throws<ArgumentException>(() =>
            OperatingCharacteristic.Curve([], 10, 1, 1, Accepts)
        );
        Assert.Throws<ArgumentNullException>(() =>
            OperatingCharacteristic.Curve([1], 10, 1, 0.95, null!)
        );
    }
}
