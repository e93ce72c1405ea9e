using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics.Tests.Regression;

/// <summary>The change on either side of a level, against R and against data whose sides are known.</summary>
public sealed class LevelStepTests
{
    private static readonly double[] s_x = [20, 25, 30, 35, 40, 45, 50, 55];

    [Fact]
    public void Agrees_with_R()
    {
        var table = ReferenceTable.Read("computed/level_step.csv");
        Assert.Equal(5, table.Count);
        for (var row = 0; row < table.Count; row++)
        {
            var pairs = RegressionReference.Pairs(table.Text(row, "case"));
            var size = table.Whole(row, "size");

            var found = Computed.Value(
                LevelStep.Fit(
                    pairs.X.AsSpan(),
                    pairs.Y.AsSpan(),
                    [.. Enumerable.Range(0, pairs.Count).Select(i => i / size)],
                    table.Number(row, "level")
                )
            );

            Close.Absolute(table.Number(row, "below"), found.Below.BeyondMean, 1e-9);
            Close.Absolute(table.Number(row, "below_se"), found.Below.StandardError, 1e-9);
            Close.Absolute(table.Number(row, "above"), found.Above.BeyondMean, 1e-9);
            Close.Absolute(table.Number(row, "above_se"), found.Above.StandardError, 1e-9);
            Assert.Equal(table.Number(row, "df"), found.DegreesOfFreedom);
        }
    }

    /// <summary>Nothing below 40 and a twentieth less from there on: exactly a step, with no slope and no scatter.</summary>
    [Fact]
    public void Each_side_has_its_own_change()
    {
        var found = Fit(
            s_x,
            [.. s_x.Select(x => x < 40 ? x : 0.95 * x)],
            [0, 0, 0, 0, 0, 0, 0, 0],
            40
        );

        var mean = 100 * Math.Log(0.95) / 2;
        Close.Absolute(0, mean + found.Below.BeyondMean, 1e-9);
        Close.Absolute(100 * Math.Log(0.95), mean + found.Above.BeyondMean, 1e-9);
        Close.Absolute(0, found.Above.StandardError, 1e-6);
    }

    [Fact]
    public void Refuses_what_it_cannot_tell_apart()
    {
        ImmutableArray<int> together = [0, 0, 0, 0, 0, 0, 0, 0];
        double[] y = [20.3, 25.1, 29.8, 35.4, 39.9, 45.6, 49.8, 55.1];
        Computed.Refusal(
            AssumptionCode.ConstantBaseline,
            LevelStep.Fit(s_x, y, [0, 0, 0, 0, 1, 1, 1, 1], 40)
        );
        Computed.Refusal(AssumptionCode.ConstantBaseline, LevelStep.Fit(s_x, y, together, 60));
        Computed.Refusal(
            AssumptionCode.TooFewValues,
            LevelStep.Fit(s_x.AsSpan(..4), y.AsSpan(..4), [0, 0, 1, 1], 27)
        );
        Computed.Refusal(
            AssumptionCode.ValueNotPositive,
            LevelStep.Fit([0, .. s_x.AsSpan(1)], y, together, 40)
        );
        Assert.Throws<ArgumentException>(() => LevelStep.Fit(s_x, y, together, 0));
        Assert.Throws<ArgumentException>(() => LevelStep.Fit(s_x, y, [0], 40));
    }

    private static LevelStep Fit(
        double[] x,
        double[] y,
        ImmutableArray<int> cluster,
        double level
    ) => Computed.Value(LevelStep.Fit(x, y, cluster, level));
}
