using CsCheck;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

/// <summary>What must not change, or change along, when values are shifted, scaled, turned or put in another order.</summary>
public sealed class LocationPropertyTests
{
    private const double Tolerance = 1e-10;

    private static readonly Gen<double[]> s_samples = Gen.Int[-500, 500]
        .Select(tenths => tenths / 10.0)
        .Array[6, 30]
        .Where(values => values.Distinct().Count() > 1);

    [Fact]
    public void Shifted_values_shift_every_location() =>
        Gen.Select(s_samples, Gen.Double[-1000, 1000])
            .Sample(
                (values, shift) =>
                    SameLocations(
                        [.. Locations(values).Select(v => v + shift)],
                        Locations([.. values.Select(v => v + shift)])
                    )
            );

    [Fact]
    public void Scaled_values_scale_every_location() =>
        Gen.Select(s_samples, Gen.Double[0.001, 1000])
            .Sample(
                (values, factor) =>
                    SameLocations(
                        [.. Locations(values).Select(v => v * factor)],
                        Locations([.. values.Select(v => v * factor)])
                    )
            );

    [Fact]
    public void Turned_values_turn_every_location() =>
        s_samples.Sample(values =>
        {
            var turned = Locations([.. values.Select(v => -v)]);

            // Each method gives estimate, lower, upper: the ends change places.
            var expected = Locations(values)
                .Chunk(3)
                .SelectMany(three => new[] { -three[0], -three[2], -three[1] })
                .ToArray();
            SameLocations(expected, turned);
        });

    [Fact]
    public void Order_of_the_values_does_not_matter() =>
        Gen.Select(s_samples, Gen.Int)
            .Sample(
                (values, seed) =>
                {
                    var shuffled = values
                        .OrderBy(_ => seed = unchecked((seed * 1_103_515_245) + 12_345))
                        .ToArray();
                    SameLocations(Locations(values), Locations(shuffled));
                }
            );

    [Fact]
    public void Input_is_left_as_it_was() =>
        s_samples.Sample(values =>
        {
            var copy = values.ToArray();
            Locations(values);
            Spread.Summarize(values);
            Assert.Equal(copy, values);
        });

    [Fact]
    public void Intervals_hold_their_estimate_and_grow_with_the_level() =>
        s_samples.Sample(values =>
        {
            var narrow = Computed.Value(ArithmeticMean.WithInterval(values, 0.90));
            var wide = Computed.Value(ArithmeticMean.WithInterval(values, 0.95));
            Assert.True(wide.Lower < narrow.Lower && narrow.Lower < narrow.Mean);
            Assert.True(narrow.Mean < narrow.Upper && narrow.Upper < wide.Upper);

            var order = Computed.Value(HodgesLehmann.WithInterval(values, 0.95));
            Assert.True(order.Lower <= order.Value && order.Value <= order.Upper);
            Assert.True(order.AchievedConfidence >= 0.95);
        });

    private static double[] Locations(double[] values)
    {
        var mean = Computed.Value(ArithmeticMean.WithInterval(values, 0.95));
        var median = Computed.Value(Median.WithInterval(values, 0.95));
        var average = Computed.Value(HodgesLehmann.WithInterval(values, 0.95));
        var limits = Computed.Value(LimitsOfAgreement.Compute(values, 0.95));
        return
        [
            mean.Mean,
            mean.Lower,
            mean.Upper,
            median.Value,
            median.Lower,
            median.Upper,
            average.Value,
            average.Lower,
            average.Upper,
            limits.Mean,
            limits.Lower,
            limits.Upper,
            limits.Mean,
            limits.LowerExact.Lower,
            limits.UpperExact.Upper,
            limits.Mean,
            limits.LowerApproximate.Upper,
            limits.UpperApproximate.Lower,
        ];
    }

    private static void SameLocations(double[] expected, double[] actual)
    {
        var size = expected.Max(Math.Abs);
        for (var i = 0; i < expected.Length; i++)
        {
            Close.Absolute(expected[i], actual[i], Tolerance * size);
        }
    }
}
