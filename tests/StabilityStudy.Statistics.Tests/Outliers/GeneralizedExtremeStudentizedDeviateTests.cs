using CsCheck;
using StabilityStudy.Statistics.Outliers;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Outliers;

public class GeneralizedExtremeStudentizedDeviateTests
{
    private static readonly double[] Rosner = Column("published/rosner1983_esd.csv", 0);

    [Fact]
    public void Rosner_1983_finds_three_outliers_that_hide_each_other_from_the_first_step()
    {
        double[] printedStatistics =
        [
            3.118,
            2.942,
            3.179,
            2.810,
            2.815,
            2.848,
            2.279,
            2.310,
            2.101,
            2.067,
        ];
        double[] printedCritical =
        [
            3.158,
            3.151,
            3.143,
            3.136,
            3.128,
            3.120,
            3.111,
            3.103,
            3.094,
            3.085,
        ];

        var answer = GeneralizedExtremeStudentizedDeviate.Find(Rosner, 10, 0.05);
        var found = answer.Value!;

        Assert.Equal([6.01, 5.42, 5.34], found.OutlierIndices.Select(i => Rosner[i]));
        Assert.True(found.Steps[0].Statistic < found.Steps[0].CriticalValue);
        Assert.Empty(answer.Notes);
        for (var i = 0; i < 10; i++)
        {
            Assert.Equal(printedStatistics[i], found.Steps[i].Statistic, 0.0015);
            Assert.Equal(printedCritical[i], found.Steps[i].CriticalValue, 0.0015);
        }
    }

    [Fact]
    public void Every_step_agrees_with_R_in_full_digits()
    {
        var found = GeneralizedExtremeStudentizedDeviate.Find(Rosner, 10, 0.05).Value!;

        for (var i = 0; i < 10; i++)
        {
            var expected = Expected(
                "computed/outliers_rosner_expected.csv",
                (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)
            );
            Assert.Equal(expected["value"], found.Steps[i].Value);
            Close(expected["statistic"], found.Steps[i].Statistic);
            Close(expected["critical"], found.Steps[i].CriticalValue);
        }
    }

    [Fact]
    public void Shift_scale_and_order_change_no_outlier() =>
        Gen.Double[-1, 1]
            .Array[25, 40]
            .Sample(
                values =>
                {
                    double[] spiked = [.. values, 9, -11];
                    double[] other = [.. spiked.Reverse().Select(v => (v * 8) + 100)];
                    var plain = GeneralizedExtremeStudentizedDeviate.Find(spiked, 4, 0.05).Value!;
                    var moved = GeneralizedExtremeStudentizedDeviate.Find(other, 4, 0.05).Value!;
                    Assert.Contains(values.Length, plain.OutlierIndices);
                    Assert.Contains(values.Length + 1, plain.OutlierIndices);
                    // Equal values may be named by another position, so the values are compared.
                    Assert.Equal(
                        plain.OutlierIndices.Select(i => (spiked[i] * 8) + 100).Order(),
                        moved.OutlierIndices.Select(i => other[i]).Order()
                    );
                },
                iter: 200
            );

    [Fact]
    public void Values_without_outlier_give_none()
    {
        double[] values = [.. Enumerable.Range(1, 30).Select(i => (double)i)];

        Assert.Empty(
            GeneralizedExtremeStudentizedDeviate.Find(values, 3, 0.05).Value!.OutlierIndices
        );
    }

    [Fact]
    public void Of_equally_far_values_the_greater_is_taken_first()
    {
        var found = GeneralizedExtremeStudentizedDeviate
            .Find([-2, 0, 0, 0, 0, 0, 2], 1, 0.05)
            .Value!;

        Assert.Equal(2, found.Steps[0].Value);
    }

    [Fact]
    public void Search_stops_when_what_is_left_has_no_spread()
    {
        var answer = GeneralizedExtremeStudentizedDeviate.Find([5, 5, 5, 5, 5, 5, 9], 3, 0.05);

        Assert.Single(answer.Value!.Steps);
        Assert.Equal([6], answer.Value.OutlierIndices);
        Assert.Equal(EstimateNote.ApproximateOutlierLevel, Assert.Single(answer.Notes));
    }

    [Fact]
    public void Too_few_values_and_no_spread_are_refused()
    {
        Assert.Equal(
            AssumptionCode.TooFewValues,
            GeneralizedExtremeStudentizedDeviate.Find([1, 2], 1, 0.05).NotComputable?.Code
        );
        Assert.Equal(
            AssumptionCode.TooFewValues,
            GeneralizedExtremeStudentizedDeviate.Find([1, 2, 3, 4], 3, 0.05).NotComputable?.Code
        );
        Assert.Equal(
            AssumptionCode.ZeroSpread,
            GeneralizedExtremeStudentizedDeviate.Find([2, 2, 2, 2], 1, 0.05).NotComputable?.Code
        );
    }

    [Fact]
    public void Caller_mistakes_throw()
    {
        Assert.Throws<ArgumentException>(() =>
            GeneralizedExtremeStudentizedDeviate.Find([1, 2, double.NaN], 1, 0.05)
        );
        Assert.Throws<ArgumentException>(() =>
            GeneralizedExtremeStudentizedDeviate.Find([1, 2, 3], 0, 0.05)
        );
        Assert.Throws<ArgumentException>(() =>
            GeneralizedExtremeStudentizedDeviate.Find([1, 2, 3], 1, 1)
        );
    }

    [Fact]
    public void Input_is_not_written_to()
    {
        double[] values = [3, 1, 2, 9, 4];

        _ = GeneralizedExtremeStudentizedDeviate.Find(values, 2, 0.05);

        Assert.Equal([3, 1, 2, 9, 4], values);
    }

    [Fact]
    public void Sizes_at_which_the_search_begins_and_its_level_is_accurate()
    {
        Assert.NotNull(Of(3, 1).Value);
        Assert.Null(Of(3, 2).Value);
        Assert.NotNull(Of(10, 8).Value);
        Assert.Null(Of(10, 9).Value);
        Assert.Single(Of(24, 2).Notes);
        Assert.Empty(Of(25, 2).Notes);

        static Estimate<ExtremeStudentizedDeviate> Of(int count, int most) =>
            GeneralizedExtremeStudentizedDeviate.Find(
                [.. Enumerable.Range(0, count).Select(i => Math.Sqrt(i))],
                most,
                0.05
            );
    }
}
