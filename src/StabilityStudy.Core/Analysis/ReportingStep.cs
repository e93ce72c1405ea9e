namespace StabilityStudy.Core.Analysis;

/// <summary>The step in which results of an analyte are reported: the coarser it is, the more of them agree by chance.</summary>
internal static class ReportingStep
{
    private static readonly ImmutableArray<decimal> s_round = [1, 2, 5];

    /// <summary>
    /// The largest of 1, 2 and 5 times a power of ten of which every result is a multiple, and at least one in the last decimal of the protocol: 1 for whole
    /// numbers, whatever number of decimals the protocol states, and 5 where results are reported as 85, 90, 95.
    /// </summary>
    /// <param name="analyte">The analyte.</param>
    /// <param name="results">Its results.</param>
    public static double Of(Analyte analyte, IEnumerable<decimal> results)
    {
        var step = 0m;
        var least = (decimal)Math.Pow(10, -analyte.Decimals);
        foreach (var result in results)
        {
            step = CommonDivisor(Math.Abs(result), step);
            if (step > 0 && step <= least)
            {
                break;
            }
        }

        var power = least;
        var largest = least;
        while (step > 0 && power <= step)
        {
            foreach (var round in s_round)
            {
                largest = step % (round * power) == 0 ? round * power : largest;
            }

            power *= 10;
        }

        return (double)largest;
    }

    private static decimal CommonDivisor(decimal first, decimal second)
    {
        while (second != 0)
        {
            (first, second) = (second, first % second);
        }

        return first;
    }
}
