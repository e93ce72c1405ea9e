namespace StabilityStudy.Statistics.Regression;

/// <summary>Reports inversions of a sequence of different numbers: a larger one before a smaller one.</summary>
internal static class ReportedInversions
{
    /// <summary>Sorts the sequence and reports inversions on the way.</summary>
    /// <param name="sequence">Different numbers; sorted afterwards.</param>
    /// <param name="wanted">Numbers of the inversions to report, ascending from 0, in the order in which the sort meets them; null for all.</param>
    /// <param name="report">Called with the larger and the smaller number.</param>
    public static void Visit(int[] sequence, long[]? wanted, Action<int, int> report)
    {
        var (from, to) = (sequence, new int[sequence.Length]);
        var (met, next) = (0L, 0);
        for (var width = 1; width < sequence.Length; width *= 2)
        {
            for (var start = 0; start < sequence.Length; start += 2 * width)
            {
                var middle = Math.Min(start + width, sequence.Length);
                var end = Math.Min(middle + width, sequence.Length);
                var (left, right) = (start, middle);
                for (var i = start; i < end; i++)
                {
                    if (left < middle && (right == end || from[left] < from[right]))
                    {
                        to[i] = from[left++];
                        continue;
                    }

                    var smaller = from[right++];
                    to[i] = smaller;
                    if (wanted is null)
                    {
                        for (var larger = left; larger < middle; larger++)
                        {
                            report(from[larger], smaller);
                        }
                    }
                    else
                    {
                        for (; next < wanted.Length && wanted[next] < met + middle - left; next++)
                        {
                            report(from[left + (int)(wanted[next] - met)], smaller);
                        }

                        met += middle - left;
                    }
                }
            }

            (from, to) = (to, from);
        }
    }
}
