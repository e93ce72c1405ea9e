using StabilityStudy.Statistics.Regression;
using static StabilityStudy.Statistics.Tests.Regression.RegressionReference;

namespace StabilityStudy.Statistics.Tests.Regression;

public class PearsonCorrelationTests
{
    public static TheoryData<string> CaseNames => [.. Cases];

    [Theory]
    [MemberData(nameof(CaseNames))]
    public void Coefficient_and_interval_agree_with_R(string name)
    {
        var expected = Expected("computed/regression_expected.csv", name);
        var pairs = Pairs(name);

        var answer = PearsonCorrelation.Compute(pairs.X.AsSpan(), pairs.Y.AsSpan(), 0.95).Value!;

        Close(expected["pearson"], answer.Pearson);
        Close(expected["pearson_lower"], answer.Lower);
        Close(expected["pearson_upper"], answer.Upper);
    }

    [Fact]
    public void Exact_line_has_coefficient_one_without_width()
    {
        var answer = PearsonCorrelation.Compute([1, 2, 3, 4], [2, 4, 6, 8], 0.95).Value!;

        Assert.Equal(new CorrelationCoefficient(1, 1, 1), answer);
    }

    [Fact]
    public void Three_pairs_or_no_spread_have_no_interval()
    {
        Assert.Equal(
            AssumptionCode.TooFewValues,
            PearsonCorrelation.Compute([1, 2, 3], [1, 3, 2], 0.95).NotComputable?.Code
        );
        Assert.Equal(
            AssumptionCode.ConstantBaseline,
            PearsonCorrelation.Compute([1, 1, 1, 1], [1, 3, 2, 4], 0.95).NotComputable?.Code
        );
        Assert.Equal(
            AssumptionCode.ZeroSpread,
            PearsonCorrelation.Compute([1, 3, 2, 4], [1, 1, 1, 1], 0.95).NotComputable?.Code
        );
    }
}
