namespace StabilityStudy.Core.Collecting;

/// <summary>What is not missing while a study is collecting, because it is still to come.</summary>
/// <param name="inventory">What is due; null where nothing is awaited.</param>
internal sealed class AwaitedRows(CollectionInventory? inventory)
{
    private readonly HashSet<(string Specimen, string Storage, TestOccasion Occasion)> _missing =
    [
        .. (inventory?.Tests ?? [])
            .Where(test => test.Standing == TestStanding.Overdue)
            .Select(test => (test.Specimen, test.Storage, test.Occasion)),
    ];

    /// <summary>The specimens of a cell without those whose result, or whose baseline, is awaited.</summary>
    public ImmutableArray<PairRecord> Without(CellKey key, ImmutableArray<PairRecord> pairs) =>
        inventory is null ? pairs : [.. pairs.Where(pair => !IsAwaited(key, pair))];

    /// <summary>The study without tubes that still wait: what is seen at the test is not recorded before.</summary>
    public StudyInputs WithTestedTubes(StudyInputs inputs)
    {
        if (inventory is null)
        {
            return inputs;
        }

        var waiting = inventory
            .Tests.Where(test => test.IsOpen)
            .Select(test => test.Specimen)
            .ToHashSet(StringComparer.Ordinal);
        var tested = inputs
            .Results.Where(row => !IsBlank(row))
            .Select(row => (row.Specimen, row.Tube))
            .ToHashSet();
        return inputs with
        {
            Tubes =
            [
                .. inputs.Tubes.Where(tube =>
                    !waiting.Contains(tube.Specimen) || tested.Contains((tube.Specimen, tube.Tube))
                ),
            ],
        };
    }

    /// <summary>The study without results of runs of the day that have no control yet: both may be entered at its end.</summary>
    public StudyInputs WithoutTodaysRuns(StudyInputs inputs)
    {
        if (inventory is null)
        {
            return inputs;
        }

        var controlled = inputs.Controls.Select(row => (row.Analyte, row.Run)).ToHashSet();
        return inputs with
        {
            Results =
            [
                .. inputs.Results.Where(row =>
                    row.TestedAt is not { } testedAt
                    || !IsToday(testedAt)
                    || controlled.Contains((row.Analyte, row.Run))
                ),
            ],
        };
    }

    /// <summary>Whether a time lies on the day of the check.</summary>
    public bool IsToday(DateTimeOffset time) =>
        inventory is { AsOf: var asOf } && time.ToOffset(asOf.Offset).Date == asOf.Date;

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
