namespace StabilityStudy.Core.Collecting;

/// <summary>What is not missing while a study is collecting, because it is still to come.</summary>
/// <param name="tests">The planned tests.</param>
/// <param name="asOf">The moment of the check; null where nothing is awaited.</param>
internal sealed class AwaitedRows(ImmutableArray<PlannedTest> tests, DateTimeOffset? asOf)
{
    private readonly HashSet<(string Specimen, string Storage, TestOccasion Occasion)> _missing =
    [
        .. tests
            .Where(test => test.Standing == TestStanding.Overdue)
            .Select(test => (test.Specimen, test.Storage, test.Occasion)),
    ];

    /// <summary>The specimens of a cell without those whose result, or whose baseline, is awaited.</summary>
    public ImmutableArray<PairRecord> Without(CellKey key, ImmutableArray<PairRecord> pairs) =>
        asOf is null ? pairs : pairs.RemoveAll(pair => IsAwaited(key, pair));

    /// <summary>The tubes but for those that still wait: what is seen at the test is not recorded before.</summary>
    public ImmutableArray<TubeRow> TestedTubes(StudyRows rows)
    {
        var waiting = tests
            .Where(test => test.IsOpen)
            .Select(test => test.Specimen)
            .ToHashSet(StringComparer.Ordinal);
        return rows.Inputs.Tubes.RemoveAll(tube =>
            waiting.Contains(tube.Specimen) && !rows.HasResult(tube, row => !IsBlank(row))
        );
    }

    /// <summary>The study without results of runs of the day that have no control yet: both may be entered at its end.</summary>
    public StudyRows WithoutTodaysRuns(StudyRows rows)
    {
        if (asOf is null)
        {
            return rows;
        }

        var inputs = rows.Inputs;
        var controlled = inputs.Controls.Select(row => (row.Analyte, row.Run)).ToHashSet();
        var results = inputs.Results.RemoveAll(row =>
            row.TestedAt is { } testedAt
            && IsToday(testedAt)
            && !controlled.Contains((row.Analyte, row.Run))
        );
        return results.Length == inputs.Results.Length
            ? rows
            : new(inputs with { Results = results });
    }

    /// <summary>Whether a time lies on the day of the check.</summary>
    public bool IsToday(DateTimeOffset time) =>
        asOf is { } now && time.ToOffset(now.Offset).Date == now.Date;

    /// <summary>Whether a row has neither result nor time yet, as a sheet has whose rows are there before the tubes are tested.</summary>
    public static bool IsBlank(ResultRow row) =>
        row is { TestedAt: null, Flag: "", Result: MissingResult { Text: "" } };

    private static bool IsBlank(Measurement? measured) =>
        measured is null or { TestedAt: null, Result: MissingResult { Text: "" } };

    private bool IsAwaited(CellKey key, PairRecord pair) =>
        pair.Status switch
        {
            PairStatus.NoDelayedResult => IsBlank(pair.Delayed)
                && !_missing.Contains(
                    (pair.Specimen, key.Storage, new TestOccasion(key.TimePoint))
                ),
            PairStatus.BaselineInvalid => IsBlank(pair.Baseline)
                && !_missing.Contains((pair.Specimen, "", default)),
            _ => false,
        };
}
