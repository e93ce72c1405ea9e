using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Analysis;

/// <summary>What the drift over all time points shows and no single one does.</summary>
public sealed class SequenceQueryTests
{
    /// <summary>Specimens of 30.0 with one of two delayed results at each time point, in turn.</summary>
    private static SmallStudy Alternating(
        int[] hours,
        params (string Even, string Odd)[] delayed
    ) =>
        SmallStudy.Of(
            [.. hours],
            Enumerable
                .Range(0, 40)
                .Select(i =>
                    string.Join(
                        " | ",
                        delayed.Select(item => i % 2 == 0 ? item.Even : item.Odd).Prepend("30.0")
                    )
                )
        );

    private static string[] Messages(SmallStudy study, string code) =>
        [
            .. study
                .Analyze()
                .Queries.Where(query => query.Code == code)
                .Select(query => query.Message),
        ];

    /// <summary>7.0 % from 40 minutes to six hours is 0.875 % in the 40 minutes before, with one slope.</summary>
    [Fact]
    public void What_the_shape_puts_before_the_baseline_can_take_a_supported_mean_over_the_limit()
    {
        var study = Alternating([6], ("32.0", "32.2"));

        Assert.Equal(Conclusion.Supported, study.Cell(6).Conclusion);
        var message = Assert.Single(Messages(study, "change-before-baseline"));
        Assert.Contains("tested 40 min (mean) after collection", message, StringComparison.Ordinal);
        Assert.Matches(
            @"With the \+0\.8[78] % that the declared shape puts before them, unmeasured, the interval reaches \+[78]\.[0-9]+ % at 6 h: not inside ±7\.5 %",
            message
        );
    }

    [Fact]
    public void A_mean_that_stays_inside_with_it_raises_nothing()
    {
        Assert.Empty(Messages(Alternating([6], ("31.7", "31.9")), "change-before-baseline"));
    }

    [Fact]
    public void A_change_that_turns_back_is_named()
    {
        var message = Assert.Single(
            Messages(Alternating([6, 12], ("36.0", "36.2"), ("33.0", "33.2")), "change-turns-back")
        );

        Assert.Contains("+20.3 % at 6 h and +10.3 % at 12 h", message, StringComparison.Ordinal);
        Assert.Empty(
            Messages(Alternating([6, 12], ("31.0", "31.2"), ("33.0", "33.2")), "change-turns-back")
        );
        Assert.Single(
            Messages(Alternating([6, 12], ("24.0", "24.2"), ("27.0", "27.2")), "change-turns-back")
        );
    }

    [Theory]
    [InlineData("LS2", true)]
    [InlineData("LS1", false)]
    [InlineData("", false)]
    public void Delayed_tubes_that_somebody_else_tested_throughout_are_named(
        string late,
        bool expected
    )
    {
        var study = SmallStudy
            .Quiet(40)
            .Rows(row => row with { Operator = row.Occasion.IsBaseline ? "LS1" : late });

        Assert.Equal(expected, Messages(study, "operator-confounded-with-delay").Length == 1);
    }

    [Fact]
    public void One_delayed_tube_that_the_other_person_tested_is_enough_to_tell()
    {
        var study = SmallStudy
            .Quiet(40)
            .Rows(row => row with { Operator = row.Occasion.IsBaseline ? "LS1" : "LS2" })
            .Row(3, 6, row => row with { Operator = "LS1" });

        Assert.Empty(Messages(study, "operator-confounded-with-delay"));
    }

    /// <summary>All of the change comes before 6 h: a straight line puts too little there and too much at 12 h.</summary>
    [Fact]
    public void A_curve_that_misses_what_was_measured_is_a_misfit()
    {
        var study = Alternating([6, 8, 12], ("33.0", "33.2"), ("33.0", "33.2"), ("33.0", "33.2"));

        Assert.Equal(
            [SmallProtocol.At(6), SmallProtocol.At(8), SmallProtocol.At(12)],
            study.Sequence().Drift.Misfits
        );
        Assert.Empty(SmallStudy.Quiet(40, 6, 8, 12).Sequence().Drift.Misfits);
    }
}
