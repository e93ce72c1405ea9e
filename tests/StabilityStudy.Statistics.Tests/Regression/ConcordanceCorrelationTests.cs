using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Regression;

public sealed class ConcordanceCorrelationTests
{
    private static readonly double[] s_x = [1, 2, 4, 4, 7, 9];
    private static readonly double[] s_y = [2, 1.5, 4.5, 3, 8, 8.5];

    [Fact]
    public void Agrees_with_R()
    {
        var table = ReferenceTable.Read("computed/concordance.csv");
        for (var row = 0; row < table.Count; row++)
        {
            var pairs = RegressionReference.Pairs(table.Text(row, "case"));
            var found = Computed.Value(
                ConcordanceCorrelation.Compute(pairs.X.AsSpan(), pairs.Y.AsSpan(), 0.95)
            );

            Close.Relative(table.Number(row, "ccc"), found.Concordance, 1e-12);
            Close.Relative(table.Number(row, "accuracy"), found.Accuracy, 1e-12);
            Close.Relative(table.Number(row, "se"), found.StandardError, 1e-10);
            Close.Relative(table.Number(row, "lower"), found.Lower, 1e-10);
            Close.Relative(table.Number(row, "upper"), found.Upper, 1e-10);
        }
    }

    [Fact]
    public void Identical_members_agree_fully()
    {
        var found = Computed.Value(ConcordanceCorrelation.Compute(s_x, s_x, 0.95));

        Close.Absolute(1, found.Concordance, 1e-15);
        Close.Absolute(1, found.Lower, 1e-12);
        Close.Absolute(1, found.Upper, 1e-12);
    }

    /// <summary>Mirrored about one value in tenths: the means differ by rounding alone, which must not reach an end of the interval.</summary>
    [Fact]
    public void Mirrored_members_disagree_fully()
    {
        double[] x = [27.1, 27.2, 25.4, 26.7];
        double[] y = [26.1, 26.0, 27.8, 26.5];

        var found = Computed.Value(ConcordanceCorrelation.Compute(x, y, 0.95));

        Close.Absolute(-1, found.Concordance, 1e-15);
        Close.Absolute(-1, found.Lower, 1e-12);
        Close.Absolute(-1, found.Upper, 1e-12);
    }

    [Fact]
    public void Swap_common_shift_and_common_scale_change_nothing()
    {
        var plain = Of(s_x, s_y);

        Close.Relative(plain, Of(s_y, s_x), 1e-13);
        Close.Relative(
            plain,
            Of([.. s_x.Select(v => v + 10)], [.. s_y.Select(v => v + 10)]),
            1e-12
        );
        Close.Relative(
            plain,
            Of([.. s_x.Select(v => v * 10)], [.. s_y.Select(v => v * 10)]),
            1e-13
        );
        Assert.True(Of(s_x, [.. s_y.Select(v => v + 1)]) < plain);

        static double Of(double[] x, double[] y) =>
            Computed.Value(ConcordanceCorrelation.Compute(x, y, 0.95)).Concordance;
    }

    [Fact]
    public void Interval_covers_the_true_concordance_about_as_often_as_stated()
    {
        // Specimens of SD 2, error SD 1 in both, shift 1: ρc = 2·4/(5 + 5 + 1). Four binomial standard errors of 0.05 in 2,000
        // samples are 0.02; the interval is an approximation, for which 0.01 is added.
        const int samples = 2000;
        var random = new SeededRandom(20240814);
        var missed = 0;
        var x = new double[60];
        var y = new double[60];
        for (var sample = 0; sample < samples; sample++)
        {
            for (var i = 0; i < x.Length; i++)
            {
                var truth = 2 * random.NextNormal();
                x[i] = truth + random.NextNormal();
                y[i] = truth + random.NextNormal() + 1;
            }

            var found = Computed.Value(ConcordanceCorrelation.Compute(x, y, 0.95));
            missed += found.Lower > 8 / 11.0 || found.Upper < 8 / 11.0 ? 1 : 0;
        }

        Assert.InRange((double)missed / samples, 0.05 - 0.03, 0.05 + 0.03);
    }

    [Fact]
    public void Data_without_spread_or_too_few_are_refused()
    {
        Computed.Refusal(
            AssumptionCode.TooFewValues,
            ConcordanceCorrelation.Compute([1, 2, 3], [1, 2, 3], 0.95)
        );
        Computed.Refusal(
            AssumptionCode.ConstantBaseline,
            ConcordanceCorrelation.Compute([1, 1, 1, 1], [1, 2, 3, 4], 0.95)
        );
        Computed.Refusal(
            AssumptionCode.ZeroSpread,
            ConcordanceCorrelation.Compute([1, 2, 3, 4], [1, 1, 1, 1], 0.95)
        );
        Assert.Throws<ArgumentException>(
            "y",
            () => ConcordanceCorrelation.Compute([1, 2], [1], 0.95)
        );
    }
}
