using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class ConclusionSentenceTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    [Fact]
    public void A_supported_window_names_its_scope_and_today_s_window_of_the_group()
    {
        var line = FirstPageParts.Verdict(
            StudyRows.Analyze(
                With(analyte =>
                    analyte with
                    {
                        GroupWindows =
                        [
                            new GroupWindow("none", new WindowRule(TimeSpan.FromHours(3), "rule")),
                        ],
                    }
                ),
                OddStudies.Specimens(40, "none")
            )
        );

        Assert.Equal(
            "By this study's evidence, testing aPTT (whole blood, closed, 18 to 25 °C; No anticoagulant) is supported up to 8 h after collection; today's window is 3 h. The change counts from collection: each specimen's value then was computed from its own baseline delay, taking the change to grow with the logarithm of time; a course that is steeper at first is not covered.",
            line.Sentence
        );
    }

    [Fact]
    public void A_window_that_is_not_longer_than_today_s_says_so() =>
        Assert.Contains(
            "this is shorter than today's window of 12 h",
            FirstPageParts
                .Verdict(
                    StudyRows.Analyze(
                        With(analyte =>
                            analyte with
                            {
                                StandardWindow = new WindowRule(TimeSpan.FromHours(12), "rule"),
                            }
                        ),
                        OddStudies.Specimens(40, "none")
                    )
                )
                .Sentence,
            Comparison
        );

    [Theory]
    [InlineData(4, "modified test: beyond the manufacturer's limit of 4 h")]
    [InlineData(8, "within the manufacturer's limit of 8 h")]
    [InlineData(null, "manufacturer's limit not stated")]
    public void The_manufacturer_s_limit_stands_beside_the_conclusion(int? hours, string words) =>
        Assert.EndsWith(
            " · " + words,
            FirstPageParts
                .Verdict(
                    StudyRows.Analyze(
                        With(analyte =>
                            analyte with
                            {
                                ManufacturerLimit = hours is { } number
                                    ? new WindowRule(TimeSpan.FromHours(number), "rule")
                                    : null,
                            }
                        ),
                        OddStudies.Specimens(40, "none")
                    )
                )
                .Subject,
            Comparison
        );

    [Fact]
    public void Without_a_supported_window_today_s_is_not_confirmed()
    {
        var line = FirstPageParts.Verdict(OddStudies.All["no pair"]);

        Assert.Equal(VerdictShape.Inconclusive, line.Shape);
        Assert.Contains(
            "no window beyond today's 4 h is supported for aPTT",
            line.Sentence,
            Comparison
        );
        Assert.EndsWith(
            "Today's 4 h was not tested and is not confirmed.",
            line.Sentence,
            Comparison
        );
    }

    [Fact]
    public void Today_s_window_that_was_tested_in_vain_is_named() =>
        Assert.EndsWith(
            "Today's window of 6 h was tested: inconclusive.",
            FirstPageParts
                .Verdict(
                    StudyRows.Analyze(
                        With(analyte =>
                            analyte with
                            {
                                StandardWindow = new WindowRule(TimeSpan.FromHours(6), "rule"),
                            }
                        ),
                        OddStudies.Specimens(5, "none")
                    )
                )
                .Sentence,
            Comparison
        );

    [Fact]
    public void No_pair_is_said_as_no_usable_pair() =>
        Assert.Contains(
            "At 6 h the data do not decide: no usable pair",
            FirstPageParts.Verdict(OddStudies.All["no pair"]).Sentence,
            Comparison
        );

    [Fact]
    public void A_single_collection_day_is_singular() =>
        Assert.Contains(
            "but only 1 collection day, at least 5 required",
            FirstPageParts
                .Verdict(
                    StudyRows.Analyze(
                        StudyRows.Protocol(),
                        Enumerable
                            .Range(1, 30)
                            .Select(number => new SpecimenPlan(10 * number, "none", "wb-rt", 100))
                    )
                )
                .Sentence,
            Comparison
        );

    [Fact]
    public void A_bound_below_the_required_share_is_given_with_both_figures()
    {
        // 0.05^(1/18) = 0.8467.
        var sentence = FirstPageParts
            .Verdict(StudyRows.Analyze(StudyRows.Protocol(), OddStudies.Specimens(18, "none")))
            .Sentence;

        Assert.Contains(
            "18 of 18 specimens within ±15 %: lower bound 84.7 %, below the required 85 %",
            sentence,
            Comparison
        );
    }

    [Fact]
    public void A_mean_that_speaks_against_it_is_given_with_its_interval() =>
        Assert.Matches(
            @"At 6 h the data speak against it: mean change \+\d+\.\d+ % \(90 % interval \+\d+\.\d+ to \+\d+\.\d+ %\) lies wholly beyond ±0\.1 %",
            FirstPageParts
                .Verdict(
                    StudyRows.Analyze(
                        StudyRows.Protocol() with
                        {
                            Limits =
                            [
                                new Limit("bias", 0.1m, null, "invented"),
                                new Limit("each", 15m, null, "invented"),
                            ],
                        },
                        OddStudies.Specimens(40, "none")
                    )
                )
                .Sentence
        );

    [Fact]
    public void A_doubt_of_the_cell_is_the_reason()
    {
        var analysis = FirstPageParts.WithCell(
            OddStudies.All["40 pairs"],
            0,
            cell =>
                cell with
                {
                    Conclusion = Conclusion.Inconclusive,
                    Doubts = [new TooManyLeftOutReason(13, 40, 20)],
                }
        );
        var sequence = analysis.Sequences[0] with { Window = null };

        Assert.Contains(
            "At 6 h the data do not decide: 13 of 40 specimens left out (32.5 %), at most 20 % allowed: what is left out may be what speaks against the window.",
            FirstPageParts.Verdict(analysis with { Sequences = [sequence] }).Sentence,
            Comparison
        );
    }

    private static StudyProtocol With(Func<Analyte, Analyte> otherwise)
    {
        var protocol = StudyRows.Protocol();
        return protocol with { Analytes = [otherwise(protocol.Analytes[0])] };
    }
}
