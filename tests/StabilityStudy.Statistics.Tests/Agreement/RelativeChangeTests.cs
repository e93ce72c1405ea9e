using CsCheck;
using StabilityStudy.Statistics.Agreement;

namespace StabilityStudy.Statistics.Tests.Agreement;

public sealed class RelativeChangeTests
{
    private static readonly Gen<decimal> s_tenths = Gen.Int[1, 5000].Select(t => t / 10m);

    [Fact]
    public void Percent_is_relative_to_the_first_member()
    {
        var pairs = ExactPairs.Create([40.0m, 20m, 0.3m], [43.0m, 19m, 0.3m]);

        Assert.Equal([7.5, -5, 0], Computed.Value(RelativeChange.Percent(pairs)).Values);
    }

    [Fact]
    public void Equal_changes_on_different_levels_are_ties()
    {
        var pairs = ExactPairs.Create([0.3m, 3m, 70m, 0.7m], [0.33m, 3.3m, 77m, 0.77m]);

        Assert.Single(Computed.Value(RelativeChange.Percent(pairs)).Values.Distinct());
        Assert.Single(Computed.Value(RelativeChange.LogRatio(pairs)).Values.Distinct());
    }

    [Fact]
    public void Log_ratio_is_a_hundred_natural_logarithms()
    {
        var pairs = ExactPairs.Create([2m, 4m], [4m, 4m]);

        var values = Computed.Value(RelativeChange.LogRatio(pairs)).Values;

        Close.Relative(69.314718055994531, values[0], 1e-15);
        Assert.Equal(0, values[1]);
    }

    [Fact]
    public void Swapped_pairs_turn_the_log_ratio() =>
        Gen.Select(s_tenths, s_tenths)
            .Sample(
                (x, y) =>
                    Close.Absolute(
                        -Computed
                            .Value(RelativeChange.LogRatio(ExactPairs.Create([x], [y])))
                            .Values[0],
                        Computed.Value(RelativeChange.LogRatio(ExactPairs.Create([y], [x]))).Values[
                            0
                        ],
                        1e-12
                    )
            );

    [Fact]
    public void Another_decimal_scale_gives_the_same_bits() =>
        Gen.Select(s_tenths, s_tenths, Gen.Int[0, 2].Select(i => new[] { 10m, 0.1m, 1.00m }[i]))
            .Sample(
                (x, y, factor) =>
                {
                    var pairs = ExactPairs.Create([x], [y]);
                    var scaled = ExactPairs.Create([x * factor], [y * factor]);
                    Assert.Equal(
                        Computed.Value(RelativeChange.Percent(pairs)).Values,
                        Computed.Value(RelativeChange.Percent(scaled)).Values
                    );
                    Assert.Equal(
                        Computed.Value(RelativeChange.LogRatio(pairs)).Values,
                        Computed.Value(RelativeChange.LogRatio(scaled)).Values
                    );
                }
            );

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void A_first_member_that_is_not_positive_is_refused(int x)
    {
        var pairs = ExactPairs.Create([1m, x], [1m, 1m]);

        Computed.Refusal(AssumptionCode.ValueNotPositive, RelativeChange.Percent(pairs));
        Computed.Refusal(AssumptionCode.ValueNotPositive, RelativeChange.LogRatio(pairs));
    }

    [Fact]
    public void A_second_member_of_zero_has_a_percent_change_but_no_logarithm()
    {
        var pairs = ExactPairs.Create([5m], [0m]);

        Assert.Equal(-100, Computed.Value(RelativeChange.Percent(pairs)).Values[0]);
        Computed.Refusal(AssumptionCode.ValueNotPositive, RelativeChange.LogRatio(pairs));
    }

    [Fact]
    public void One_zero_among_many_second_members_refuses_every_logarithm()
    {
        var pairs = ExactPairs.Create([5m, 6m, 7m], [5m, 0m, 7m]);

        Computed.Refusal(AssumptionCode.ValueNotPositive, RelativeChange.LogRatio(pairs));
    }

    [Fact]
    public void No_pairs_have_no_changes() =>
        Assert.Empty(Computed.Value(RelativeChange.Percent(ExactPairs.Create([], []))).Values);
}
