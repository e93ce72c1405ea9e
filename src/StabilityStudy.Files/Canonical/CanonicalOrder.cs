namespace StabilityStudy.Files.Canonical;

/// <summary>The order of rows in canonical files: by key, texts by their code units, time points by delay.</summary>
internal static class CanonicalOrder
{
    /// <summary>Rows from which halves are sorted side by side.</summary>
    private const int ManyRows = 10_000;

    public static ImmutableArray<TubeRow> Sort(ImmutableArray<TubeRow> tubes) =>
        Sorted(
            tubes,
            (a, b) =>
                FirstDifference(
                    string.CompareOrdinal(a.Specimen, b.Specimen),
                    string.CompareOrdinal(a.Tube, b.Tube)
                )
        );

    public static ImmutableArray<ResultRow> Sort(ImmutableArray<ResultRow> results) =>
        Sorted(results, Compare);

    /// <summary>The order of two results by what tells them apart; 0 for two of one key.</summary>
    public static int Compare(ResultRow a, ResultRow b) =>
        string.CompareOrdinal(a.Specimen, b.Specimen) is not 0 and var bySpecimen ? bySpecimen
        : string.CompareOrdinal(a.Tube, b.Tube) is not 0 and var byTube ? byTube
        : string.CompareOrdinal(a.Analyte, b.Analyte) is not 0 and var byAnalyte ? byAnalyte
        : Delay(a).CompareTo(Delay(b)) is not 0 and var byDelay ? byDelay
        : a.Replicate.CompareTo(b.Replicate);

    public static ImmutableArray<ControlRow> Sort(ImmutableArray<ControlRow> controls) =>
        Sorted(
            controls,
            (a, b) =>
                FirstDifference(
                    string.CompareOrdinal(a.Control, b.Control),
                    string.CompareOrdinal(a.Analyte, b.Analyte),
                    string.CompareOrdinal(a.Run, b.Run),
                    a.RecordedAt.CompareTo(b.RecordedAt)
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

    // Canonical rows are in order already; then nothing is copied.
    private static ImmutableArray<T> Sorted<T>(ImmutableArray<T> rows, Comparison<T> compare) =>
        IsInOrder(rows, compare) ? rows
        : rows.Length < ManyRows ? rows.Sort(compare)
        : SortedInHalves(rows, compare);

    private static bool IsInOrder<T>(ImmutableArray<T> rows, Comparison<T> compare)
    {
        for (var i = 1; i < rows.Length; i++)
        {
            if (compare(rows[i - 1], rows[i]) > 0)
            {
                return false;
            }
        }

        return true;
    }

    private static ImmutableArray<T> SortedInHalves<T>(
        ImmutableArray<T> rows,
        Comparison<T> compare
    )
    {
        var middle = rows.Length / 2;
        var (first, second) = (rows[..middle], rows[middle..]);
        Parallel.Invoke(() => first = first.Sort(compare), () => second = second.Sort(compare));
        var merged = ImmutableArray.CreateBuilder<T>(rows.Length);
        var (i, j) = (0, 0);
        while (i < first.Length && j < second.Length)
        {
            merged.Add(compare(first[i], second[j]) <= 0 ? first[i++] : second[j++]);
        }

        merged.AddRange(first[i..]);
        merged.AddRange(second[j..]);
        return merged.MoveToImmutable();
    }
}
