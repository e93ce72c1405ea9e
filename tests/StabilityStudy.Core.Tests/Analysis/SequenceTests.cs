using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class SequenceTests
{
    private static readonly SmallStudy s_threeTimes = SmallStudy.Quiet(40, 6, 8, 12);

    /// <summary>Makes all results of a time point a third higher.</summary>
    private static SmallStudy Drifting(SmallStudy study, int hour) =>
        study.Rows(row =>
            row.Occasion.TimePoint == SmallProtocol.At(hour)
                ? row with
                {
                    Result = SmallRows.Reported("45.0"),
                }
                : row
        );

    private static Conclusion[] Conclusions(SmallStudy study) =>
        [.. study.Sequence().Cells.Select(cell => cell.Conclusion)];

    private static SmallStudy TestedEarlier(
        SmallStudy study,
        int specimen,
        int hour,
        int minutes
    ) =>
        study
            .Row(specimen, hour, row => row with { TestedAt = row.TestedAt?.AddMinutes(-minutes) })
            .Tube(specimen, hour, tube => tube with { SpunAt = tube.SpunAt?.AddMinutes(-minutes) });

    [Fact]
    public void Time_points_that_are_all_supported_support_the_last()
    {
        Assert.All(
            Conclusions(s_threeTimes),
            conclusion => Assert.Equal(Conclusion.Supported, conclusion)
        );
        Assert.Equal(TimeSpan.FromHours(12), s_threeTimes.Sequence().Window!.Time);
    }

    [Fact]
    public void The_first_time_point_that_is_not_supported_ends_the_sequence()
    {
        var sequence = Drifting(s_threeTimes, 8).Sequence();

        Assert.Equal(
            [Conclusion.Supported, Conclusion.NotSupported, Conclusion.NotReached],
            sequence.Cells.Select(cell => cell.Conclusion)
        );
        Assert.Equal(Conclusion.Supported, sequence.Cells[2].OwnConclusion);
        Assert.Equal(TimeSpan.FromHours(6), sequence.Window!.Time);
    }

    [Fact]
    public void An_inconclusive_time_point_ends_the_sequence_too()
    {
        var study = s_threeTimes.Result(0, 6, "CLOT").Result(1, 6, "CLOT").Result(2, 6, "CLOT");

        Assert.Equal(
            [Conclusion.Inconclusive, Conclusion.NotReached, Conclusion.NotReached],
            Conclusions(study)
        );
        Assert.Null(study.Sequence().Window);
    }

    [Fact]
    public void Without_a_criterion_nothing_is_assessed()
    {
        var study = s_threeTimes.Criteria();

        Assert.Equal(
            [Conclusion.NotAssessed, Conclusion.NotReached, Conclusion.NotReached],
            Conclusions(study)
        );
    }

    [Fact]
    public void A_criterion_of_another_group_does_not_apply() =>
        Assert.Equal(
            Conclusion.NotAssessed,
            Conclusions(
                s_threeTimes.Criteria(SmallProtocol.EachCriterion with { Groups = ["ufh"] })
            )[0]
        );

    [Fact]
    public void Time_points_are_concluded_in_ascending_order_however_they_are_listed()
    {
        var study = Drifting(s_threeTimes, 6)
            .Protocol(protocol =>
                protocol with
                {
                    TimePoints = [SmallProtocol.At(12), SmallProtocol.At(8), SmallProtocol.At(6)],
                }
            );

        Assert.Equal(
            [Conclusion.NotSupported, Conclusion.NotReached, Conclusion.NotReached],
            Conclusions(study)
        );
    }

    [Fact]
    public void One_criterion_not_met_is_not_supported_even_beside_an_inconclusive_one()
    {
        var study = Drifting(SmallStudy.Quiet(40), 6)
            .Protocol(protocol => protocol with { MinimumDays = 11 });

        Assert.Equal(
            [Verdict.Inconclusive, Verdict.NotMet],
            study.Cell().Criteria.Select(result => result.Verdict)
        );
        Assert.Equal(Conclusion.NotSupported, study.Cell().Conclusion);
    }

    [Fact]
    public void One_criterion_inconclusive_is_inconclusive_beside_one_that_is_met() =>
        Assert.Equal(
            Conclusion.Inconclusive,
            SmallStudy
                .Quiet(40)
                .Protocol(protocol => protocol with { MinimumDays = 11 })
                .Cell()
                .Conclusion
        );

    [Fact]
    public void A_group_without_specimens_is_never_supported()
    {
        var study = SmallStudy
            .Quiet(40)
            .Protocol(protocol =>
                protocol with
                {
                    Groups = protocol.Groups.Add(new PatientGroup("ufh", "UFH", 40, null)),
                }
            );

        Assert.Equal(Conclusion.Inconclusive, study.Analyze().Sequences[1].Cells[0].Conclusion);
    }

    [Theory]
    [InlineData(1, 330)]
    [InlineData(29, 330)]
    [InlineData(30, 330)]
    public void The_window_is_the_shortest_actual_delay_rounded_down_to_the_step(
        int minutesEarly,
        int expectedMinutes
    )
    {
        var window = TestedEarlier(SmallStudy.Quiet(40), 5, 6, minutesEarly).Sequence().Window!;

        Assert.Equal(TimeSpan.FromMinutes(expectedMinutes), window.Time);
        Assert.Equal(TimeSpan.FromMinutes(360 - minutesEarly), window.ShortestActualDelay);
    }

    [Fact]
    public void Tests_after_the_planned_time_do_not_lengthen_the_window()
    {
        var study = SmallStudy
            .Quiet(40)
            .Rows(row =>
                row.Occasion.IsBaseline ? row : row with { TestedAt = row.TestedAt?.AddMinutes(30) }
            );

        Assert.Equal(TimeSpan.FromHours(6), study.Sequence().Window!.Time);
    }

    [Fact]
    public void A_pair_that_was_left_out_does_not_shorten_the_window()
    {
        var study = TestedEarlier(SmallStudy.Quiet(41), 5, 6, 20).Exclude(5, 6);

        Assert.Equal(TimeSpan.FromHours(6), study.Sequence().Window!.Time);
    }

    [Fact]
    public void A_later_time_point_with_early_tests_does_not_shorten_what_an_earlier_one_supports()
    {
        var study = TestedEarlier(SmallStudy.Quiet(40, 6, 8), 5, 8, 150)
            .Protocol(protocol =>
                protocol with
                {
                    Tolerance = new Tolerance(TimeSpan.FromHours(3), TimeSpan.Zero),
                }
            );

        var sequence = study.Sequence();

        Assert.Equal(Conclusion.Supported, sequence.Cells[1].Conclusion);
        Assert.Equal(TimeSpan.FromHours(6), sequence.Window!.Time);
    }

    [Theory]
    [InlineData(5, ManufacturerStanding.Beyond)]
    [InlineData(6, ManufacturerStanding.Inside)]
    [InlineData(null, ManufacturerStanding.Silent)]
    public void The_window_stands_to_the_manufacturers_limit(
        int? limitHours,
        ManufacturerStanding expected
    )
    {
        var study = SmallStudy
            .Quiet(40)
            .Analyte(analyte =>
                analyte with
                {
                    ManufacturerLimit = limitHours is { } hours
                        ? new WindowRule(TimeSpan.FromHours(hours), "invented")
                        : null,
                }
            );

        Assert.Equal(expected, study.Sequence().Window!.ManufacturerLimit);
        Assert.Equal(
            expected == ManufacturerStanding.Beyond,
            study.Analyze().Queries.Any(query => query.Code == "modified-test")
        );
    }
}
