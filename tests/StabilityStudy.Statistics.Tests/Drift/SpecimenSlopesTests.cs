using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Location;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Drift;

public class SpecimenSlopesTests
{
    [Theory]
    [InlineData(DriftShape.Linear)]
    [InlineData(DriftShape.Logarithmic)]
    [InlineData(DriftShape.Quadratic)]
    public void Slopes_mean_bounds_and_crossing_agree_with_R(DriftShape shape)
    {
        var expected = Expected("computed/drift_expected.csv", shape.ToString());

        var drift = SpecimenSlopes.Fit(ReferenceSeries(), [ReferenceDays()], shape, 0.95).Value!;

        foreach (var (specimen, slope) in drift.Specimens.Zip(drift.SpecimenSlopes))
        {
            Close(
                expected[string.Create(CultureInfo.InvariantCulture, $"slope_{specimen}")],
                slope
            );
        }

        Assert.Equal(12, drift.SpecimenCount);
        Assert.Equal(0.90, drift.MeanSlope.ConfidenceLevel, 1e-12);
        Close(expected["mean"], drift.MeanSlope.Mean);
        Close(expected["lower"], drift.MeanSlope.Lower);
        Close(expected["upper"], drift.MeanSlope.Upper);
        Close(expected["baseline"], drift.BaselineDelayHours);
        var at = DriftPrediction.At(drift, 24);
        Close(expected["change_24"], at.Change);
        Close(expected["lower_24"], at.LowerBound);
        Close(expected["upper_24"], at.UpperBound);
        Close(
            expected["crossing_5"],
            Assert.IsType<CrossingTime.At>(Crossing.Find(drift, 5)).Hours
        );
    }

    [Fact]
    public void Slope_runs_through_the_actual_baseline_delay_of_the_specimen()
    {
        var series = ImmutableArray.Create(
            new SpecimenSeries(1, 2, [26], [12]),
            new SpecimenSeries(2, 1, [25, 49], [24, 48])
        );

        var answer = SpecimenSlopes.Fit(series, [], DriftShape.Linear, 0.95);
        var drift = answer.Value!;

        Assert.Empty(answer.Notes);
        Assert.Equal([0.5, 1.0], drift.SpecimenSlopes);
        Assert.Equal(1.5, drift.BaselineDelayHours);
    }

    [Fact]
    public void Specimen_without_another_delay_is_left_out_and_counted()
    {
        var series = ImmutableArray.Create(
            new SpecimenSeries(4, 2, [26], [12]),
            new SpecimenSeries(5, 2, [2], [3]),
            new SpecimenSeries(6, 2, [], []),
            new SpecimenSeries(7, 2, [26], [24])
        );

        var answer = SpecimenSlopes.Fit(series, [], DriftShape.Logarithmic, 0.95);

        Assert.Equal([4, 7], answer.Value!.Specimens);
        Assert.Equal(2, answer.Value.LeftOut);
        Assert.Equal(EstimateNote.NoDelayBeyondBaseline, Assert.Single(answer.Notes));
    }

    [Fact]
    public void Specimens_of_one_day_widen_the_bounds()
    {
        double[] changes = [1, 1.1, 0.9, 3, 3.1, 2.9, 5, 5.1, 4.9];
        var series = changes
            .Select((c, i) => new SpecimenSeries(i, 0, [10], [c]))
            .ToImmutableArray();
        var days = new Clustering(
            IntervalSource.CollectionDays,
            [.. changes.Select((_, i) => i / 3)]
        );

        var clustered = SpecimenSlopes.Fit(series, [days], DriftShape.Linear, 0.95).Value!;
        var independent = SpecimenSlopes.Fit(series, [], DriftShape.Linear, 0.95).Value!;

        Assert.True(clustered.MeanSlope.Upper > independent.MeanSlope.Upper + 0.1);
        Assert.Equal(independent.MeanSlope.Mean, clustered.MeanSlope.Mean, 1e-15);
    }

    [Fact]
    public void One_specimen_is_too_few() =>
        Assert.Equal(
            AssumptionCode.TooFewValues,
            SpecimenSlopes
                .Fit([new SpecimenSeries(1, 1, [5], [2])], [], DriftShape.Linear, 0.95)
                .NotComputable?.Code
        );

    [Theory]
    [InlineData(DriftShape.Linear, 3)]
    [InlineData(DriftShape.Logarithmic, 1.3862943611198906)]
    [InlineData(DriftShape.Quadratic, 9)]
    public void Shape_at_three_hours(DriftShape shape, double expected)
    {
        Assert.Equal(expected, SpecimenSlopes.Transform(shape, 3), 1e-15);
        Assert.Equal(0, SpecimenSlopes.Transform(shape, 0));
    }

    [Fact]
    public void Caller_mistakes_throw()
    {
        var good = new SpecimenSeries(1, 1, [5], [2]);

        Assert.Throws<ArgumentException>(() => new SpecimenSeries(1, -1, [5], [2]));
        Assert.Throws<ArgumentException>(() => new SpecimenSeries(1, 1, [double.NaN], [2]));
        Assert.Throws<ArgumentException>(() => new SpecimenSeries(1, 1, [5], [2, 3]));
        Assert.Throws<ArgumentException>(() =>
            SpecimenSlopes.Fit([good, good], [], DriftShape.Linear, 0.95)
        );
        Assert.Throws<ArgumentException>(() =>
            SpecimenSlopes.Fit([good], [], DriftShape.Linear, 0.5)
        );
        Assert.Throws<ArgumentException>(
            "clusterings",
            () =>
                SpecimenSlopes.Fit(
                    [good, new SpecimenSeries(2, 1, [5], [3])],
                    [new(IntervalSource.CollectionDays, [1, 2, 3])],
                    DriftShape.Linear,
                    0.95
                )
        );
        Assert.Throws<ArgumentException>(() => SpecimenSlopes.Transform(DriftShape.Linear, -1));
        Assert.Throws<ArgumentException>(() => SpecimenSlopes.Transform((DriftShape)9, 1));
    }

    [Fact]
    public void Specimen_without_a_slope_takes_its_cluster_with_it()
    {
        double[] changes = [1, 2, 9, 3, 4, 6];
        var series = changes
            .Select((c, i) => new SpecimenSeries(i, 0, i == 2 ? [0] : [10], [c]))
            .ToImmutableArray();

        var drift = SpecimenSlopes
            .Fit(
                series,
                [new(IntervalSource.DelayedRuns, [1, 1, 2, 3, 3, 3])],
                DriftShape.Linear,
                0.95
            )
            .Value!;

        var expected = ClusteredMean.WithInterval(
            [0.1, 0.2, 0.3, 0.4, 0.6],
            [new(IntervalSource.DelayedRuns, [1, 1, 3, 3, 3])],
            0.9
        );
        Close(expected.Value!.Lower, drift.MeanSlope.Lower, 1e-14);
        Close(expected.Value.Upper, drift.MeanSlope.Upper, 1e-14);
        Assert.Equal(2, Assert.Single(drift.MeanSlope.ByCluster).Clusters);
    }

    private static ImmutableArray<SpecimenSeries> ReferenceSeries() =>
        [
            .. ReferenceSpecimens()
                .Select(rows => new SpecimenSeries(
                    rows.Key,
                    Number(rows.First()[2]),
                    [.. rows.Select(row => Number(row[3]))],
                    [.. rows.Select(row => Number(row[4]))]
                )),
        ];

    private static Clustering ReferenceDays() =>
        new(
            IntervalSource.CollectionDays,
            [
                .. ReferenceSpecimens()
                    .Select(rows => int.Parse(rows.First()[1], CultureInfo.InvariantCulture)),
            ]
        );

    private static IEnumerable<IGrouping<int, string[]>> ReferenceSpecimens() =>
        Rows("computed/drift_series.csv")
            .GroupBy(row => int.Parse(row[0], CultureInfo.InvariantCulture));

    [Fact]
    public void What_is_absent_throws()
    {
        Assert.Throws<ArgumentException>(
            "series",
            () => SpecimenSlopes.Fit(default, [], DriftShape.Linear, 0.95)
        );
        Assert.Throws<ArgumentNullException>("estimate", () => DriftPrediction.At(null!, 4));
        Assert.Throws<ArgumentNullException>(
            "estimate",
            () => DriftPrediction.FromCollectionToBaseline(null!)
        );
    }
}
