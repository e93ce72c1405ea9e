using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Statistics.Tests.Resampling;

public sealed class DrawnSamplesTests
{
    private static readonly Line s_line = new(0, 1);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(20, 20)]
    public void A_sample_without_a_line_is_drawn_again_up_to_twenty_times(int failures, int redrawn)
    {
        var calls = 0;
        var drawn = DrawnSamples.Lines(5, 1, 1, _ => calls++ < failures ? null : s_line);

        Assert.Equal((s_line, redrawn), Assert.Single(drawn));
    }

    [Fact]
    public void After_twenty_one_samples_without_a_line_there_is_none()
    {
        var calls = 0;
        var drawn = DrawnSamples.Lines(5, 1, 1, _ => calls++ < 21 ? null : s_line);

        Assert.Null(Assert.Single(drawn).Line);
        Assert.Equal(21, calls);
    }

    [Fact]
    public void Pairs_are_drawn_with_replacement_and_each_equally_often()
    {
        const int samples = 4000;
        var counts = new int[5];
        var repeated = 0;
        DrawnSamples.Lines(
            5,
            samples,
            9,
            sample =>
            {
                foreach (var pair in sample)
                {
                    Interlocked.Increment(ref counts[pair]);
                }

                if (sample.Distinct().Count() < 5)
                {
                    Interlocked.Increment(ref repeated);
                }

                return s_line;
            }
        );

        // Four and a half binomial standard errors; 5!/5⁵ = 0.0384 of the samples have no pair twice.
        Assert.All(
            counts,
            count => Close.Absolute(samples, count, 4.5 * Math.Sqrt(5 * samples * 0.16))
        );
        Close.Absolute(
            0.0384,
            1 - ((double)repeated / samples),
            4.5 * Math.Sqrt(0.0384 * 0.9616 / samples)
        );
    }

    [Theory]
    [InlineData(199, true)]
    [InlineData(200, false)]
    [InlineData(1_000_000, false)]
    [InlineData(1_000_001, true)]
    public void There_are_from_200_to_a_million(int samples, bool isRefused)
    {
        var thrown = Record.Exception(() => DrawnSamples.RequireNumber(samples, "replicates"));

        Assert.Equal(isRefused, thrown is ArgumentException { ParamName: "replicates" });
    }
}
