using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Tests.Conclusions;

public sealed class BiasCriterionTests
{
    private static BiasResult Bias(SmallStudy study) =>
        study.Cell().Criteria.OfType<BiasResult>().Single();

    /// <summary>Forty specimens of 30.0 with the changes in turn.</summary>
    private static SmallStudy Changes(params string[] delayed) =>
        SmallStudy.Of(
            [6],
            Enumerable.Range(0, 40).Select(i => "30.0 | " + delayed[i % delayed.Length])
        );

    /// <summary>Both tests of each pair in one run, which the protocol lets last the six hours between them.</summary>
    private static SmallStudy InOneRun() =>
        SmallStudy
            .Quiet(40)
            .Protocol(protocol => protocol with { OneRunWithin = TimeSpan.FromHours(6) })
            .Rows(row => row with { Run = "R" });

    private static string[] Codes(SmallStudy study) =>
        [.. Bias(study).Reasons.Select(reason => reason.Name())];

    [Fact]
    public void An_interval_inside_the_limits_is_met() =>
        Assert.Equal(Verdict.Met, Bias(SmallStudy.Quiet(40)).Verdict);

    [Fact]
    public void An_interval_beyond_the_limit_is_not_met()
    {
        Assert.Equal(Verdict.NotMet, Bias(Changes("34.0", "34.2", "33.8")).Verdict);
        Assert.Equal(Verdict.NotMet, Bias(Changes("26.0", "26.2", "25.8")).Verdict);
    }

    [Fact]
    public void An_interval_that_reaches_the_limit_is_inconclusive() =>
        Assert.Equal(Verdict.Inconclusive, Bias(Changes("32.2", "31.2", "33.2")).Verdict);

    [Theory]
    [InlineData("32.25")]
    [InlineData("27.75")]
    public void An_end_of_the_interval_exactly_on_the_limit_is_not_inside(string delayed) =>
        Assert.DoesNotContain("interval-inside", Codes(Changes(delayed)));

    [Fact]
    public void The_share_scale_puts_the_limit_at_one()
    {
        var study = Changes("32.25")
            .Criteria(SmallProtocol.MeanCriterion with { Scale = ChangeScale.Share });

        Assert.Equal(1.0, Bias(study).Mean.Value!.Mean);
        Assert.DoesNotContain("interval-inside", Codes(study));
    }

    [Fact]
    public void Fewer_collection_days_than_the_minimum_are_inconclusive()
    {
        var study = SmallStudy.Quiet(40).Protocol(protocol => protocol with { MinimumDays = 11 });

        Assert.Equal(Verdict.Inconclusive, Bias(study).Verdict);
        Assert.Equal("too-few-days", Codes(study)[0]);
        Assert.Equal(
            Verdict.Met,
            Bias(study.Protocol(protocol => protocol with { MinimumDays = 10 })).Verdict
        );
    }

    [Fact]
    public void One_run_for_both_results_of_each_pair_is_enough_but_the_days_are_still_asked_for()
    {
        Assert.Equal(Verdict.Met, Bias(InOneRun()).Verdict);
        Assert.Equal(
            "too-few-days",
            Codes(InOneRun().Protocol(protocol => protocol with { MinimumDays = 11 }))[0]
        );
    }

    [Fact]
    public void Delayed_tubes_saved_up_for_few_runs_are_inconclusive()
    {
        var study = SmallStudy
            .Quiet(40)
            .Rows(row =>
                row.Occasion.IsBaseline ? row : row with { Run = "L" + (row.SourceRow % 4) }
            );
        var few = Assert.IsType<TooFewRunsReason>(Bias(study).Reasons[0]);

        Assert.Equal((IntervalSource.DelayedRuns, 2, 5), (few.Of, few.Runs, few.Required));
        Assert.Equal(Verdict.Inconclusive, Bias(study).Verdict);
        Assert.Equal(
            "too-few-runs",
            study.Cell().Criteria.OfType<IndividualResult>().Single().Reasons[0].Name()
        );
    }

    [Fact]
    public void Results_without_a_run_code_share_the_run_of_their_day_and_instrument()
    {
        var study = SmallStudy.Quiet(40).Rows(row => row with { Run = "" });
        var mean = Bias(study).Mean.Value!;

        Assert.Equal(10, mean.Over(IntervalSource.BaselineRuns)!.Clusters);
        Assert.Equal(10, mean.Over(IntervalSource.DelayedRuns)!.Clusters);
        Assert.Equal(
            20,
            Bias(study.Rows(row => row with { Instrument = "AN" + (row.SourceRow / 20 % 2) }))
                .Mean.Value!.Over(IntervalSource.DelayedRuns)!
                .Clusters
        );
    }

    [Fact]
    public void Averaged_results_of_several_runs_join_these_runs()
    {
        // Two replicates of every delayed result: one in a run of its own, the other in a run that all share.
        var study = SmallStudy.Quiet(40).Protocol(protocol => protocol with { Replicates = 2 });
        var twice = new SmallStudy(
            study.Inputs with
            {
                Results =
                [
                    .. study.Inputs.Results.SelectMany(row =>
                        new[]
                        {
                            row.Occasion.IsBaseline ? row : row with { Run = row.Specimen },
                            row with
                            {
                                Replicate = 2,
                                SourceRow = row.SourceRow + 1000,
                                Run = row.Occasion.IsBaseline ? row.Run : "shared",
                            },
                        }
                    ),
                ],
            }
        );

        Assert.Equal("too-few-runs", Codes(twice)[0]);
    }

    [Fact]
    public void The_equivalence_test_is_the_one_over_persons_where_they_are_least_favorable()
    {
        // Means of three persons: 0, 5 and 5 %, so (10/3 − 7.5)/(5/3) = −2.5 with 2 degrees of freedom: p = ½ − 2.5/(2·√8.25).
        var study = SmallStudy
            .Of(
                [6],
                Enumerable
                    .Range(0, 40)
                    .Select(i =>
                        "30.0 | "
                        + (
                            i % 3 > 0 ? "31.5"
                            : i % 2 > 0 ? "30.3"
                            : "29.7"
                        )
                    )
            )
            .Tubes(tube =>
                tube with
                {
                    Subject =
                        "P"
                        + (
                            int.Parse(
                                tube.Specimen[1..],
                                System.Globalization.CultureInfo.InvariantCulture
                            ) % 3
                        ),
                }
            )
            .Protocol(protocol => protocol with { RepeatDraws = RepeatDraws.OneCluster });

        var bias = Bias(study);

        Assert.Equal(Verdict.Inconclusive, bias.Verdict);
        Assert.Equal(IntervalSource.Persons, bias.Mean.Value!.DecidedBy);
        Assert.Equal(0.5 - (2.5 / (2 * Math.Sqrt(8.25))), bias.Equivalence.Value!.PValue, 1e-12);
    }

    [Theory]
    [InlineData("")]
    [InlineData("other")]
    public void One_pair_without_a_common_run_is_enough_to_ask_for_runs(string run) =>
        Assert.Equal("too-few-runs", Codes(InOneRun().Row(7, 6, row => row with { Run = run }))[0]);

    [Fact]
    public void A_run_that_lasts_for_hours_is_not_one_run()
    {
        var study = InOneRun()
            .Protocol(protocol => protocol with { OneRunWithin = TimeSpan.FromHours(5) });

        Assert.Equal("too-few-runs", Codes(study)[0]);
    }

    [Fact]
    public void A_run_on_two_instruments_lots_or_calibrations_is_not_one_run()
    {
        Assert.Equal(
            "too-few-runs",
            Codes(InOneRun().Row(7, 6, row => row with { Instrument = "AN2" }))[0]
        );
        Assert.Equal(
            "too-few-runs",
            Codes(InOneRun().Row(7, 6, row => row with { Lot = "R2" }))[0]
        );
        Assert.Equal(
            "too-few-runs",
            Codes(InOneRun().Row(7, 6, row => row with { Calibration = "C2" }))[0]
        );
    }

    [Fact]
    public void One_collection_day_is_too_few_whatever_the_protocol_asks()
    {
        var study = SmallStudy.Quiet(10, 6).Protocol(protocol => protocol with { MinimumDays = 1 });
        var one = study.Tubes(tube =>
            tube with
            {
                CollectedAt = tube.CollectedAt.AddDays(-tube.CollectedAt.Day + 2),
                SpunAt = tube.SpunAt?.AddDays(-tube.CollectedAt.Day + 2),
            }
        );
        var days = Inputs(one);

        Assert.Equal("too-few-days", Codes(days)[0]);
    }

    private static SmallStudy Inputs(SmallStudy study) =>
        study.Rows(row =>
            row with
            {
                TestedAt = row.TestedAt?.AddDays(-row.TestedAt.Value.Day + 2),
            }
        );

    [Fact]
    public void The_mean_alone_can_be_the_rule_and_is_labelled()
    {
        var study = Changes("32.2", "31.2", "33.2")
            .Criteria(SmallProtocol.MeanCriterion with { Rule = DecisionRule.PointOnly });

        Assert.Equal(Verdict.Met, Bias(study).Verdict);
        Assert.Equal(["mean-alone"], Codes(study));
    }

    [Fact]
    public void The_shown_test_is_that_of_the_days_when_these_say_less()
    {
        // Ten days, each with a change of its own: the day means vary far more than specimens of one day do.
        var study = SmallStudy.Of(
            [6],
            Enumerable
                .Range(0, 40)
                .Select(i => FormattableString.Invariant($"30.0 | {30 + i % 10 * 0.3m:0.0}"))
        );
        var bias = Bias(study);
        var mean = bias.Mean.Value!;

        Assert.True(
            mean.Over(IntervalSource.CollectionDays)!.StandardError > mean.BySpecimen.StandardError
        );
        Assert.True(
            bias.Equivalence.Value!.PValue
                > TwoOneSidedTests
                    .Compute(mean.Mean, mean.BySpecimen.StandardError, 39, -7.5, 7.5)
                    .Value!.PValue
        );
    }

    [Fact]
    public void Changes_that_are_all_the_same_tell_only_the_reporting_increment() =>
        Assert.Equal("same-changes", Codes(Changes("30.0"))[0]);

    [Fact]
    public void The_same_change_at_different_baselines_has_no_spread_either()
    {
        var study = SmallStudy.Of(
            [6],
            Enumerable.Range(0, 40).Select(i => $"{30 + i % 5}.0 | {30 + i % 5}.1")
        );

        Assert.Equal(Verdict.Inconclusive, Bias(study).Verdict);
        Assert.Equal("same-changes", Codes(study)[0]);
    }

    [Fact]
    public void Skewness_lengthens_the_interval_on_its_side_and_decides_nothing_by_itself()
    {
        var study = Changes("30.1", "30.1", "30.0", "30.1", "30.0", "30.1", "30.0", "31.5");
        var mean = Bias(study).Mean.Value!;

        Assert.True(mean.Stretch.Skewness > 1);
        Assert.True(mean.Stretch.Upward > 1);
        Assert.Equal(1, mean.Stretch.Downward);
        Assert.True(
            mean.Upper
                >= mean.BySpecimen.Mean
                    + (mean.Stretch.Upward * (mean.BySpecimen.Upper - mean.BySpecimen.Mean))
                    - 1e-12
        );
        Assert.Equal(Verdict.Met, Bias(study).Verdict);
    }

    [Fact]
    public void Two_pairs_are_too_few_to_see_skewness()
    {
        var study = SmallStudy
            .Of([6], ["30.0 | 30.1", "30.0 | 30.2"])
            .Protocol(protocol => protocol with { MinimumDays = 2 });

        Assert.Equal(Verdict.Inconclusive, Bias(study).Verdict);
        Assert.Contains("too-few-values", Codes(study));
    }

    [Fact]
    public void A_limit_that_says_nothing_on_the_scale_is_inconclusive()
    {
        var study = SmallStudy
            .Quiet(40)
            .Protocol(protocol =>
                protocol with
                {
                    Limits = [new Limit("bias", null, 2m, "invented"), SmallProtocol.Each],
                }
            );

        Assert.Equal(["limit-not-on-scale"], Codes(study));
        Assert.Null(Bias(study).UpperLimit);
        Assert.Equal(Verdict.Inconclusive, Bias(study).Verdict);
    }

    [Fact]
    public void A_share_of_an_allowance_with_an_amount_bears_a_baseline_of_zero()
    {
        var result = OneBaselineOfZero(ChangeScale.Share, new Limit("bias", 7.5m, 2m, "invented"));

        Assert.Equal(Verdict.Met, result.Verdict);
    }

    [Fact]
    public void A_refused_mean_still_names_its_limits()
    {
        var result = OneBaselineOfZero(ChangeScale.LogRatio, SmallProtocol.Bias);

        Assert.Equal(100 * Math.Log(1 - 0.075), result.LowerLimit!.Value, 12);
        Assert.Equal(100 * Math.Log(1 + 0.075), result.UpperLimit!.Value, 12);
    }

    [Theory]
    [InlineData(ChangeScale.Percent)]
    [InlineData(ChangeScale.Share)]
    [InlineData(ChangeScale.LogRatio)]
    public void A_baseline_of_zero_is_inconclusive_on_a_relative_scale(ChangeScale scale)
    {
        var result = OneBaselineOfZero(scale, SmallProtocol.Bias);

        Assert.Equal(["value-not-positive"], result.Reasons.Select(reason => reason.Name()));
    }

    // The reading of a study stops at a result of zero, so the pairs are made directly.
    private static BiasResult OneBaselineOfZero(ChangeScale scale, Limit limit)
    {
        var protocol = SmallProtocol.For(40, 6) with
        {
            Limits = [limit, SmallProtocol.Each],
            Criteria = [SmallProtocol.MeanCriterion with { Scale = scale }],
        };
        var pairs = Enumerable
            .Range(0, 40)
            .Select(i =>
                i == 3
                    ? SmallPairs.Compared(i, "0.0", "0.1", i % 10)
                    : SmallPairs.Compared(i, "30.0", i % 2 == 0 ? "30.1" : "30.2", i % 10)
            );
        return Assert.IsType<BiasResult>(
            Assert.Single(
                CellEvaluation.Evaluate(
                    [.. pairs],
                    new CellContext(
                        protocol,
                        protocol.Analytes[0],
                        protocol.Groups[0],
                        protocol.Storages[0],
                        protocol.TimePoints[0],
                        []
                    )
                )
            )
        );
    }

    [Fact]
    public void A_mean_that_passes_while_tubes_failed_does_not_support_by_itself()
    {
        var study = SmallStudy.Quiet(40).Criteria(SmallProtocol.MeanCriterion).Result(0, 6, "CLOT");

        Assert.Equal(Conclusion.Inconclusive, study.Cell().Conclusion);
        Assert.Equal("uncounted-pairs", Codes(study)[0]);
    }

    [Fact]
    public void Support_by_the_mean_alone_is_exposed()
    {
        var study = SmallStudy.Quiet(40).Criteria(SmallProtocol.MeanCriterion);

        Assert.Equal(Conclusion.Supported, study.Cell().Conclusion);
        Assert.Contains(study.Analyze().Queries, query => query.Code == "supported-by-mean-only");
    }

    [Fact]
    public void A_share_on_few_days_is_inconclusive()
    {
        var study = SmallStudy
            .Quiet(40)
            .Criteria(SmallProtocol.EachCriterion)
            .Protocol(protocol => protocol with { MinimumDays = 11 });

        Assert.Equal(Conclusion.Inconclusive, study.Cell().Conclusion);
        Assert.Equal("too-few-days", study.Cell().Criteria[0].Reasons[0].Name());
    }
}
