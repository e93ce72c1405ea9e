using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Criteria;

/// <summary>Whether enough specimens keep a property, decided on whole numbers by the exact one-sided bound.</summary>
internal static class ShareKept
{
    /// <param name="counted">Specimens that count, at least one.</param>
    /// <param name="changed">Of these, how many count as changed for what is met.</param>
    /// <param name="surelyChanged">How many count as changed for what is refuted.</param>
    /// <param name="percentMinimum">Least share kept, percent. No number of specimens shows 100.</param>
    /// <param name="confidenceLevel">Level of each one-sided bound.</param>
    public static Verdict Judge(
        int counted,
        int changed,
        int surelyChanged,
        decimal percentMinimum,
        double confidenceLevel
    )
    {
        var required = (double)(percentMinimum / 100);
        if (
            percentMinimum is > 0 and < 100
            && changed <= AcceptanceNumber.Of(counted, required, confidenceLevel)
        )
        {
            return Verdict.Met;
        }

        return
            ClopperPearson.OneSidedUpper(counted - surelyChanged, counted, confidenceLevel)
            < required
            ? Verdict.NotMet
            : Verdict.Inconclusive;
    }

    /// <summary>A share with exact bounds; refused when no specimen counts.</summary>
    public static Estimate<ProportionBounds> Bounds(int of, int counted, double confidenceLevel) =>
        counted == 0
            ? Estimate.Refused<ProportionBounds>(Refusal.NothingCounted)
            : Estimate.Of(ClopperPearson.Bounds(of, counted, confidenceLevel));
}
