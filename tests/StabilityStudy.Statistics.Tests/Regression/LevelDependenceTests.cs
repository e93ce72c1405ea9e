using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Regression;

/// <summary>Change against level: the line of R (scripts/percentiles.R) and the rate at which it finds what is not there.</summary>
public sealed class LevelDependenceTests
{
    private static readonly ReferenceTable s_pairs = ReferenceTable.Read(
        "computed/regression_pairs.csv"
    );

    private static readonly ReferenceTable s_expected = ReferenceTable.Read(
        "computed/level_dependence.csv"
    );

    public static TheoryData<string> Cases =>
        [
            .. Enumerable
                .Range(0, s_expected.Count)
                .Select(row => s_expected.Text(row, "case"))
                .Distinct(StringComparer.Ordinal),
        ];

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_line_is_that_of_R(string name)
    {
        var rows = Enumerable
            .Range(0, s_pairs.Count)
            .Where(row => s_pairs.Says(row, "case", name))
            .ToArray();
        double Expected(string quantity) =>
            s_expected.Number(
                Enumerable
                    .Range(0, s_expected.Count)
                    .Single(row =>
                        s_expected.Says(row, "case", name)
                        && s_expected.Says(row, "quantity", quantity)
                    ),
                "value"
            );

        var line = Computed.Value(
            LevelDependence.Fit(
                [.. rows.Select(row => s_pairs.Number(row, "x"))],
                [.. rows.Select(row => s_pairs.Number(row, "y"))],
                0.95
            )
        );

        Close.Absolute(Expected("slope"), line.Slope.Value, 1e-9);
        Close.Absolute(Expected("lower"), line.Slope.Lower, 1e-9);
        Close.Absolute(Expected("upper"), line.Slope.Upper, 1e-9);
        Close.Absolute(Expected("intercept"), line.Intercept.Value, 1e-9);
    }

    /// <summary>Between-specimen SD 6 %, CV 3 % twice, no dependence: 5 of 100 and not 52, as for change against the baseline.</summary>
    [Fact]
    public void A_dependence_that_is_not_there_is_found_at_its_stated_rate()
    {
        const int Studies = 2000;
        var random = new SeededRandom(41);
        double Draw() => Normal.Quantile(random.NextDouble());
        var (byLevel, byBaseline) = (0, 0);
        for (var study = 0; study < Studies; study++)
        {
            double[] truth = [.. Enumerable.Range(0, 40).Select(_ => 30 * Math.Exp(0.06 * Draw()))];
            double[] x = [.. truth.Select(value => value * Math.Exp(0.03 * Draw()))];
            double[] y = [.. truth.Select(value => value * Math.Exp(0.03 * Draw()))];
            double[] logarithm = [.. x.Select(value => Math.Log(value))];
            double[] change = [.. y.Zip(x, (b, a) => Math.Log(b / a))];
            byLevel += Finds(LevelDependence.Fit(x, y, 0.95)) ? 1 : 0;
            byBaseline += Finds(OrdinaryLeastSquares.Fit(logarithm, change, 0.95)) ? 1 : 0;
        }

        Assert.InRange(byLevel / (double)Studies, 0.05 - 0.015, 0.05 + 0.015);
        Assert.InRange(byBaseline / (double)Studies, 0.45, 0.60);
    }

    /// <summary>2.4 is the product of each pair; its logarithms differ in the last digit.</summary>
    [Fact]
    public void One_level_has_no_dependence_on_it() =>
        Computed.Refusal(
            AssumptionCode.ConstantBaseline,
            LevelDependence.Fit([1.2, 2.4, 0.8], [2, 1, 3], 0.95)
        );

    [Fact]
    public void No_pair_is_too_few() =>
        Computed.Refusal(AssumptionCode.TooFewValues, LevelDependence.Fit([], [], 0.95));

    [Fact]
    public void Logarithms_need_results_above_zero() =>
        Computed.Refusal(
            AssumptionCode.ValueNotPositive,
            LevelDependence.Fit([1, 2, 3], [1, 0, 3], 0.95)
        );

    private static bool Finds(Estimate<LineFit> estimate)
    {
        var slope = Computed.Value(estimate).Slope;
        return slope.Lower > 0 || slope.Upper < 0;
    }
}
