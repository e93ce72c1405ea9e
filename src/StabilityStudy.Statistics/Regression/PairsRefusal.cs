using System.Globalization;

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

    /// <summary>More pairs than all slopes between twos of them can be kept for.</summary>
    public static NotComputable TooManySlopes(int mostPairs) =>
        new(
            AssumptionCode.TooManyValues,
            string.Create(
                CultureInfo.InvariantCulture,
                $"The slopes between all twos of pairs are kept in memory; more than {mostPairs} pairs are too many."
            )
        );

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
