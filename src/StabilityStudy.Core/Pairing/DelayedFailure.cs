using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Pairing;

/// <summary>
/// Whether a delayed tube failed. A failed tube whose baseline was fine counts as outside the allowable difference:
/// leaving it out would manufacture support.
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

        if (row.Flag.Length > 0)
        {
            return "error flag " + row.Flag;
        }

        return row.Result is MissingResult missing && !IsUnrelated(missing, row)
            ? Words(missing.Reason)
            : null;
    }

    /// <summary>Why the delayed tube was not tested, for a reason unrelated to the delay; null when it was tested.</summary>
    public static string? NotTested(ResultRow row) =>
        row.Result is MissingResult missing && IsUnrelated(missing, row)
            ? Words(missing.Reason)
            : null;

    private static bool IsUnrelated(MissingResult missing, ResultRow row) =>
        missing.Reason is MissingReason.QuantityNotSufficient or MissingReason.NotTested
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
            _ => "no reportable result",
        };
}
