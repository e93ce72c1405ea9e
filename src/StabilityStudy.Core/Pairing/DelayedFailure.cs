namespace StabilityStudy.Core.Pairing;

/// <summary>
/// Whether a delayed tube failed. A failed tube whose baseline was fine counts as outside the allowable difference,
/// whatever its times: leaving it out would manufacture support.
/// </summary>
internal static class DelayedFailure
{
    /// <summary>How the delayed tube failed; null when it did not.</summary>
    public static string? Failure(TubeRow delayed, TubeRow baseline, ResultRow row)
    {
        if (delayed.Clot == ClotCheck.Yes)
        {
            return "clot";
        }

        if (
            delayed.Hemolysis is Hemolysis.Moderate or Hemolysis.Gross
            && delayed.Hemolysis > baseline.Hemolysis
        )
        {
            return "new hemolysis";
        }

        if (row.IsFlaggedAsFailed)
        {
            return "error flag " + row.Flag;
        }

        return row.Result is MissingResult missing && !IsNotTested(missing, row)
            ? Words(missing.Reason)
            : null;
    }

    /// <summary>Why there is no delayed result when the tube was not tested; null when it was tested.</summary>
    public static string? NotTested(ResultRow row) =>
        row.Result is MissingResult missing && IsNotTested(missing, row)
            ? StatedReason(row) ?? "neither a result nor a reason for its absence"
            : null;

    /// <summary>The stated reason, unrelated to the delay, for which a tube was not tested; null without one.</summary>
    public static string? StatedReason(ResultRow row) =>
        row.Result
            is MissingResult
            {
                Reason: MissingReason.QuantityNotSufficient or MissingReason.NotTested
            } missing
            ? Words(missing.Reason)
            : null;

    /// <summary>Whether the row tells of a state of the tube that testing it again does not undo.</summary>
    public static bool IsOfTheTube(ResultRow row) =>
        row.Result
            is MissingResult
            {
                Reason: MissingReason.Clot
                    or MissingReason.Fibrin
                    or MissingReason.Hemolysis
                    or MissingReason.StorageFailure
            };

    /// <summary>
    /// Whether a spare tube may stand for the tube of these rows: it gave no result, for a reason that is neither the storage's nor the tube's own. To replace a clotted or hemolyzed tube, or an odd result,
    /// would be to choose.
    /// </summary>
    public static bool MayBeReplaced(TubeRow? tube, IEnumerable<ResultRow> rows) =>
        tube
            is not { Clot: ClotCheck.Yes }
                and not { Hemolysis: Hemolysis.Moderate or Hemolysis.Gross }
        && rows.All(row => row.Result is MissingResult && !IsOfTheTube(row));

    private static bool IsNotTested(MissingResult missing, ResultRow row) =>
        StatedReason(row) is not null
        || (missing.Reason == MissingReason.NoReportableResult && row.TestedAt is null);

    private static string Words(MissingReason reason) =>
        reason switch
        {
            MissingReason.Clot => "clot",
            MissingReason.Fibrin => "fibrin",
            MissingReason.Hemolysis => "hemolysis",
            MissingReason.InstrumentError => "instrument error",
            MissingReason.QuantityNotSufficient => "too little plasma",
            MissingReason.NotTested => "not tested",
            MissingReason.StorageFailure => "storage failure",
            MissingReason.NoReportableResult => "no reportable result",
        };
}
