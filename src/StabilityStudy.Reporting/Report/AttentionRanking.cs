using System.Collections.Immutable;

namespace StabilityStudy.Reporting.Report;

/// <summary>The order of attentions on page 1: what could change the decision most comes first.</summary>
internal static class AttentionRanking
{
    /// <summary>
    /// Codes from the first to the last; a star stands for any text. What takes away pairs or their meaning comes before
    /// what was not recorded, that before how the protocol was drawn up, and flagged outliers, which stay in every
    /// figure, before the rest.
    /// </summary>
    private static readonly ImmutableArray<string> s_order =
    [
        "protocol-changed-after-lock",
        "locked-after-first-collection",
        "lock-not-as-recorded",
        "record-chain-broken",
        "protocol-amended",
        "too-many-left-out",
        "left-out*",
        "exclusion-after-result",
        "exclusion-before-collection",
        "*rerun*",
        "repeat-result-not-used",
        "controls-not-checked",
        "*without-control*",
        "*control*",
        "bridging*",
        "*-differs-within-pair",
        "drift-crosses-*",
        "shapes-disagree",
        "same-results",
        "delayed-tube-failed",
        "exclusion-of-failed-pair",
        "delayed-result-missing",
        "*-than-planned",
        "pair-excluded",
        "*-not-recorded",
        "supported-by-mean-only",
        "supported-by-individual-only",
        "supported-on-few-days",
        "bias-only",
        "few-days",
        "criterion-out-of-reach",
        "first-time-point-too-late",
        "*lax*",
        "outlier-flagged",
    ];

    /// <summary>Place of a code; lower comes first, and codes that are not listed come last.</summary>
    public static int Of(string code)
    {
        for (var i = 0; i < s_order.Length; i++)
        {
            if (Matches(code, s_order[i]))
            {
                return i;
            }
        }

        return s_order.Length;
    }

    private static bool Matches(string code, string pattern)
    {
        var text = pattern.Trim('*');
        return (pattern[0] == '*', pattern[^1] == '*') switch
        {
            (true, true) => code.Contains(text, StringComparison.Ordinal),
            (true, false) => code.EndsWith(text, StringComparison.Ordinal),
            (false, true) => code.StartsWith(text, StringComparison.Ordinal),
            _ => code == text,
        };
    }
}
