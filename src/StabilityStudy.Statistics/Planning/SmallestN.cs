namespace StabilityStudy.Statistics.Planning;

/// <summary>The smallest number of pairs at which criteria reach a wanted power; null when none up to a cap does.</summary>
/// <remarks>
/// Every number is tried in turn, because power need not rise with each pair: that of the individual criterion falls where a further
/// pair does not yet allow a further failure, so that a few pairs more than the number given can have a little less power.
/// </remarks>
public static class SmallestN
{
    /// <summary>The first number that reaches the power.</summary>
    /// <param name="power">Wanted power, strictly between 0 and 1.</param>
    /// <param name="powerAt">The power of so many pairs, as of <see cref="EquivalencePower"/> or <see cref="IndividualPower"/>.</param>
    /// <param name="fewest">The smallest number that is tried.</param>
    /// <param name="most">The largest number that is tried, not below the smallest.</param>
    /// <exception cref="ArgumentException">An argument is outside its range.</exception>
    public static int? Reaching(double power, Func<int, double> powerAt, int fewest, int most)
    {
        ArgumentNullException.ThrowIfNull(powerAt);
        Require.InsideUnitInterval(power, nameof(power));
        if (most < fewest)
        {
            throw new ArgumentException("No number of pairs could be tried.", nameof(most));
        }

        for (var n = fewest; n <= most; n++)
        {
            if (powerAt(n) >= power)
            {
                return n;
            }
        }

        return null;
    }
}
