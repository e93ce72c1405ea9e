using CsCheck;
using StabilityStudy.Statistics.Drift;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Drift;

public class CrossingTests
{
    private static readonly Gen<DriftEstimate> Drifts = Gen.Select(
        Gen.Select(Gen.Double[0.5, 4], Gen.Bool, (size, rises) => rises ? size : -size).Array[
            4,
            10
        ],
        Gen.Double[0, 6],
        Gen.Int[0, 2],
        (changes, baseline, shape) =>
            SpecimenSlopes
                .Fit(
                    [.. changes.Select((c, i) => new SpecimenSeries(i, baseline, [30], [c]))],
                    [],
                    (DriftShape)shape,
                    0.95
                )
                .Value!
    );

    [Fact]
    public void Bound_is_at_the_limit_at_the_crossing_and_inside_before() =>
        Drifts.Sample(
            drift =>
            {
                var hours = Assert.IsType<CrossingTime.At>(Crossing.Find(drift, 2)).Hours;
                Assert.True(hours > drift.BaselineDelayHours);
                Close(2, Farthest(DriftPrediction.At(drift, hours)), 1e-8);
                for (var share = 0.0; share < 0.95; share += 0.1)
                {
                    var before =
                        drift.BaselineDelayHours + (share * (hours - drift.BaselineDelayHours));
                    Assert.True(Farthest(DriftPrediction.At(drift, before)) < 2);
                }
            },
            iter: 200
        );

    [Fact]
    public void Change_and_bounds_add_up_from_collection() =>
        Drifts.Sample(
            drift =>
            {
                var before = DriftPrediction.FromCollectionToBaseline(drift);
                var back = DriftPrediction.At(drift, 0);
                Close(-before.Change, back.Change);
                Close(-before.LowerBound, back.UpperBound);
                Assert.True(back.LowerBound <= back.Change && back.Change <= back.UpperBound);
                Assert.Equal(0, DriftPrediction.At(drift, drift.BaselineDelayHours).UpperBound);
            },
            iter: 200
        );

    [Fact]
    public void Crossing_is_counted_from_collection()
    {
        // Every specimen drifts by exactly 1 % an hour, so the bounds are the line itself.
        var drift = Exact(2, [12, 22], [10, 20]);

        Assert.Equal(new CrossingTime.At(7), Crossing.Find(drift, 5));
        Assert.Equal(2, DriftPrediction.FromCollectionToBaseline(drift).Change);
    }

    [Fact]
    public void Falling_drift_crosses_the_lower_limit() =>
        Assert.Equal(new CrossingTime.At(7), Crossing.Find(Exact(2, [12], [-10]), 5));

    [Fact]
    public void No_drift_never_crosses() =>
        Assert.IsType<CrossingTime.Never>(Crossing.Find(Exact(2, [12], [0]), 5));

    [Fact]
    public void Crossing_beyond_every_double_is_none() =>
        Assert.IsType<CrossingTime.Never>(
            Crossing.Find(Exact(1, [12], [1e-3], DriftShape.Logarithmic), 50)
        );

    [Fact]
    public void Limit_of_zero_is_reached_at_the_baseline() =>
        Assert.IsType<CrossingTime.AlreadyOutside>(Crossing.Find(Exact(2, [12], [1]), 0));

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Limit_that_is_no_allowance_throws(double limit) =>
        Assert.Throws<ArgumentException>(
            "limitPercent",
            () => Crossing.Find(Exact(2, [12], [1]), limit)
        );

    [Fact]
    public void Drift_that_is_absent_throws() =>
        Assert.Throws<ArgumentNullException>("estimate", () => Crossing.Find(null!, 5));

    [Theory]
    [InlineData(-0.5, 0.4, 2)]
    [InlineData(0.1, 0.4, 1)]
    [InlineData(-0.5, -0.1, 1)]
    [InlineData(0.0, 0.0, 0)]
    public void Slope_that_may_go_either_way_has_a_root_on_each_side(
        double lower,
        double upper,
        int roots
    )
    {
        foreach (var shape in Enum.GetValues<DriftShape>())
        {
            var found = Crossing.Roots(shape, 1.5, lower, upper, -4, 6);

            Assert.Equal(
                roots,
                (found.LowerLimitHours is null ? 0 : 1) + (found.UpperLimitHours is null ? 0 : 1)
            );
            RequireRoot(found.LowerLimitHours, lower, -4, shape);
            RequireRoot(found.UpperLimitHours, upper, 6, shape);
            Assert.Equal(new[] { found.LowerLimitHours, found.UpperLimitHours }.Min(), found.First);
        }

        // Independent of the closed form: the bound changes from inside to outside between two times a second apart.
        static void RequireRoot(double? hours, double slope, double limit, DriftShape shape)
        {
            if (hours is not { } root)
            {
                Assert.True(slope * limit <= 0);
                return;
            }

            const double second = 1 / 3600.0;
            Assert.True(Bound(root - second) < Math.Abs(limit));
            Assert.True(Bound(root + second) > Math.Abs(limit));

            double Bound(double t) =>
                Math.Abs(
                    slope
                        * (
                            SpecimenSlopes.Transform(shape, t)
                            - SpecimenSlopes.Transform(shape, 1.5)
                        )
                );
        }
    }

    [Fact]
    public void Limits_that_do_not_enclose_zero_throw()
    {
        Assert.Throws<ArgumentException>("upperLimit", () => Roots(-1, 1, 0, 6));
        Assert.Throws<ArgumentException>("upperLimit", () => Roots(-1, 1, -6, 0));
        Assert.Throws<ArgumentException>("hours", () => Roots(-1, 1, -6, 6, -1));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void What_is_no_number_throws(double wrong)
    {
        Assert.Throws<ArgumentException>("slopeLower", () => Roots(wrong, 1, -6, 6));
        Assert.Throws<ArgumentException>("slopeUpper", () => Roots(-1, wrong, -6, 6));
        Assert.Throws<ArgumentException>("lowerLimit", () => Roots(-1, 1, wrong, 6));
        Assert.Throws<ArgumentException>("upperLimit", () => Roots(-1, 1, -6, wrong));
        Assert.Throws<ArgumentException>("hours", () => Roots(-1, 1, -6, 6, wrong));
    }

    private static void Roots(
        double slopeLower,
        double slopeUpper,
        double lowerLimit,
        double upperLimit,
        double baseline = 1
    ) =>
        Crossing.Roots(DriftShape.Linear, baseline, slopeLower, slopeUpper, lowerLimit, upperLimit);

    private static double Farthest(DriftPoint point) =>
        Math.Max(point.UpperBound, -point.LowerBound);

    private static DriftEstimate Exact(
        double baseline,
        ImmutableArray<double> delays,
        ImmutableArray<double> changes,
        DriftShape shape = DriftShape.Linear
    ) =>
        SpecimenSlopes
            .Fit(
                [
                    .. Enumerable
                        .Range(1, 4)
                        .Select(i => new SpecimenSeries(i, baseline, delays, changes)),
                ],
                [],
                shape,
                0.95
            )
            .Value!;
}
