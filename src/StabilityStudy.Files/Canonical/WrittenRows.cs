namespace StabilityStudy.Files.Canonical;

/// <summary>
/// The rows from which a canonical file was written. One that is read from the file and is the same in everything is taken for the one
/// that was written, so that no row is in the memory twice.
/// </summary>
/// <param name="rows">The rows as they were written.</param>
/// <param name="next">The place of the one that is read next.</param>
/// <param name="isSame">Whether two rows are the same in everything.</param>
internal sealed class WrittenRows<T>(ImmutableArray<T> rows, int next, Func<T, T, bool> isSame)
{
    private int _next = next;

    /// <summary>The row that was written, where it is the same; else the one that was read.</summary>
    public T Take(T read)
    {
        var place = _next++;
        return place < rows.Length && isSame(rows[place], read) ? rows[place] : read;
    }
}

/// <summary>The rows from which canonical files were written, in the order of the files.</summary>
/// <param name="Tubes">Those of specimens.csv.</param>
/// <param name="Results">Those of results.csv.</param>
internal sealed record WrittenRows(ImmutableArray<TubeRow> Tubes, ImmutableArray<ResultRow> Results)
{
    /// <summary>Of files of which that is not known.</summary>
    public static readonly WrittenRows None = new([], []);

    /// <summary>The tubes from a place on.</summary>
    public WrittenRows<TubeRow> TubesFrom(int place) => new(Tubes, place, IsSame);

    /// <summary>The results from a place on.</summary>
    public WrittenRows<ResultRow> ResultsFrom(int place) => new(Results, place, IsSame);

    private static bool IsSame(TubeRow written, TubeRow read) =>
        written == read
        && IsSame(written.CollectedAt, read.CollectedAt)
        && IsSame(written.ReceivedAt, read.ReceivedAt)
        && IsSame(written.SpunAt, read.SpunAt)
        && IsSame(written.SeparatedAt, read.SeparatedAt)
        && IsSame(written.FrozenAt, read.FrozenAt)
        && IsSame(written.ThawedAt, read.ThawedAt)
        && IsSame(written.FillPercent, read.FillPercent)
        && IsSame(written.HematocritPercent, read.HematocritPercent);

    private static bool IsSame(ResultRow written, ResultRow read) =>
        written == read && IsSame(written.TestedAt, read.TestedAt);

    // Two times of one moment are equal whatever their offsets, and two numbers whatever their decimals.
    private static bool IsSame(DateTimeOffset? written, DateTimeOffset? read) =>
        written?.Offset == read?.Offset;

    private static bool IsSame(decimal? written, decimal? read) => written?.Scale == read?.Scale;
}
