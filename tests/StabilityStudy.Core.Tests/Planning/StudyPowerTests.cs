using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Tests.Planning;

[Trait("lane", "slow")]
public sealed class StudyPowerTests
{
    private const int Studies = 100;

    /// <summary>Five values of each wiggle from −1.5 to +1.5 s on 30 s, so that the mean of 40 has power between 0 and 1 at half the limit.</summary>
    private static readonly SmallStudy s_scattered = SmallStudy.Of(
        [6],
        Enumerable
            .Range(0, 40)
            .Select(i =>
                $"{SmallRows.Text(30m + (i % 7))} | {SmallRows.Text(30m + (i % 7) + (((i * 7 % 11) - 5) * 0.5m))}"
            )
    );

    /// <summary>Its power, simulated once for all tests that read it.</summary>
    private static readonly Lazy<TimePointPower> s_power = new(() => Only(s_scattered));

    [Fact]
    public void Number_days_and_spread_are_those_found()
    {
        var power = s_power.Value;
        var mean = s_scattered.Cell(6).Estimates.MeanPercent.Value!;

        var found = power.Supposed.Found;

        Assert.Equal(40, found.Conduct.Specimens);
        Assert.Equal(Enumerable.Repeat(4, 10), found.Conduct.SpecimensOfDays);
        Assert.Equal(7.5, power.BoundaryPercent, 12);
        Assert.InRange(found.TotalSdPercent / mean.BySpecimen.StandardDeviation, 0.95, 1.05);
    }

    /// <summary>All criteria together are met at most as often as the least of them, and at least as often as their failures leave room.</summary>
    [Fact]
    public void Together_lies_between_the_bounds_that_single_criteria_set()
    {
        var power = s_power.Value;

        Assert.Equal([0, 0.5, 1], power.Points.Select(point => point.ShareOfBoundary));
        foreach (var point in power.Points)
        {
            Assert.Equal(["mean", "each"], point.Alone.Select(item => item.Criterion));
            Assert.True(point.Together.Lower <= point.Alone.Min(item => item.Power) + 0.01);
            Assert.True(
                point.Together.Upper >= point.Alone.Sum(item => item.Power) - 1 - 0.05,
                $"{point}"
            );
        }
    }

    [Fact]
    public void A_change_as_large_as_the_limit_is_called_supported_no_more_often_than_the_level_allows()
    {
        var power = s_power.Value;
        var atLimit = power.Points[^1];

        Assert.Equal(0.05, atLimit.Alone[0].Power, 6);
        Assert.True(atLimit.Together.Lower <= 0.05, $"{atLimit}");
    }

    [Fact]
    public void The_supposed_change_goes_the_way_of_the_one_found()
    {
        var lower = SmallStudy.Of(
            [6],
            Enumerable.Range(0, 40).Select(i => $"30.0 | {SmallRows.Text(29m + (i % 3 * 0.1m))}")
        );

        Assert.Equal([0, -3.75, -7.5], Only(lower).Points.Select(item => item.MeanChangePercent));
    }

    [Fact]
    public void The_same_seed_gives_the_same_figures_and_another_seed_others()
    {
        var analysis = s_scattered.Analyze();

        var first = Chances(1);

        Assert.Equal(first, Chances(1));
        Assert.NotEqual(first, Chances(2));

        double[] Chances(ulong seed) =>
            [
                .. StudyPower
                    .Of(analysis, Studies, seed)
                    .TimePoints[0]
                    .Power.Value!.Points.Select(point => point.Together.Probability),
            ];
    }

    /// <summary>A drift criterion reads the earlier time points, which are then simulated too; without them it could never be met.</summary>
    [Fact]
    public void A_drift_criterion_can_be_met_in_simulated_studies()
    {
        var study = SmallStudy
            .Quiet(40, 6, 8, 12)
            .Criteria(
                new DriftCriterion(
                    "drift",
                    [new("aPTT", "bias")],
                    [],
                    0.90,
                    [DriftShape.Linear, DriftShape.Logarithmic]
                )
            );

        var points = StudyPower.Of(study.Analyze(), 200, 7).TimePoints[^1].Power.Value!.Points;

        Assert.Empty(points[0].Alone);
        Assert.True(points[0].Together.Probability > 0.9, $"{points[0]}");
        Assert.True(points[^1].Together.Probability < 0.12, $"{points[^1]}");
    }

    /// <summary>85 % of normal changes lie below a limit of 15 % that is 1.0364 SD above their mean (table of Φ); the other tail is empty.</summary>
    [Fact]
    public void With_single_specimens_alone_the_boundary_is_where_just_the_required_share_lies_within()
    {
        var power = Only(s_scattered.Criteria(SmallProtocol.EachCriterion));
        var total = power.Supposed.Found.TotalSdPercent;

        Assert.Equal(15 - (1.0364 * total), power.BoundaryPercent, 3);
        Assert.InRange(power.Points[^1].Alone[0].Power, 0.01, 0.05);
    }

    [Fact]
    public void Changes_without_spread_are_not_simulated()
    {
        var same = SmallStudy.Of([6], Enumerable.Repeat("30.0 | 30.0", 40));

        Assert.Equal(
            AssumptionCode.ZeroSpread,
            StudyPower.Of(same.Analyze(), 10, 1).TimePoints[0].Power.NotComputable?.Code
        );
    }

    [Fact]
    public void A_protocol_whose_criteria_have_no_limit_is_not_simulated()
    {
        var study = s_scattered.Criteria(
            new ReclassificationCriterion("sides", [new("aPTT", null)], [], 0.95, 10m, [])
        );

        Assert.Equal(
            AssumptionCode.NoLimit,
            StudyPower.Of(study.Analyze(), 10, 1).TimePoints[0].Power.NotComputable?.Code
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(StudyPower.MostStudies + 1)]
    public void Refuses_a_number_of_studies_outside_its_range(int studies) =>
        Assert.Throws<ArgumentException>(() => StudyPower.Of(s_scattered.Analyze(), studies, 1));

    private static TimePointPower Only(SmallStudy study) =>
        StudyPower.Of(study.Analyze(), Studies, 2026).TimePoints[0].Power.Value!;
}
