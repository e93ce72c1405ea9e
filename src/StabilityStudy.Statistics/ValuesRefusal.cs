namespace StabilityStudy.Statistics;

/// <summary>Reasons for which more than one method on single values gives none, so that they read the same everywhere.</summary>
internal static class ValuesRefusal
{
    /// <summary>All values are the same.</summary>
    public static Estimate<T> ZeroSpread<T>()
        where T : class =>
        Estimate.Refused<T>(AssumptionCode.ZeroSpread, "All values are the same.");
}
