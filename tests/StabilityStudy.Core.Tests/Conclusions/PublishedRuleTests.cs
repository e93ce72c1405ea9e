using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Conclusions;

/// <summary>
/// Published rules of stability studies, expressed with the criteria there are; the results are invented. That of 1998
/// stands with the individual criterion.
/// </summary>
public sealed class PublishedRuleTests
{
    /// <summary>Forty specimens with a baseline of 30.0 s; the delayed results take turns.</summary>
    private static SmallStudy Changes(params string[] delayed) =>
        SmallStudy.Of(
            [6],
            Enumerable.Range(0, 40).Select(i => "30.0 | " + delayed[i % delayed.Length])
        );

    /// <summary>The same, and the first so many specimens give another result.</summary>
    private static SmallStudy With(SmallStudy study, int others, Func<int, string> result) =>
        Enumerable
            .Range(0, others)
            .Aggregate(study, (changed, i) => changed.Result(i, 6, result(i)));

    /// <summary>
    /// A protocol of 2011 for a laboratory's own stability studies (from memory; the paper was not at hand): stable when
    /// the 90 % interval of the mean change lies inside ± the allowable bias and every individual change inside ± the allowable total error.
    /// </summary>
    private static SmallStudy Rule2011(SmallStudy study) =>
        study
            .Protocol(protocol =>
                protocol with
                {
                    Limits =
                    [
                        new("bias", 7.5m, null, "allowable bias, invented"),
                        new("each", 15m, null, "allowable total error, invented"),
                    ],
                }
            )
            .Criteria(
                SmallProtocol.MeanCriterion,
                SmallProtocol.EachCriterion with
                {
                    SharePercentMinimum = 100,
                    Rule = DecisionRule.PointOnly,
                }
            );

    /// <summary>
    /// Feng, Zhao, Zhao and Shao (2014), Scientific Reports 4:3868, abstract: a mean change greater than 10 %, or changes greater than 10 % in
    /// more than 25 % of samples, is a clinically relevant difference. Either part looks at the estimate alone.
    /// </summary>
    private static SmallStudy Rule2014(SmallStudy study) =>
        study
            .Protocol(protocol =>
                protocol with
                {
                    Limits =
                    [
                        new("bias", 10m, null, "Scientific Reports 4:3868"),
                        new("each", 10m, null, "Scientific Reports 4:3868"),
                    ],
                }
            )
            .Criteria(
                SmallProtocol.MeanCriterion with
                {
                    Rule = DecisionRule.PointOnly,
                },
                SmallProtocol.EachCriterion with
                {
                    SharePercentMinimum = 75,
                    Rule = DecisionRule.PointOnly,
                }
            );

    /// <summary>
    /// Kim, Park, Lim, Jeong and Lee (2021), Clinical and Experimental Thrombosis and Hemostasis 7(1), abstract: a change of more than 10 %
    /// according to the 99 % interval is a clinically relevant difference; read here as the interval of the mean inside ± 10 %.
    /// </summary>
    private static SmallStudy Rule2021(SmallStudy study) =>
        study
            .Protocol(protocol =>
                protocol with
                {
                    Limits =
                    [
                        new(
                            "bias",
                            10m,
                            null,
                            "Clinical and Experimental Thrombosis and Hemostasis 7(1)"
                        ),
                    ],
                }
            )
            .Criteria(SmallProtocol.MeanCriterion with { ConfidenceLevel = 0.99 });

    private static void Concludes(
        Conclusion expected,
        ImmutableArray<Verdict> verdicts,
        SmallStudy study
    )
    {
        var cell = study.Cell();

        Assert.Equal(verdicts, cell.Criteria.Select(result => result.Verdict));
        Assert.Equal(expected, cell.Conclusion);
    }

    [Fact]
    public void The_rule_of_2011_passes_small_changes() =>
        Concludes(
            Conclusion.Supported,
            [Verdict.Met, Verdict.Met],
            Rule2011(Changes("30.3", "29.8", "34.5", "25.5"))
        );

    [Fact]
    public void The_rule_of_2011_fails_when_the_mean_goes_beyond_the_allowable_bias() =>
        Concludes(
            Conclusion.NotSupported,
            [Verdict.NotMet, Verdict.Met],
            Rule2011(Changes("33.0", "32.8", "33.4", "33.9"))
        );

    [Fact]
    public void The_rule_of_2011_is_open_when_only_the_interval_goes_beyond() =>
        Concludes(
            Conclusion.Inconclusive,
            [Verdict.Inconclusive, Verdict.Met],
            Rule2011(Changes("30.3", "34.2", "31.0", "33.3"))
        );

    [Fact]
    public void The_rule_of_2011_fails_on_one_specimen_beyond_the_allowable_total_error() =>
        Concludes(
            Conclusion.NotSupported,
            [Verdict.Met, Verdict.NotMet],
            Rule2011(With(Changes("30.3", "29.8", "34.5", "25.5"), 1, _ => "34.6"))
        );

    [Fact]
    public void The_rule_of_2014_passes_with_a_quarter_of_specimens_beyond_ten_percent() =>
        Concludes(
            Conclusion.Supported,
            [Verdict.Met, Verdict.Met],
            Rule2014(With(Changes("30.3", "29.8", "33.0", "27.0"), 10, i => Beyond(i)))
        );

    [Fact]
    public void The_rule_of_2014_fails_with_one_specimen_more_beyond_ten_percent() =>
        Concludes(
            Conclusion.NotSupported,
            [Verdict.Met, Verdict.NotMet],
            Rule2014(With(Changes("30.3", "29.8", "33.0", "27.0"), 11, i => Beyond(i)))
        );

    /// <summary>Ten at +20 %, twenty-five at +10 %, five at −4 %: mean 10.75 %.</summary>
    [Fact]
    public void The_rule_of_2014_fails_when_the_mean_changes_by_more_than_ten_percent() =>
        Concludes(
            Conclusion.NotSupported,
            [Verdict.NotMet, Verdict.Met],
            Rule2014(With(Changes("33.0"), 15, i => i < 10 ? "36.0" : "28.8"))
        );

    [Fact]
    public void Both_parts_of_the_rule_of_2014_say_that_no_error_is_controlled() =>
        Assert.Equal(
            ["mean-alone", "share-alone"],
            Rule2014(Changes("30.3", "29.8"))
                .Cell()
                .Criteria.Select(result =>
                    result
                        .Reasons.Single(reason =>
                            reason.Name().EndsWith("-alone", StringComparison.Ordinal)
                        )
                        .Name()
                )
        );

    [Fact]
    public void The_rule_of_2021_passes_an_interval_inside_ten_percent() =>
        Concludes(
            Conclusion.Supported,
            [Verdict.Met],
            Rule2021(Changes("30.3", "29.8", "30.4", "29.9"))
        );

    [Fact]
    public void The_rule_of_2021_fails_an_interval_beyond_ten_percent() =>
        Concludes(
            Conclusion.NotSupported,
            [Verdict.NotMet],
            Rule2021(Changes("36.0", "35.8", "36.2", "36.1"))
        );

    /// <summary>Mean 9.6 %: the interval of 90 % ends below 10 %, that of 99 % does not.</summary>
    [Fact]
    public void The_rule_of_2021_asks_for_more_than_an_interval_of_ninety_percent()
    {
        var study = Changes("32.4", "33.4", "32.8");

        Concludes(Conclusion.Inconclusive, [Verdict.Inconclusive], Rule2021(study));
        Concludes(
            Conclusion.Supported,
            [Verdict.Met],
            Rule2021(study).Criteria(SmallProtocol.MeanCriterion)
        );
    }

    private static string Beyond(int specimen) => specimen % 2 == 0 ? "33.1" : "26.9";
}
