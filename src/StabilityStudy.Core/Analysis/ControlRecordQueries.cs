using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Analysis;

/// <summary>
/// Control results that can hardly vouch for the runs they are named in: far from the tests, one level only, missing in
/// some runs, with a range that nothing could leave, or all the same.
/// </summary>
/// <remarks>
/// Two levels in each eight hours of testing: 42 CFR 493.1269 for coagulation (from memory). The other figures are our
/// own, wide enough that ordinary records pass.
/// </remarks>
internal static class ControlRecordQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind RunTooLong = Kinds.Add("run-too-long", QueryRank.Control, "a run holds tests more than 24 hours apart", "give each run its own code and its own controls");
    internal static readonly QueryKind ControlFarFromTests = Kinds.Add("control-far-from-tests", QueryRank.Control, "a test lies more than 8 hours from every control of its run", "test controls within the eight hours of the specimens they vouch for");
    internal static readonly QueryKind OneControlLevel = Kinds.Add("one-control-level", QueryRank.Control, "a run has one control only, where two levels are usual", "add the other level, or say in a deviation why one is enough");
    internal static readonly QueryKind ControlInSomeRuns = Kinds.Add("control-in-some-runs", QueryRank.Control, "a control has results in some runs and none in others", "add its results, whatever they were");
    internal static readonly QueryKind ControlOfTwoKinds = Kinds.Add("control-of-two-kinds", QueryRank.Control, "a material is a control in some rows and bridging plasma in others", "name it one or the other in every row");
    internal static readonly QueryKind ControlRangeWide = Kinds.Add("control-range-wide", QueryRank.Control, "a control has an allowed range of more than ± 30 %", "enter the range that the laboratory works with");
    internal static readonly QueryKind ControlResultsSame = Kinds.Add("control-results-same", QueryRank.Measurement, "a control has the same result every time", "compare with the instrument's own record");
    internal static readonly QueryKind CvBelowControls = Kinds.Add("cv-below-controls", QueryRank.Measurement, "a control varies more than twice as much as the protocol states", "state the between-run CV that the laboratory's own controls show");
    // csharpier-ignore-end

    private static readonly TimeSpan s_longestRun = TimeSpan.FromHours(24);
    private static readonly TimeSpan s_longestAway = TimeSpan.FromHours(8);

    /// <summary>Half the width of an allowed range, percent of its middle, beyond which it controls little.</summary>
    private const decimal WidestHalfRange = 30;

    /// <summary>Fewer results of a control vary too much in their own SD.</summary>
    private const int FewestForSpread = 10;

    /// <summary>The queries about an analyte.</summary>
    /// <param name="analyte">The analyte.</param>
    /// <param name="rows">Its control results.</param>
    /// <param name="runs">Its runs.</param>
    public static IEnumerable<DataQuery> Of(
        Analyte analyte,
        ImmutableArray<ControlRow> rows,
        IEnumerable<TestedRun> runs
    )
    {
        var controls = rows.Where(row => row.Kind == ControlKind.Control).ToImmutableArray();
        var byRun = controls.GroupBy(row => row.Run).ToDictionary(run => run.Key);
        var tests = runs.Where(run => run.First is not null).ToImmutableArray();
        return
        [
            .. Runs(
                analyte.Id,
                RunTooLong,
                tests.Where(run => run.Last - run.First > s_longestRun),
                "with tests more than 24 hours apart; one control cannot vouch for all of them"
            ),
            .. Runs(
                analyte.Id,
                ControlFarFromTests,
                tests.Where(run => run.FarthestFromControls > s_longestAway),
                "with a test more than 8 hours from every control of the run",
                "Test controls within the eight hours of the specimens they vouch for, or correct the times."
            ),
            .. Runs(
                analyte.Id,
                OneControlLevel,
                tests.Where(run =>
                    byRun.TryGetValue(run.Run, out var own)
                    && !own.Select(row => row.Control).Distinct().Skip(1).Any()
                ),
                "with one control only, where two levels are usual"
            ),
            .. Controls(
                analyte.Id,
                ControlInSomeRuns,
                NotInEveryRun(controls, [.. tests.Select(run => run.Run)]),
                "has no result in some of the runs that have controls"
            ),
            .. Controls(
                analyte.Id,
                ControlOfTwoKinds,
                rows.GroupBy(row => row.Control)
                    .Where(same => same.Select(row => row.Kind).Distinct().Skip(1).Any())
                    .Select(same => same.Key),
                "is a control in some rows and bridging plasma in others"
            ),
            .. Controls(
                analyte.Id,
                ControlRangeWide,
                controls.Where(IsWide).Select(row => row.Control).Distinct(),
                $"has an allowed range of more than ± {WidestHalfRange} %, which hardly any result could leave"
            ),
            .. Controls(
                analyte.Id,
                CvBelowControls,
                Varying(rows, analyte),
                "varies more than twice as much from run to run as the protocol states"
            ),
            .. Controls(
                analyte.Id,
                ControlResultsSame,
                rows.GroupBy(row => row.Control)
                    .Where(same =>
                        !same.Select(row => row.Result.Text).Distinct().Skip(1).Any()
                        && IsRare(analyte, same.First().Result, same.Count())
                    )
                    .Select(same => same.Key),
                "has the same result every time",
                "Compare with the analyzer's own record."
            ),
        ];
    }

    /// <summary>Materials whose results vary by more than twice the stated CV; so much by chance is rare with ten results.</summary>
    private static IEnumerable<string> Varying(ImmutableArray<ControlRow> rows, Analyte analyte) =>
        analyte.BetweenRunCvPercent is not { } cv
            ? []
            : rows.GroupBy(row => row.Control)
                .Where(same =>
                    Spread
                        .Summarize([
                            .. same.Select(row => row.Result)
                                .OfType<MeasuredResult>()
                                .Select(result => (double)result.Value),
                        ])
                        .TryGet(out var spread)
                    && spread.Count >= FewestForSpread
                    && 100 * spread.StandardDeviation > 2 * (double)cv * Math.Abs(spread.Mean)
                )
                .Select(same => same.Key);

    /// <summary>Whether so many results are the same as imprecision and the last digit hardly ever make them.</summary>
    private static bool IsRare(Analyte analyte, ReportedResult same, int count) =>
        same is MeasuredResult { Value: var value }
        && ChanceAgreement.OfTimes(analyte, value, count, Math.Pow(10, -analyte.Decimals))
            < UnchangedResultQueries.Rare;

    private static bool IsWide(ControlRow row) =>
        row is { AllowedLow: { } low, AllowedHigh: { } high }
        && low + high > 0
        && 100 * (high - low) > WidestHalfRange * (low + high);

    /// <summary>Controls that some runs have and others lack, among the runs with any control.</summary>
    private static IEnumerable<string> NotInEveryRun(
        ImmutableArray<ControlRow> controls,
        ImmutableHashSet<string> tested
    )
    {
        var byRun = controls
            .Where(row => tested.Contains(row.Run) && row.Result is not MissingResult)
            .ToLookup(row => row.Run);
        return byRun
            .SelectMany(run => run.Select(row => row.Control))
            .Distinct()
            .Order(StringComparer.Ordinal)
            .Where(control => byRun.Any(run => run.All(row => row.Control != control)));
    }

    private static IEnumerable<DataQuery> Runs(
        string analyte,
        QueryKind kind,
        IEnumerable<TestedRun> runs,
        string how,
        string? action = null
    ) =>
        Query(
            analyte,
            kind,
            "run",
            runs.Select(run => run.Run),
            count => Counted.Of(count, "run") + " " + how,
            action
        );

    private static IEnumerable<DataQuery> Controls(
        string analyte,
        QueryKind kind,
        IEnumerable<string> controls,
        string what,
        string? action = null
    ) => Query(analyte, kind, "control", controls, _ => $"a control {what}", action);

    private static IEnumerable<DataQuery> Query(
        string analyte,
        QueryKind kind,
        string column,
        IEnumerable<string> of,
        Func<int, string> how,
        string? action = null
    )
    {
        ImmutableArray<string> codes = [.. of.Order(StringComparer.Ordinal)];
        return codes.IsEmpty
            ? []
            :
            [
                new(
                    kind,
                    DataFiles.ControlsAt(null, column),
                    "",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{analyte}: {how(codes.Length)}: {Doubts.ControlDoubts.Names(codes)}."
                    ),
                    action
                ),
            ];
    }
}
