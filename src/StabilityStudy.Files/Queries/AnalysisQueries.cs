using System.Collections.Immutable;
using static StabilityStudy.Core.Queries.Severity;

namespace StabilityStudy.Files.Queries;

/// <summary>
/// Queries that the analysis raises about pairs, runs and conclusions. They are made where they are found; this is
/// their list, and a test holds it against the source.
/// </summary>
internal static class AnalysisQueries
{
    /// <summary>Every kind, an entry each.</summary>
    internal static ImmutableArray<QueryKind> All { get; } =
    [
        new(
            "result-not-positive",
            Stop,
            "a result of zero or less stands for a quantity that is always above zero",
            "correct the result, or give the reason why there is none"
        ),
        new(
            "number-beyond-measuring-interval",
            Attention,
            "a number lies beyond the measuring interval of the protocol",
            "report it as < or > the limit, or correct measuring_interval before data are collected"
        ),
        new(
            "same-results",
            Attention,
            "results of different specimens are alike in a way that copied rows would be",
            "compare with the instrument's own record"
        ),
        new(
            "controls-not-checked",
            Attention,
            "the protocol keeps control results elsewhere, so that they were not checked here",
            "be ready to show them"
        ),
        new(
            "run-without-control",
            Attention,
            "a run has no control result",
            "add the control result; without one, what was tested in the run is not assessed"
        ),
        new(
            "control-out-of-range",
            Attention,
            "a run has a control result outside its range",
            "follow your procedure for a run out of control"
        ),
        new(
            "ratio-disagrees",
            Attention,
            "a normalized ratio does not agree with its prothrombin time, the sensitivity index and the mean normal time",
            "check the figures of the lot and the calculation of the analyzer"
        ),
        new(
            "instrument-differs-within-pair",
            Attention,
            "baseline and delayed result have another instrument, whose effect cannot be told from that of the delay",
            "test both with the same instrument, or show that it makes no difference"
        ),
        new(
            "lot-differs-within-pair",
            Attention,
            "baseline and delayed result have another lot, whose effect cannot be told from that of the delay",
            "test both with the same lot, or show that it makes no difference"
        ),
        new(
            "calibration-differs-within-pair",
            Attention,
            "baseline and delayed result have another calibration, whose effect cannot be told from that of the delay",
            "test both with the same calibration, or show that it makes no difference"
        ),
        new(
            "outlier-flagged",
            Attention,
            "the change of a specimen stands out from the others; it stays in every figure",
            "look for a mix-up or a transcription error"
        ),
        new(
            "delayed-tube-failed",
            Attention,
            "a delayed tube failed and counts as outside the allowable difference",
            "nothing: a tube that fails after waiting says something about waiting"
        ),
        new(
            "pair-excluded",
            Attention,
            "a pair is left out by a documented decision",
            "check that the reason does not depend on the result"
        ),
        new(
            "outside-timing",
            Attention,
            "a pair is left out because a time lies outside the protocol",
            "nothing when the times are right; correct them when they are not"
        ),
        new(
            "baseline-invalid",
            Attention,
            "a pair is left out because its baseline is not valid",
            "nothing when the times are right; correct them when they are not"
        ),
        new(
            "delayed-result-missing",
            Attention,
            "a delayed result is missing without a reason and counts as outside the allowable difference",
            "add the result, or the reason why there is none (NT, QNS)"
        ),
        new(
            "no-delayed-result",
            Attention,
            "a pair is left out because it has no delayed result",
            "add the result, or state in a deviation why there is none"
        ),
        new(
            "specimen-ineligible",
            Note,
            "a specimen is left out by a rule of the protocol",
            "nothing"
        ),
        new(
            "beyond-measuring-interval",
            Note,
            "a result lies beyond the measuring interval: it counts for individual agreement, not for means",
            "nothing"
        ),
        new(
            "fewer-replicates-than-planned",
            Note,
            "a result rests on fewer replicates than planned",
            "nothing"
        ),
        new(
            "repeat-result-not-used",
            Attention,
            "a second result of a tube is not used; the first valid one counts",
            "say in study.toml why it was repeated"
        ),
        new(
            "rerun",
            Attention,
            "a test was repeated for a reason that the protocol names",
            "nothing"
        ),
        new(
            "rerun-without-reason",
            Attention,
            "a test was repeated without a reason that the protocol names",
            "add [[rerun]] with its reason to study.toml"
        ),
        new(
            "exclusion-of-failed-pair",
            Attention,
            "an exclusion names a failed tube, which counts as outside all the same",
            "remove the exclusion, or explain it in a deviation"
        ),
        new(
            "exclusion-without-effect",
            Attention,
            "an exclusion leaves out nothing",
            "correct or remove it"
        ),
        new(
            "exclusion-before-collection",
            Stop,
            "an exclusion is dated before its specimen was collected",
            "correct the date"
        ),
        new(
            "exclusion-after-result",
            Attention,
            "an exclusion was decided after the delayed result was there",
            "show that the decision did not depend on the result"
        ),
        new(
            "supported-by-mean-only",
            Attention,
            "a time point is supported by the mean change alone",
            "add a criterion of kind \"individual\" to the next protocol"
        ),
        new(
            "supported-on-few-days",
            Attention,
            "a time point is supported on fewer collection days than planned",
            "check that the run codes are true, and that one day can stand for others"
        ),
        new(
            "left-out-pairs-could-overturn",
            Attention,
            "a conclusion rests on what was left out",
            "check each pair left out, and that its reason does not depend on the result"
        ),
        new(
            "fewer-specimens-than-planned",
            Attention,
            "fewer specimens were received than planned",
            "say in a deviation why collection ended early"
        ),
        new(
            "more-specimens-than-planned",
            Attention,
            "more specimens were received than planned",
            "say in a deviation when and why more were collected"
        ),
        new(
            "modified-test",
            Attention,
            "a supported window goes beyond the manufacturer's limit",
            "follow the rules for modified tests before the window is used"
        ),
        new(
            "fill-not-recorded",
            Attention,
            "the fill is not recorded though the protocol asks for a least fill",
            "record the fill"
        ),
        new(
            "origin-not-recorded",
            Attention,
            "the origin of specimens is not recorded",
            "record the origin"
        ),
        new(
            "instrument-not-recorded",
            Attention,
            "the instrument of results is not recorded",
            "record the instrument"
        ),
        new("lot-not-recorded", Attention, "the lot of results is not recorded", "record the lot"),
        new(
            "spun-not-recorded",
            Attention,
            "the time of spinning is not recorded though the protocol limits it",
            "record the time"
        ),
        new(
            "run-not-recorded",
            Attention,
            "results have no run, so no control can be shown for them",
            "record the run of each result"
        ),
        new(
            "bridging-shift",
            Attention,
            "stable plasma shifted between the runs of baselines and of delayed tubes, so part of the change may come from the runs",
            "find out what changed between the runs"
        ),
        new(
            "level-not-reached",
            Note,
            "a decision level lies outside the range of the baselines",
            "include specimens on both sides of it, or do not claim it"
        ),
        new(
            "result-not-planned",
            Attention,
            "a result is of a time point, group or storage that the protocol does not plan for its analyte",
            "nothing, or correct the row; it is not used"
        ),
        new(
            "subject-in-two-groups",
            Attention,
            "a person counts in two patient groups",
            "correct the group of one of the specimens"
        ),
        new(
            "isi-not-recorded",
            Attention,
            "the sensitivity index or mean normal time of a lot is not stated, so ratios were not computed again",
            "add isi and mean_normal_time to the lot"
        ),
        new(
            "rerun-reason-not-planned",
            Attention,
            "a rerun has a reason that the protocol does not name",
            "nothing: such a rerun does not count"
        ),
        new(
            "rerun-without-effect",
            Attention,
            "a rerun names no result that was tested again",
            "correct or remove it"
        ),
        new(
            "exclusion-not-needed",
            Note,
            "an exclusion changes nothing: its pairs are left out for another reason already",
            "nothing"
        ),
        new(
            "hematocrit-not-recorded",
            Attention,
            "the hematocrit is not recorded although a rule depends on it",
            "record it"
        ),
        new(
            "clot-not-recorded",
            Attention,
            "it is not recorded whether tubes had a clot although a rule depends on it",
            "record it"
        ),
        new(
            "hemolysis-not-recorded",
            Attention,
            "hemolysis is not recorded although a rule depends on it",
            "record it"
        ),
        new(
            "supported-by-individual-only",
            Attention,
            "a time point is supported by single specimens alone; no mean change was judged",
            "add a bias criterion to the next protocol"
        ),
        new(
            "spread-below-noise",
            Attention,
            "the changes spread far less than the imprecision of the test alone would make them",
            "compare with the own record of the instrument"
        ),
        new(
            "support-below-standard-window",
            Attention,
            "the supported window is shorter than today's",
            "have the medical director look at today's window"
        ),
        new(
            "drift-crosses-before-standard-window",
            Attention,
            "the bound of the drift reaches the allowable bias before today's window ends",
            "have the medical director look at today's window"
        ),
    ];
}
