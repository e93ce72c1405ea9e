using System.Runtime.InteropServices;

namespace StabilityStudy.Statistics.Regression;

/// <summary>Sorts different numbers and reports inversions on the way: a larger one before a smaller one.</summary>
/// <param name="wanted">Numbers of the inversions to report, ascending from 0, in the order in which the sort meets them; null for all.</param>
/// <param name="report">Called with the larger and the smaller number.</param>
[StructLayout(LayoutKind.Auto)]
internal struct ReportedInversions(long[]? wanted, Action<int, int> report) : IMergeOrder<int>
{
    private long _met;
    private int _next;

    public readonly bool LaterFirst(int earlier, int later) => later < earlier;

    public void Passed(ReadOnlySpan<int> earlier, int later)
    {
        if (wanted is null)
        {
            foreach (var larger in earlier)
            {
                report(larger, later);
            }

            return;
        }

        for (; _next < wanted.Length && wanted[_next] < _met + earlier.Length; _next++)
        {
            report(earlier[(int)(wanted[_next] - _met)], later);
        }

        _met += earlier.Length;
    }
}
