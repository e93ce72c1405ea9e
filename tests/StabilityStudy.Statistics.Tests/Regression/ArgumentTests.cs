using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics.Tests.Regression;

/// <summary>What no estimator of lines and associations accepts, each named in its documentation.</summary>
public sealed class ArgumentTests
{
    private static readonly double[] s_x = [10, 20, 30, 40, 50, 60];
    private static readonly double[] s_y = [11, 19, 32, 41, 52, 59];
    private static readonly double[] s_weights = [1, 1, 1, 1, 1, 1];
    private static readonly ExactPairs s_pairs = ExactPairs.Create(
        [10, 20, 30, 40, 50, 60],
        [11, 19, 32, 41, 52, 59]
    );

    private static readonly Dictionary<string, Action<double>> s_atLevel = new(
        StringComparer.Ordinal
    )
    {
        ["least squares"] = level => OrdinaryLeastSquares.Fit(s_x, s_y, level),
        ["weighted least squares"] = level => WeightedLeastSquares.Fit(s_x, s_y, s_weights, level),
        ["Deming"] = level => DemingRegression.Fit(s_x, s_y, 1, level),
        ["Deming at a level"] = level => DemingRegression.BiasAt(s_x, s_y, 1, 30, level, []),
        ["weighted Deming"] = level => WeightedDemingRegression.Fit(s_x, s_y, 1, level),
        ["weighted Deming at a level"] = level =>
            WeightedDemingRegression.BiasAt(s_x, s_y, 1, 30, level, []),
        ["Passing–Bablok"] = level => PassingBablok.Fit(s_pairs, level),
        ["Theil–Sen"] = level => TheilSen.Fit(s_pairs, level),
        ["Kendall"] = level => KendallRankCorrelation.Compute(s_pairs, level),
        ["Pearson"] = level => PearsonCorrelation.Compute(s_x, s_y, level),
        ["concordance"] = level => ConcordanceCorrelation.Compute(s_x, s_y, level),
        ["level dependence"] = level => LevelDependence.Fit(s_x, s_y, level),
    };

    private static readonly Dictionary<string, Action<double[], double[]>> s_ofValues = new(
        StringComparer.Ordinal
    )
    {
        ["least squares"] = (x, y) => OrdinaryLeastSquares.Fit(x, y, 0.95),
        ["weighted least squares"] = (x, y) =>
            WeightedLeastSquares.Fit(x, y, s_weights.AsSpan(0, x.Length), 0.95),
        ["Deming"] = (x, y) => DemingRegression.Fit(x, y, 1, 0.95),
        ["weighted Deming"] = (x, y) => WeightedDemingRegression.Fit(x, y, 1, 0.95),
        ["Pearson"] = (x, y) => PearsonCorrelation.Compute(x, y, 0.95),
        ["concordance"] = (x, y) => ConcordanceCorrelation.Compute(x, y, 0.95),
        ["level dependence"] = (x, y) => LevelDependence.Fit(x, y, 0.95),
    };

    public static TheoryData<string> AtLevel => [.. s_atLevel.Keys];

    public static TheoryData<string> OfValues => [.. s_ofValues.Keys];

    [Theory]
    [MemberData(nameof(AtLevel))]
    public void A_confidence_level_lies_between_0_and_1(string name)
    {
        s_atLevel[name](0.95);
        foreach (var level in new[] { 0, 1, -0.5, 1.5, double.NaN })
        {
            Assert.ThrowsAny<ArgumentException>(() => s_atLevel[name](level));
        }
    }

    [Theory]
    [MemberData(nameof(OfValues))]
    public void Values_are_finite_and_come_in_pairs(string name)
    {
        s_ofValues[name](s_x, s_y);
        Assert.ThrowsAny<ArgumentException>(() => s_ofValues[name](s_x, s_y[1..]));
        Assert.ThrowsAny<ArgumentException>(() => s_ofValues[name](s_x, [double.NaN, .. s_y[1..]]));
        Assert.ThrowsAny<ArgumentException>(() =>
            s_ofValues[name]([double.PositiveInfinity, .. s_x[1..]], s_y)
        );
    }

    [Fact]
    public void Without_pairs_at_all_nothing_is_computed()
    {
        Assert.Throws<ArgumentNullException>(() => PassingBablok.Fit(null!, 0.95));
        Assert.Throws<ArgumentNullException>(() => TheilSen.Fit(null!, 0.95));
        Assert.Throws<ArgumentNullException>(() => KendallRankCorrelation.Compute(null!, 0.95));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-30)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_decision_level_is_above_zero(double level)
    {
        Assert.ThrowsAny<ArgumentException>(() =>
            DemingRegression.BiasAt(s_x, s_y, 1, level, 0.95, [])
        );
        Assert.ThrowsAny<ArgumentException>(() =>
            WeightedDemingRegression.BiasAt(s_x, s_y, 1, level, 0.95, [])
        );
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(0)]
    public void A_weight_is_a_number_above_zero(double weight) =>
        Assert.ThrowsAny<ArgumentException>(() =>
            WeightedLeastSquares.Fit(s_x, s_y, [weight, .. s_weights[1..]], 0.95)
        );

    [Theory]
    [InlineData(0, 5)]
    [InlineData(5, 0)]
    [InlineData(-1, 5)]
    public void Dependence_on_the_level_needs_results_above_zero(double x, double y) =>
        Computed.Refusal(
            AssumptionCode.ValueNotPositive,
            LevelDependence.Fit([x, .. s_x[1..]], [y, .. s_y[1..]], 0.95)
        );
}
