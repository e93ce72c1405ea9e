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
        TubesByKey tubes,
        ProtocolDraft protocol,
        QueryList queries
    )
    {
        var told = new HashSet<ResultRow>(ReferenceEqualityComparer.Instance);
        if (protocol.Conduct.TimeOrigin != TimeOrigin.Collection)
        {
            return told;
        }

        var doubtful = DoubtfulRuns(results, tubes, protocol);
        if (doubtful.Count == 0)
        {
            return told;
        }

        var runs = results
            .Where(row => row.TestedAt is not null && tubes.Of(row) is not null)
            .GroupBy(RunKey.Of)
            .Where(run => doubtful.Contains(run.Key));
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

    // Nearly every run fits its plan, and then no rows are gathered.
    private static HashSet<RunKey> DoubtfulRuns(
        ImmutableArray<ResultRow> results,
        TubesByKey tubes,
        ProtocolDraft protocol
    )
    {
        var runs = new Dictionary<RunKey, RunFit>();
        var (key, fit) = (default(RunKey), new RunFit());
        foreach (var row in results)
        {
            if (row.TestedAt is null || tubes.Of(row) is not { } tube)
            {
                continue;
            }

            if (RunKey.Of(row) is var own && own != key)
            {
                key = own;
                fit = runs.TryGetValue(key, out var known) ? known : runs[key] = new RunFit();
            }

            fit.Tests++;
            fit.Fitting += Fits(row, tube, TimeSpan.Zero, protocol) ? 1 : 0;
        }

        return [.. runs.Where(run => run.Value.IsDoubtful).Select(run => run.Key)];
    }

    private static TimeSpan? Shift(
        ImmutableArray<ResultRow> rows,
        TubesByKey tubes,
        ProtocolDraft protocol
    )
    {
        return rows.Select(row => (row.Specimen, row.Tube)).Distinct().Count() < FewestTests ? null
            : AllFit(Hour) ? Hour
            : AllFit(-Hour) ? -Hour
            : null;

        bool AllFit(TimeSpan shift) =>
            rows.All(row => tubes.Of(row) is { } tube && Fits(row, tube, shift, protocol));
    }

    private static bool Fits(ResultRow row, TubeRow tube, TimeSpan shift, ProtocolDraft protocol)
    {
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

    private static bool IsBefore(ResultRow row, TubesByKey tubes) =>
        tubes.Of(row) is { } tube
        && (row.TestedAt < tube.CollectedAt || row.TestedAt < tube.SpunAt);

    private sealed class RunFit
    {
        public int Tests { get; set; }

        public int Fitting { get; set; }

        public bool IsDoubtful => Fitting * 100 <= MostFittingPercent * Tests;
    }

    // Where runs have no code, the tests of a day are taken for one.
    private readonly record struct RunKey(string Run, string Instrument, DateTime Day)
    {
        public static RunKey Of(ResultRow row) =>
            new(row.Run, row.Instrument, row.Run.Length > 0 ? default : row.TestedAt!.Value.Date);
    }
}
