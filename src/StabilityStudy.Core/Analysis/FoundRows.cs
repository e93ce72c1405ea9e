namespace StabilityStudy.Core.Analysis;

/// <summary>One attention about all the rows in which something was found, at the first of them; none when there are none.</summary>
internal static class FoundRows
{
    public static IEnumerable<DataQuery> OfTubes(
        QueryKind kind,
        string column,
        ImmutableArray<TubeRow> found,
        Func<FormattableString> message,
        string? action = null
    ) =>
        AtFirst(
            kind,
            [.. found.Select(tube => (tube.SourceRow, tube.Specimen))],
            line => DataFiles.SpecimensAt(line, column),
            message,
            action
        );

    public static IEnumerable<DataQuery> OfResults(
        QueryKind kind,
        string column,
        ImmutableArray<ResultRow> found,
        Func<FormattableString> message,
        string? action = null
    ) =>
        AtFirst(
            kind,
            [.. found.Select(row => (row.SourceRow, row.Specimen))],
            line => DataFiles.ResultsAt(line, column),
            message,
            action
        );

    private static IEnumerable<DataQuery> AtFirst(
        QueryKind kind,
        ImmutableArray<(int Line, string Specimen)> found,
        Func<int, QuerySource> place,
        Func<FormattableString> message,
        string? action = null
    ) =>
        found.IsEmpty
            ? []
            :
            [
                Attention(kind, place(found.Min(row => row.Line)), message(), action) with
                {
                    Specimen = found.All(row => row.Specimen == found[0].Specimen)
                        ? new(found[0].Specimen, null)
                        : null,
                },
            ];

    public static DataQuery Attention(
        QueryKind kind,
        QuerySource source,
        FormattableString message,
        string? action = null
    ) => new(kind, source, "", message.ToString(CultureInfo.InvariantCulture), action);

    /// <summary>Every result with a time of test, and the tube that it came from where the tube is known.</summary>
    public static IEnumerable<(ResultRow Row, DateTimeOffset TestedAt, TubeRow Tube)> Tested(
        StudyRows rows
    )
    {
        foreach (var specimen in rows.Specimens)
        {
            for (var i = 0; i < specimen.Results.Length; i++)
            {
                var row = specimen.Results.Span[i];
                if (row.TestedAt is { } testedAt && specimen.Tube(row.Tube) is { } tube)
                {
                    yield return (row, testedAt, tube);
                }
            }
        }
    }
}
