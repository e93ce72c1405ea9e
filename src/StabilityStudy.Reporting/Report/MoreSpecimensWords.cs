using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Queries;

namespace StabilityStudy.Reporting.Report;

/// <summary>How many specimens a new study would need, in one sentence.</summary>
internal static class MoreSpecimensWords
{
    public static string Of(MoreSpecimens more)
    {
        var because = TradeWords.Clause(more.Because);
        return more switch
        {
            { UnlikelyToHelp: true } => $"More specimens are unlikely to help: {because}.",
            { Specimens: { } count } =>
                $"Were the truth what was observed, a new study with {Counted.Of(count, "specimen")} would meet every criterion with a chance of at least 80 % ({because}). An extension of this study counts only if the protocol planned it.",
            _ =>
                $"No number of specimens up to 200 would meet every criterion with a chance of at least 80 %, were the truth what was observed ({because}).",
        };
    }
}
