using StabilityStudy.Core.Queries;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>How many specimens a new study would need, in one sentence.</summary>
internal static class MoreSpecimensWords
{
    /// <summary>The same for a narrow column; the page of the time point has the sentence.</summary>
    public static string InBrief(MoreSpecimens more) =>
        more switch
        {
            { UnlikelyToHelp: true } => "more specimens are unlikely to help.",
            { Specimens: { } count } => $"a new study with about {Counted.Of(count, "specimen")}.",
            _ => "too close to the limits for more specimens to settle; ask a shorter time.",
        };

    public static string Of(MoreSpecimens more)
    {
        var because = Because(more);
        return more switch
        {
            { UnlikelyToHelp: true } => $"More specimens are unlikely to help: {because}.",
            { Specimens: { } count } =>
                $"Were the truth what was observed, a new study with {Counted.Of(count, "specimen")}, as many a day as here, would meet every criterion that controls its error with a chance of about 80 % ({because}). An extension of this study counts only if the protocol planned it.",
            _ =>
                $"The figures are too close to their limits for more specimens to settle it: were the truth what was observed, not even 200 would meet every criterion with a chance of 80 % ({because}). Ask a shorter time, or keep the last supported one.",
        };
    }

    /// <summary>The figure that decides, and what stays open beside it.</summary>
    private static string Because(MoreSpecimens more)
    {
        var beside = more.Beside.Select(ReasonWords.Of).Distinct();
        return more switch
        {
            { Deciding: null } => string.Join("; ", beside),
            { Deciding: var beyond, UnlikelyToHelp: true } => CriterionWords.IsBeyond(beyond),
            { Deciding: var deciding } => string.Join(
                "; besides, ",
                beside.Prepend($"criterion {deciding.Criterion} decides")
            ),
        };
    }
}
