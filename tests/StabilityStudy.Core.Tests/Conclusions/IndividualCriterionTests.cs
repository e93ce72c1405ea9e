using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Conclusions;

public sealed class IndividualCriterionTests
{
    /// <summary>Smallest n for 0 to 4 outside, one-sided 95 %: exact binomial, recomputed with two independent implementations.</summary>
    public static TheoryData<int, int, int> SmallestNumbers { get; } =
        new()
        {
            { 85, 0, 19 },
            { 85, 1, 30 },
            { 85, 2, 40 },
            { 85, 3, 50 },
            { 85, 4, 59 },
            { 90, 0, 29 },
            { 90, 1, 46 },
            { 90, 2, 61 },
            { 90, 3, 76 },
            { 90, 4, 89 },
            { 95, 0, 59 },
            { 95, 1, 93 },
            { 95, 2, 124 },
            { 95, 3, 153 },
            { 95, 4, 181 },
        };

    private static IndividualResult Evaluate(
        ImmutableArray<PairRecord> pairs,
        decimal share = 85,
        Limit? limit = null
    ) =>
        Evaluate(
            SmallProtocol.EachCriterion with
            {
                SharePercentMinimum = share,
            },
            limit ?? SmallProtocol.Each,
            pairs
        );

    private static IndividualResult Evaluate(
        IndividualCriterion criterion,
        Limit limit,
        ImmutableArray<PairRecord> pairs
    )
    {
        var protocol = SmallProtocol.For(40, 6);
        return IndividualEvaluation.Evaluate(
            criterion,
            limit,
            CellEvidence.From(
                pairs,
                new(
                    protocol,
                    protocol.Analytes[0],
                    protocol.Groups[0],
                    protocol.Storages[0],
                    protocol.TimePoints[0],
                    []
                )
            )
        );
    }

    private static AgreementCount Count(string baseline, string delayed, bool beyond = true) =>
        Evaluate([
            beyond
                ? SmallPairs.Beyond(0, baseline, delayed)
                : SmallPairs.Compared(0, baseline, delayed),
        ]).Agreement;

    [Theory]
    [MemberData(nameof(SmallestNumbers))]
    public void The_smallest_number_of_specimens_meets_and_one_fewer_does_not(
        int share,
        int outside,
        int smallest
    )
    {
        var enough = Evaluate(SmallPairs.InsideAndOutside(smallest - outside, outside), share);
        var oneFewer = Evaluate(
            SmallPairs.InsideAndOutside(smallest - outside - 1, outside),
            share
        );

        Assert.Equal(Verdict.Met, enough.Verdict);
        Assert.Equal(outside, enough.MostOutside);
        Assert.Equal(Verdict.Inconclusive, oneFewer.Verdict);
    }

    [Fact]
    public void Forty_specimens_allow_two_outside_and_not_three()
    {
        Assert.Equal(Verdict.Met, Evaluate(SmallPairs.InsideAndOutside(38, 2)).Verdict);
        Assert.Equal(Verdict.Inconclusive, Evaluate(SmallPairs.InsideAndOutside(37, 3)).Verdict);
    }

    [Fact]
    public void Many_outside_refute_the_share() =>
        Assert.Equal(Verdict.NotMet, Evaluate(SmallPairs.InsideAndOutside(20, 20)).Verdict);

    [Theory]
    [InlineData("30.0", "34.5", 1)]
    [InlineData("30.0", "34.6", 0)]
    [InlineData("30.0", "25.5", 1)]
    [InlineData("30.0", "25.4", 0)]
    [InlineData("30.00", "34.50", 1)]
    public void A_change_of_exactly_fifteen_percent_is_within(
        string baseline,
        string delayed,
        int inside
    ) => Assert.Equal(inside, Count(baseline, delayed, beyond: false).Inside);

    [Fact]
    public void The_greater_of_percent_and_amount_is_allowed()
    {
        var limit = new Limit("each", 15m, 0.5m, "invented");
        ImmutableArray<PairRecord> pairs =
        [
            SmallPairs.Compared(0, "2.0", "2.5"),
            SmallPairs.Compared(1, "2.0", "2.6"),
            SmallPairs.Compared(2, "4.0", "4.6"),
            SmallPairs.Compared(3, "4.0", "4.7"),
        ];

        Assert.Equal(["S001", "S003"], Evaluate(pairs, 85, limit).Agreement.OutsideSpecimens);
    }

    [Fact]
    public void Two_results_beyond_the_same_limit_agree()
    {
        Assert.Equal(1, Count(">180", ">180").Inside);
        Assert.Equal(1, Count("<20", "<20").Inside);
    }

    [Fact]
    public void Two_results_beyond_different_limits_leave_it_open() =>
        Assert.Equal(1, Count(">150", ">180").Undecidable);

    [Theory]
    [InlineData("100", ">180")]
    [InlineData(">180", "100")]
    [InlineData("30", "<20")]
    [InlineData("<20", "30")]
    [InlineData("<20", ">180")]
    [InlineData(">180", "<20")]
    public void A_bound_that_is_far_enough_away_decides(string baseline, string delayed) =>
        Assert.Equal(1, Count(baseline, delayed).OutsideMeasured);

    [Theory]
    [InlineData("175", ">180")]
    [InlineData(">180", "175")]
    [InlineData("21", "<20")]
    [InlineData("250", ">180")]
    [InlineData("<200", ">100")]
    [InlineData(">100", "<200")]
    public void A_bound_that_allows_no_change_leaves_it_open(string baseline, string delayed) =>
        Assert.Equal(1, Count(baseline, delayed).Undecidable);

    [Fact]
    public void What_is_open_counts_outside_for_support_and_inside_for_refutation()
    {
        ImmutableArray<PairRecord> pairs =
        [
            .. SmallPairs.InsideAndOutside(20, 0),
            .. Enumerable.Range(20, 20).Select(i => SmallPairs.Beyond(i, "175", ">180")),
        ];

        var result = Evaluate(pairs);

        Assert.Equal(Verdict.Inconclusive, result.Verdict);
        Assert.Equal(20, result.Agreement.Inside);
        Assert.Equal(["share-open", "undecidable"], result.Reasons.Select(r => r.Name()));
    }

    [Fact]
    public void Results_that_are_all_beyond_the_limit_show_nothing()
    {
        var result = Evaluate([
            .. Enumerable.Range(0, 40).Select(i => SmallPairs.Beyond(i, ">180", ">180")),
        ]);

        Assert.Equal(Verdict.Inconclusive, result.Verdict);
        Assert.Equal("too-few-measured", result.Reasons[0].Name());
    }

    [Fact]
    public void Agreement_beyond_a_limit_does_not_dilute_those_outside()
    {
        // Over all 3 of 59 would do (≥ 85 % allows 4); over the 30 that were measured only one may be outside.
        var result = Evaluate([
            .. SmallPairs.InsideAndOutside(27, 3),
            .. Enumerable.Range(30, 29).Select(i => SmallPairs.Beyond(i, ">180", ">180")),
        ]);

        Assert.Equal(Verdict.Inconclusive, result.Verdict);
        Assert.Equal("agreeing-beyond-limit", result.Reasons[0].Name());
        Assert.Equal(29, result.Agreement.AgreeingBeyond);
    }

    [Fact]
    public void Agreement_beyond_a_limit_does_not_hide_a_refuted_share()
    {
        var result = Evaluate([
            .. SmallPairs.InsideAndOutside(10, 10),
            .. Enumerable.Range(20, 60).Select(i => SmallPairs.Beyond(i, ">180", ">180")),
        ]);

        Assert.Equal(Verdict.NotMet, result.Verdict);
    }

    [Theory]
    [InlineData(40, 0, Verdict.Met)]
    [InlineData(39, 1, Verdict.NotMet)]
    public void A_point_share_of_one_hundred_percent_needs_every_specimen(
        int inside,
        int outside,
        Verdict expected
    )
    {
        var result = Evaluate(
            SmallProtocol.EachCriterion with
            {
                SharePercentMinimum = 100,
                Rule = DecisionRule.PointOnly,
            },
            SmallProtocol.Each,
            SmallPairs.InsideAndOutside(inside, outside)
        );

        Assert.Equal(expected, result.Verdict);
        Assert.Contains(result.Reasons, reason => reason.Name() == "share-alone");
    }

    [Fact]
    public void A_person_counts_once_as_the_worst_of_the_draws()
    {
        var first = SmallPairs.Compared(0, "30.0", "30.0");
        var second = SmallPairs.Compared(1, "30.0", "40.0");
        var result = Evaluate([
            first,
            second with
            {
                Collected = second.Collected with { Subject = first.Subject },
            },
        ]);

        Assert.Equal((1, 0), (result.Agreement.Counted, result.Agreement.Inside));
    }

    [Fact]
    public void No_number_of_specimens_shows_a_share_of_one_hundred_percent()
    {
        var result = Evaluate(SmallPairs.InsideAndOutside(1000, 0), 100);

        Assert.Equal(Verdict.Inconclusive, result.Verdict);
        Assert.Null(result.MostOutside);
    }

    [Fact]
    public void Nothing_to_count_is_inconclusive() =>
        Assert.Equal(Verdict.Inconclusive, Evaluate([]).Verdict);

    [Theory]
    [InlineData("CLOT", 2)]
    [InlineData("NA", 2)]
    public void Failed_tubes_count_outside(string result, int allowed)
    {
        var study = SmallStudy.Quiet(40);
        for (var i = 0; i < allowed; i++)
        {
            study = study.Result(i, 6, result);
        }

        Assert.Equal(Conclusion.Supported, study.Cell().Conclusion);
        Assert.Equal(Conclusion.Inconclusive, study.Result(allowed, 6, result).Cell().Conclusion);
    }

    [Fact]
    public void Removing_the_rows_of_failed_tubes_gains_nothing()
    {
        var study = SmallStudy.Quiet(40).WithoutRow(0, 6).WithoutRow(1, 6).WithoutRow(2, 6);

        var cell = study.Cell();

        Assert.Equal(Conclusion.Inconclusive, cell.Conclusion);
        Assert.Equal(3, cell.Criteria.OfType<IndividualResult>().Single().Agreement.Undecidable);
    }

    /// <summary>
    /// Leeming 1998: the mean INR of stored blood hardly moved, while single INRs moved by more than 0.5. The figures here
    /// are invented after that observation.
    /// </summary>
    [Fact]
    public void A_mean_that_stays_does_not_hide_single_changes()
    {
        var study = SmallStudy
            .Of(
                [6],
                Enumerable
                    .Range(0, 40)
                    .Select(i =>
                        i % 4 == 0 ? (i % 8 == 0 ? "2.5 | 3.1" : "2.5 | 1.9")
                        : i % 2 == 0 ? "2.5 | 2.6"
                        : "2.5 | 2.4"
                    )
            )
            .Analyte(analyte => analyte with { MeasuringInterval = null })
            .Protocol(protocol =>
                protocol with
                {
                    Limits = [SmallProtocol.Bias, new Limit("each", null, 0.5m, "invented")],
                }
            );

        var cell = study.Cell();

        Assert.Equal(Verdict.Met, cell.Criteria[0].Verdict);
        Assert.NotEqual(Verdict.Met, cell.Criteria[1].Verdict);
        Assert.NotEqual(Conclusion.Supported, cell.Conclusion);
    }
}
