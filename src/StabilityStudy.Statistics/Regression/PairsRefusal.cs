namespace StabilityStudy.Statistics.Regression;

/// <summary>Reasons for which more than one method on pairs gives no value, so that they read and are checked the same everywhere.</summary>
internal static class PairsRefusal
{
    /// <summary>All first members are the same.</summary>
    public static NotComputable ConstantBaseline { get; } =
        new(AssumptionCode.ConstantBaseline, "All baseline values are the same.");

    /// <summary>All second members are the same.</summary>
    public static NotComputable ConstantDelayed { get; } =
        new(AssumptionCode.ZeroSpread, "All second values are the same.");

    /// <summary>Too few pairs or a constant x, in this order; absent when a line can be fitted.</summary>
    public static NotComputable? WhyNoLine(ReadOnlySpan<double> x, int fewestPairs, string needs)
    {
        if (x.Length < fewestPairs)
        {
            return new NotComputable(AssumptionCode.TooFewValues, needs);
        }

        return PairedValues.AreConstant(x) ? ConstantBaseline : null;
    }
}
