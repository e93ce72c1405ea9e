using StabilityStudy.Core.Criteria;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>Why a verdict is what it is, as a clause.</summary>
internal static class ReasonWords
{
    public static string Of(VerdictReason reason) => TradeWords.Clause(reason.Text);
}
