namespace StabilityStudy.Statistics.Tests;

/// <summary>Comparison of doubles with a tolerance that the test states.</summary>
public static class Close
{
    public static void Relative(double expected, double actual, double tolerance) =>
        Within(expected, actual, tolerance * Math.Abs(expected));

    public static void Absolute(double expected, double actual, double tolerance) =>
        Within(expected, actual, tolerance);

    private static void Within(double expected, double actual, double allowed) =>
        Assert.True(
            Math.Abs(actual - expected) <= allowed,
            string.Create(
                CultureInfo.InvariantCulture,
                $"Expected {expected:R}, got {actual:R}: {Math.Abs(actual - expected):E2} apart, {allowed:E2} allowed."
            )
        );
}
