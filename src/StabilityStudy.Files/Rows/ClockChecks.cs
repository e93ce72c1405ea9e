using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Rows;

/// <summary>
/// Recognizes a run of which every test lies an hour beside its plan, as when the clock of the analyzer was not set with the
/// clocks in spring or autumn. One cause is one query, not one for each test.
/// </summary>
internal static class ClockChecks
{
    private const int FewestTests = 3;
    private const int MostFittingPercent = 20;
    private static readonly TimeSpan Hour = TimeSpan.FromHours(1);

    /// <summary>Raises the queries.</summary>
    /// <returns>The rows of runs in which a test lies before its collection or spinning for that reason.</returns>
    public static IReadOnlySet<ResultRow> Check(
        string file,
        ImmutableArray<ResultRow> results,
        Dictionary<TubeKey, TubeRow> tubes,
        ProtocolDraft protocol,
        QueryList queries
    )
    {
        var told = new HashSet<ResultRow>(ReferenceEqualityComparer.Instance);
        if (protocol.Conduct.TimeOrigin != TimeOrigin.Collection)
        {
            return told;
        }

        var runs = results
            .Where(row =>
                row.TestedAt is not null && tubes.ContainsKey(new TubeKey(row.Specimen, row.Tube))
            )
            .GroupBy(row =>
                (
                    row.Run,
                    row.Instrument,
                    Day: row.Run.Length > 0 ? default : row.TestedAt!.Value.Date
                )
            );
        foreach (var run in runs)
        {
            ImmutableArray<ResultRow> rows = [.. run];
            if (Shift(rows, tubes, protocol) is not { } shift)
            {
                continue;
            }

            var early = rows.Where(row => IsBefore(row, tubes)).ToArray();
            var first = rows.MinBy(row => row.SourceRow)!;
            var name =
                run.Key.Run.Length > 0
                    ? $"the run \"{run.Key.Run}\""
                    : FormattableString.Invariant($"the day {run.Key.Day:yyyy-MM-dd}");
            var which =
                run.Key.Run.Length > 0
                    ? $"runs = [\"{run.Key.Run}\"]"
                    : FormattableString.Invariant($"days = [\"{run.Key.Day:yyyy-MM-dd}\"]")
                        + (
                            run.Key.Instrument.Length > 0
                                ? $", instrument = \"{run.Key.Instrument}\""
                                : ""
                        );
            queries.Add(
                early.Length > 0 ? RowQueries.RunAnHourEarly : RowQueries.RunOffByAnHour,
                new QuerySource(file, first.SourceRow, ResultColumns.TestedAt.Name),
                StrictTime.Write(first.TestedAt!.Value),
                FormattableString.Invariant(
                    $"The tests of {name} ({rows.Length}) do not fit their plan, and with their times an hour {(shift < TimeSpan.Zero ? "earlier" : "later")} every one would fit. So it looks when the clock of an analyzer was not set as the clocks changed."
                ),
                FormattableString.Invariant(
                    $"Compare the clock of the analyzer with that of the laboratory. Where it was wrong, add to study.toml [[clock_correction]] with {which}, minutes = {shift.TotalMinutes:0}, reason, by and on, and leave the file as it is; where it was right, find out why the run was tested then."
                )
            );
            told.UnionWith(early);
        }

        return told;
    }

    private static TimeSpan? Shift(
        ImmutableArray<ResultRow> rows,
        Dictionary<TubeKey, TubeRow> tubes,
        ProtocolDraft protocol
    )
    {
        var fitting = rows.Count(row => Fits(row, TimeSpan.Zero));
        return rows.Select(row => (row.Specimen, row.Tube)).Distinct().Count() < FewestTests
            || fitting * 100 > MostFittingPercent * rows.Length
                ? null
            : rows.All(row => Fits(row, Hour)) ? Hour
            : rows.All(row => Fits(row, -Hour)) ? -Hour
            : null;

        bool Fits(ResultRow row, TimeSpan shift)
        {
            var tube = tubes[new TubeKey(row.Specimen, row.Tube)];
            var tested = row.TestedAt!.Value + shift;
            var delay = tested - tube.CollectedAt;
            return delay >= TimeSpan.Zero
                && !(tested < tube.SpunAt)
                && (
                    row.Occasion.TimePoint is { } point
                        ? delay >= point.Delay - protocol.Tolerance.Early
                            && delay <= point.Delay + protocol.Tolerance.LateAt(point)
                        : delay <= protocol.BaselineWithin
                );
        }
    }

    private static bool IsBefore(ResultRow row, Dictionary<TubeKey, TubeRow> tubes)
    {
        var tube = tubes[new TubeKey(row.Specimen, row.Tube)];
        return row.TestedAt < tube.CollectedAt || row.TestedAt < tube.SpunAt;
    }
}
