using System.Collections.Immutable;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Files.Canonical;

/// <summary>The order of rows in canonical files: by key, texts by their code units, time points by delay.</summary>
internal static class CanonicalOrder
{
    public static ImmutableArray<TubeRow> Sort(ImmutableArray<TubeRow> tubes) =>
        tubes.Sort(
            (a, b) =>
                FirstDifference(
                    string.CompareOrdinal(a.Specimen, b.Specimen),
                    string.CompareOrdinal(a.Tube, b.Tube)
                )
        );

    public static ImmutableArray<ResultRow> Sort(ImmutableArray<ResultRow> results) =>
        results.Sort(
            (a, b) =>
                FirstDifference(
                    string.CompareOrdinal(a.Specimen, b.Specimen),
                    string.CompareOrdinal(a.Tube, b.Tube),
                    string.CompareOrdinal(a.Analyte, b.Analyte),
                    Delay(a).CompareTo(Delay(b)),
                    a.Replicate.CompareTo(b.Replicate)
                )
        );

    private static TimeSpan Delay(ResultRow row) =>
        row.Occasion.TimePoint?.Delay ?? TimeSpan.MinValue;

    private static int FirstDifference(params ReadOnlySpan<int> comparisons)
    {
        foreach (var comparison in comparisons)
        {
            if (comparison != 0)
            {
                return comparison;
            }
        }

        return 0;
    }
}
