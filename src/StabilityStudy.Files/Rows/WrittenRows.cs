namespace StabilityStudy.Files.Rows;

/// <summary>
/// The results from which a canonical file was written. One that is read from the file and is the same in everything is taken for the one
/// that was written, so that no result is in the memory twice.
/// </summary>
/// <param name="rows">The results as they were written.</param>
/// <param name="next">The place of the one that is read next.</param>
internal sealed class WrittenRows(ImmutableArray<ResultRow> rows, int next)
{
    private int _next = next;

    /// <summary>The result that was written, where it is the same; else the one that was read.</summary>
    public ResultRow Take(ResultRow read)
    {
        var place = _next++;
        return place < rows.Length && IsSame(rows[place], read) ? rows[place] : read;
    }

    // Two times of one moment are equal whatever their offsets.
    private static bool IsSame(ResultRow written, ResultRow read) =>
        written == read && written.TestedAt?.Offset == read.TestedAt?.Offset;
}
