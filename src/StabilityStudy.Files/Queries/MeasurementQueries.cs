using System.Collections.Immutable;
using static StabilityStudy.Core.Queries.Severity;

namespace StabilityStudy.Files.Queries;

/// <summary>Those of <see cref="AnalysisQueries"/> about results, runs and what was not recorded.</summary>
internal static class MeasurementQueries
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
        .. PlausibilityQueries.All,
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
            "operator-confounded-with-delay",
            Attention,
            "nobody tested both baselines and delayed tubes, so what a person adds cannot be told from the delay",
            "let each person test at both times, or show that persons agree"
        ),
        new(
            "calibration-differs-within-pair",
            Attention,
            "baseline and delayed result have another calibration, whose effect cannot be told from that of the delay",
            "test both with the same calibration, or show that it makes no difference"
        ),
        new(
            "fewer-replicates-than-planned",
            Attention,
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
            "result-not-planned",
            Attention,
            "a result is of a time point, group or storage that the protocol does not plan for its analyte",
            "nothing, or correct the row; it is not used"
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
    ];
}
