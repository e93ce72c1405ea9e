using StabilityStudy.Core.Tests.Simulations.Scenarios;

namespace StabilityStudy.Core.Tests.Simulations;

/// <summary>
/// Compares a rate with what it should be. The margin is five and a half binomial standard errors on either side: with
/// another seed a right program would fail less than once in ten million times. The seed is fixed, so it fails never or always.
/// </summary>
internal static class SimulatedRateAssert
{
    private const double StandardErrors = 5.5;

    public static void Is(double expected, SimulatedRate rate) => Between(expected, expected, rate);

    public static void Between(double lowest, double highest, SimulatedRate rate) =>
        Assert.InRange(
            rate.Rate,
            lowest - Margin(lowest, rate.Studies),
            highest + Margin(highest, rate.Studies)
        );

    public static void AtMost(double highest, SimulatedRate rate) => Between(0, highest, rate);

    private static double Margin(double rate, int studies) =>
        StandardErrors * Math.Sqrt(rate * (1 - rate) / studies);
}
