namespace StabilityStudy.Statistics;

/// <summary>Refuses what only a caller's mistake can bring about. Nothing here is for faulty data.</summary>
internal static class Require
{
    /// <summary>Sums and products of values up to this size stay finite; laboratory results are far below it.</summary>
    private const double LargestMagnitude = 1e300;

    /// <summary>Every value is a number of at most 10³⁰⁰ in magnitude.</summary>
    /// <exception cref="ArgumentException">A value is not.</exception>
    public static void Numbers(ReadOnlySpan<double> values, string parameter)
    {
        foreach (var value in values)
        {
            Number(value, parameter);
        }
    }

    /// <summary>The value is a number of at most 10³⁰⁰ in magnitude.</summary>
    /// <exception cref="ArgumentException">It is not.</exception>
    public static void Number(double value, string parameter)
    {
        if (!(Math.Abs(value) <= LargestMagnitude))
        {
            throw new ArgumentException("Every value must be a number.", parameter);
        }
    }

    /// <summary>The value lies strictly between 0 and 1.</summary>
    /// <exception cref="ArgumentException">It does not.</exception>
    public static void InsideUnitInterval(double value, string parameter)
    {
        if (!(value is > 0 and < 1))
        {
            throw new ArgumentException("The value must lie strictly between 0 and 1.", parameter);
        }
    }

    /// <summary>The degrees of freedom are a number of at least 1.</summary>
    /// <exception cref="ArgumentException">They are not.</exception>
    public static void DegreesOfFreedom(double value, string parameter)
    {
        if (!(value >= 1) || double.IsInfinity(value))
        {
            throw new ArgumentException("The degrees of freedom must be at least 1.", parameter);
        }
    }

    /// <summary>A level of a one-sided bound.</summary>
    public static void OneSidedConfidence(double value, string parameter)
    {
        if (!(value is > 0.5 and < 1))
        {
            throw new ArgumentException(
                "The level of a one-sided bound lies between 0.5 and 1.",
                parameter
            );
        }
    }
}
