namespace StabilityStudy.Statistics;

/// <summary>The most values, pairs or specimens that a method takes; with more it is refused.</summary>
public static class LargestSample
{
    /// <summary>Values of a normality test: the range for which Royston fitted the approximation.</summary>
    public const int Normality = 5000;

    /// <summary>Values of an exact tolerance factor: the incomplete gamma function of the library has been compared up to here.</summary>
    public const int Tolerance = 10_000;

    /// <summary>Pairs of a jackknifed line: with another number decisions could come out differently, which is a matter of the rules.</summary>
    public const int Jackknife = 5000;

    /// <summary>Pairs of a bootstrapped line: the orders of slopes of so many take some ten megabytes.</summary>
    public const int Bootstrap = 1000;

    /// <summary>Specimens of a simulated study.</summary>
    public const int Simulation = 10_000;
}
