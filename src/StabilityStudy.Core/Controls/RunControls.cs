using System.Diagnostics;

namespace StabilityStudy.Core.Controls;

/// <summary>What the control results of an analyte say about the runs in which a cell's pairs were tested.</summary>
internal static class RunControls
{
    /// <summary>The evidence.</summary>
    /// <param name="pairs">Every specimen of the cell; those with two results count.</param>
    /// <param name="controls">The control results of the cell's analyte.</param>
    public static ControlEvidence Of(
        ImmutableArray<PairRecord> pairs,
        ImmutableArray<ControlRow> controls
    )
    {
        var counted = pairs.Keep(pair =>
            pair.Status is PairStatus.Compared or PairStatus.BeyondInterval
        );
        var standing = Standings(controls);
        var tested = new HashSet<string>(StringComparer.Ordinal);
        foreach (var pair in counted)
        {
            AddRuns(pair.Baseline, tested);
            AddRuns(pair.Delayed, tested);
        }

        var runs = tested
            .Order(StringComparer.Ordinal)
            .ToLookup(run => standing.GetValueOrDefault(run));
        return new ControlEvidence(
            runs.Sum(same => same.Count()),
            runs[RunStanding.InControl].Count(),
            [.. runs[RunStanding.WithoutControl]],
            [.. runs[RunStanding.OutOfControl]],
            BridgingPlasmas.Shift(counted, controls)
        );
    }

    private static void AddRuns(Measurement? result, HashSet<string> runs)
    {
        if (result is { ReplicateRuns: { IsEmpty: false } several })
        {
            runs.UnionWith(several);
        }
        else if (result is { Run: { Length: > 0 } run })
        {
            runs.Add(run);
        }
    }

    /// <summary>The pairs, those with a result of a run that no control vouches for left out.</summary>
    /// <param name="pairs">Every specimen of the cell.</param>
    /// <param name="controls">The control results of the cell's analyte.</param>
    public static ImmutableArray<PairRecord> LeaveOut(
        ImmutableArray<PairRecord> pairs,
        ImmutableArray<ControlRow> controls
    )
    {
        var standing = Standings(controls);
        return pairs.Map(pair =>
            pair.Status is PairStatus.Compared or PairStatus.BeyondInterval
            && Problem(pair, standing) is { } problem
                ? pair with
                {
                    Status = PairStatus.RunNotInControl,
                    Reason = problem,
                }
                : pair
        );
    }

    private static string? Problem(
        PairRecord pair,
        IReadOnlyDictionary<string, RunStanding> standing
    ) => Problem(pair.Baseline, standing) ?? Problem(pair.Delayed, standing);

    private static string? Problem(
        Measurement? result,
        IReadOnlyDictionary<string, RunStanding> standing
    ) =>
        result switch
        {
            null => null,
            { ReplicateRuns: { IsEmpty: false } runs } => FirstProblem(runs, standing),
            { Run.Length: 0 } => "run not recorded",
            { Run: var run } => Problem(run, standing),
        };

    private static string? FirstProblem(
        ImmutableArray<string> runs,
        IReadOnlyDictionary<string, RunStanding> standing
    ) => runs.Select(run => Problem(run, standing)).FirstOrDefault(problem => problem is not null);

    private static string? Problem(string run, IReadOnlyDictionary<string, RunStanding> standing) =>
        standing.GetValueOrDefault(run) switch
        {
            RunStanding.WithoutControl => $"run {run} without a control within its range",
            RunStanding.OutOfControl => $"run {run} with a control outside its range",
            RunStanding.InControl => null,
        };

    /// <summary>How each run with a control stands; a run that is not in it has none.</summary>
    public static IReadOnlyDictionary<string, RunStanding> Standings(
        IEnumerable<ControlRow> controls
    ) =>
        controls
            .Where(row => row.Kind == ControlKind.Control)
            .GroupBy(row => row.Run)
            .ToDictionary(
                rows => rows.Key,
                rows =>
                    rows.Any(IsOutside) ? RunStanding.OutOfControl
                    : rows.Any(IsInside) ? RunStanding.InControl
                    : RunStanding.WithoutControl
            );

    private static bool IsInside(ControlRow row) =>
        row switch
        {
            {
                Result: MeasuredResult { Value: var value },
                AllowedLow: { } low,
                AllowedHigh: { } high
            } => value >= low && value <= high,
            { Result: CategoryResult found, Expected: { } expected } => found.Category
                == expected.Category,
            _ => false,
        };

    /// <summary>A result beyond what the method reports is not within a range of reported values.</summary>
    public static bool IsOutside(ControlRow row) =>
        row.Result switch
        {
            MeasuredResult { Value: var value } => value < row.AllowedLow
                || value > row.AllowedHigh,
            CensoredResult => true,
            CategoryResult found => row.Expected is { } expected
                && found.Category != expected.Category,
            MissingResult => false,
            _ => throw new UnreachableException(),
        };
}

/// <summary>How a run stands by its controls. The zero member is the cautious one.</summary>
internal enum RunStanding
{
    /// <summary>No control result that can be judged.</summary>
    WithoutControl,

    /// <summary>A control lies outside its range.</summary>
    OutOfControl,

    /// <summary>At least one control, and every one within its range.</summary>
    InControl,
}
