using System.Numerics;

namespace StabilityStudy.Statistics.Location;

/// <summary>Counts of the sets of ranks with each sum, the heart of the exact signed-rank distributions.</summary>
internal static class SubsetSums
{
    /// <summary>Lets one more rank be in a set or not: each count gains that of the sum without the rank.</summary>
    /// <param name="counts">The counts by sum.</param>
    /// <param name="rank">The rank, above zero.</param>
    /// <param name="reached">The largest sum that sets of the ranks so far and this one can have, or the last that is counted.</param>
    public static void Add(Span<double> counts, int rank, int reached)
    {
        // From the top down, so that a count is read before it grows; several side by side where they do not meet.
        var sum = reached;
        var width = Vector<double>.Count;
        if (rank >= width)
        {
            for (; sum - width + 1 >= rank; sum -= width)
            {
                var at = counts[(sum - width + 1)..];
                (
                    new Vector<double>(at) + new Vector<double>(counts[(sum - width + 1 - rank)..])
                ).CopyTo(at);
            }
        }

        for (; sum >= rank; sum--)
        {
            counts[sum] += counts[sum - rank];
        }
    }
}
