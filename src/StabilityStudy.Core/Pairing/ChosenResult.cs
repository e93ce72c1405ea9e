namespace StabilityStudy.Core.Pairing;

/// <summary>The result that counts at one time.</summary>
/// <param name="Row">The row that stands for the draw, with the mean as its result when replicates are averaged.</param>
/// <param name="Rows">The rows it is made of.</param>
internal sealed record ChosenResult(ResultRow Row, ImmutableArray<ResultRow> Rows)
{
    /// <summary>The test that failed before a documented rerun; null without one.</summary>
    public ResultRow? FailedBefore { get; init; }

    /// <summary>What the tube gave.</summary>
    public Measurement Measure(TubeRow tube, StudyProtocol protocol) =>
        new(
            Row.Tube,
            Row.Result,
            Row.TestedAt,
            Row.TestedAt - protocol.StartOf(tube),
            Rows.Length == 1 ? Rows[0].Conditions : OfReplicates(),
            Row.SourceRow
        )
        {
            Container = tube,
        };

    private TestConditions OfReplicates() =>
        Row.Conditions with
        {
            Run = Rows.Any(row => row.Run.Length == 0) ? "" : Joined(row => row.Run),
            Instrument = Joined(row => row.Instrument),
            Lot = Joined(row => row.Lot),
            Calibration = Joined(row => row.Calibration),
            Operator = Joined(row => row.Operator),
            ReplicateRuns = Rows.All(row => row.Run.Length > 0)
                ? [.. Rows.Select(row => row.Run).Distinct()]
                : [],
        };

    private string Joined(Func<ResultRow, string> of) =>
        string.Join(Measurement.And, Rows.Select(of).Where(text => text.Length > 0).Distinct());
}
