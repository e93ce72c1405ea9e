using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Regression;

public sealed class WeightedSlopesTests
{
    /// <summary>Few different numbers, so that vertical slopes, slopes of −1, ties and samples without a line are frequent.</summary>
    [Fact]
    public void Line_of_a_sample_is_that_of_its_pairs_written_out()
    {
        var random = new SeededRandom(1983);
        var (lines, none) = (0, 0);
        for (var trial = 0; trial < 3000; trial++)
        {
            var n = 2 + (int)(random.NextDouble() * 8);
            decimal[] x = [.. Enumerable.Range(0, n).Select(_ => Whole(6))];
            decimal[] y = [.. x.Select(value => value + Whole(4) - 2)];
            int[] sample = [.. Enumerable.Range(0, n).Select(_ => Whole(n))];
            var drawn = ExactPairs.Create(
                [.. sample.Select(pair => x[pair])],
                [.. sample.Select(pair => y[pair])]
            );
            var expected = OfAllSlopes(drawn);
            var found = new WeightedSlopes(ExactPairs.Create(x, y)).LineOf(sample);

            Assert.Equal(expected is null, found is null);
            if (found is null)
            {
                none++;
                continue;
            }

            lines++;
            Close.Absolute(expected!.Slope, found.Slope, 1e-14);
            Close.Absolute(expected.Intercept, found.Intercept, 1e-12);
        }

        Assert.True(lines > 2000 && none > 100);

        int Whole(int below) => (int)(random.NextDouble() * below);
    }

    /// <summary>More pairs than one word has bits, some drawn many times.</summary>
    [Theory]
    [InlineData(63)]
    [InlineData(64)]
    [InlineData(65)]
    [InlineData(150)]
    public void Line_of_a_sample_of_many_pairs_is_that_of_its_pairs_written_out(int n)
    {
        var random = new SeededRandom((ulong)n);
        decimal[] x = [.. Enumerable.Range(0, n).Select(_ => 300 + Whole(200))];
        decimal[] y = [.. x.Select(value => value + Whole(30) - 12)];
        var slopes = new WeightedSlopes(ExactPairs.Create(x, y));
        for (var trial = 0; trial < 20; trial++)
        {
            int[] sample = [.. Enumerable.Range(0, n).Select(_ => Whole(trial < 10 ? n : n / 8))];
            var expected = OfAllSlopes(
                ExactPairs.Create(
                    [.. sample.Select(pair => x[pair])],
                    [.. sample.Select(pair => y[pair])]
                )
            );
            var found = slopes.LineOf(sample);

            Close.Absolute(expected!.Slope, found!.Slope, 1e-12);
            Close.Absolute(expected.Intercept, found.Intercept, 1e-10);
        }

        int Whole(int below) => (int)(random.NextDouble() * below);
    }

    [Fact]
    public void Line_without_a_pair_is_that_of_the_others()
    {
        decimal[] x = [10, 12, 15, 15, 18, 21, 30];
        decimal[] y = [11, 12, 17, 14, 19, 20, 33];
        var slopes = new WeightedSlopes(ExactPairs.Create(x, y));
        for (var left = 0; left < x.Length; left++)
        {
            var expected = OfAllSlopes(
                ExactPairs.Create(
                    [.. x.Where((_, i) => i != left)],
                    [.. y.Where((_, i) => i != left)]
                )
            );
            var found = slopes.LineWithout(left);

            Close.Absolute(expected!.Slope, found!.Slope, 1e-14);
            Close.Absolute(expected.Intercept, found.Intercept, 1e-12);
        }
    }

    private static Line? OfAllSlopes(ExactPairs pairs)
    {
        var finite = new List<double>();
        var (vertical, below) = (0, 0);
        for (var i = 0; i < pairs.Count; i++)
        {
            for (var j = i + 1; j < pairs.Count; j++)
            {
                var (run, rise) = (pairs.X[j] - pairs.X[i], pairs.Y[j] - pairs.Y[i]);
                if (run == 0)
                {
                    vertical += rise == 0 ? 0 : 1;
                }
                else if (rise != -run)
                {
                    finite.Add(rise / run);
                    below += rise / run < -1 ? 1 : 0;
                }
            }
        }

        var count = finite.Count + vertical;
        finite.Sort();
        var upper = (count / 2) + below;
        if (count == 0 || upper >= finite.Count)
        {
            return null;
        }

        var slope = (finite[((count + 1) / 2) + below - 1] + finite[upper]) / 2;
        double[] intercepts = [.. pairs.X.Zip(pairs.Y, (x, y) => y - (slope * x)).Order()];
        var n = intercepts.Length;
        return new Line((intercepts[(n - 1) / 2] + intercepts[n / 2]) / 2, slope);
    }
}
