using System.Collections.Immutable;

namespace StabilityStudy.Reporting.Report;

/// <summary>The order of attentions on page 1: what could change the decision most comes first.</summary>
internal static class AttentionRanking
{
    /// <summary>
    /// Codes from the first to the last, each whole. What could overturn a *supported* comes first: pairs left out or
    /// chosen, results that may not be measurements of their own, runs without control, a change confounded with the
    /// delay, a protocol that asks for little. Then what the conclusion already counts, what was not recorded, and last
    /// sources and flagged outliers, which stay in every figure.
    /// </summary>
    internal static ImmutableArray<string> Order { get; } =
    [
        "protocol-changed-after-lock",
        "locked-after-first-collection",
        "lock-not-as-recorded",
        "record-chain-broken",
        "protocol-amended",
        "left-out-pairs-could-overturn",
        "exclusion-after-result",
        "rerun-without-reason",
        "rerun-reason-not-planned",
        "repeat-result-not-used",
        "exclusion-of-failed-pair",
        "same-results",
        "spread-below-noise",
        "subject-in-two-groups",
        "run-without-control",
        "control-out-of-range",
        "run-not-recorded",
        "controls-not-checked",
        "bridging-shift",
        "instrument-differs-within-pair",
        "lot-differs-within-pair",
        "calibration-differs-within-pair",
        "decided-by-estimate-alone",
        "wide-limit",
        "low-confidence",
        "low-share",
        "bias-limit-not-below-individual",
        "bias-limit-is-individual",
        "supported-by-mean-only",
        "supported-by-individual-only",
        "supported-on-few-days",
        "bias-only",
        "individual-only",
        "few-days",
        "late-baseline",
        "much-may-be-left-out",
        "wide-tolerance",
        "drift-crosses-before-standard-window",
        "support-below-standard-window",
        "delayed-tube-failed",
        "delayed-result-missing",
        "pair-excluded",
        "fewer-specimens-than-planned",
        "more-specimens-than-planned",
        "ratio-disagrees",
        "number-beyond-measuring-interval",
        "lot-expired",
        "spun-not-recorded",
        "clot-not-recorded",
        "hemolysis-not-recorded",
        "fill-not-recorded",
        "hematocrit-not-recorded",
        "origin-not-recorded",
        "instrument-not-recorded",
        "lot-not-recorded",
        "isi-not-recorded",
        "baseline-invalid",
        "outside-timing",
        "no-delayed-result",
        "modified-test",
        "manufacturer-limit-not-stated",
        "criterion-out-of-reach",
        "rerun",
        "result-not-planned",
        "exclusion-without-effect",
        "rerun-without-effect",
        "control-run-unknown",
        "duplicate-row",
        "column-misspelt",
        "source-too-short",
        "source-from-memory",
        "source-is-an-example",
        "outlier-flagged",
    ];

    /// <summary>Place of a code; lower comes first, and codes that are not listed come last.</summary>
    public static int Of(string code) =>
        Order.IndexOf(code) is >= 0 and var place ? place : Order.Length;
}
