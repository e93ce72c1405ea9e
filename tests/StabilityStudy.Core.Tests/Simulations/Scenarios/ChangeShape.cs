using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>A distribution of changes around their mean, scaled to mean 0 and standard deviation 1.</summary>
/// <param name="Name">Name in the table.</param>
/// <param name="Draw">One number.</param>
internal sealed record ChangeShape(string Name, Func<SeededRandom, double> Draw)
{
    public static ChangeShape Normal { get; } = new("normal", random => random.NextNormal());

    /// <summary>Three degrees of freedom: variance 3.</summary>
    public static ChangeShape HeavyTails { get; } =
        new(
            "heavy tails (t with 3 degrees of freedom)",
            random =>
                random.NextNormal()
                / Math.Sqrt(
                    Square(random.NextNormal())
                        + Square(random.NextNormal())
                        + Square(random.NextNormal())
                )
        );

    public static ChangeShape Contaminated { get; } =
        new(
            "one in ten with five times the SD",
            random =>
                random.NextNormal()
                * (random.NextDouble() < 0.1 ? 5 : 1)
                / Math.Sqrt(0.9 + (0.1 * 25))
        );

    public static ChangeShape Skewed { get; } = Lognormal(0.5);

    public static ChangeShape VerySkewed { get; } = Lognormal(1);

    /// <summary>One in twenty moves by six further standard deviations.</summary>
    public static ChangeShape RareOutliers { get; } =
        new(
            "one in twenty moves six SDs further",
            random =>
                (random.NextNormal() + (random.NextDouble() < 0.05 ? 6 : 0) - (0.05 * 6))
                / Math.Sqrt(1 + (36 * 0.05 * 0.95))
        );

    public static ImmutableArray<ChangeShape> All { get; } =
    [Normal, Skewed, VerySkewed, HeavyTails, Contaminated, RareOutliers];

    private static ChangeShape Lognormal(double sigma)
    {
        var variance = sigma * sigma;
        var mean = Math.Exp(variance / 2);
        var deviation = mean * Math.Sqrt(Math.Exp(variance) - 1);
        return new(
            FormattableString.Invariant(
                $"lognormal (σ {sigma:0.0}), the long tail beyond the limit"
            ),
            random => (Math.Exp(sigma * random.NextNormal()) - mean) / deviation
        );
    }

    private static double Square(double value) => value * value;
}
