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
        new(
            "results-unchanged",
            Attention,
            "more results are the same to the last digit at two times than the imprecision of the test allows",
            "compare with the instrument's own record"
        ),
        new(
            "run-too-long",
            Attention,
            "a run holds tests more than 24 hours apart",
            "give each run its own code and its own controls"
        ),
        new(
            "control-far-from-tests",
            Attention,
            "a test lies more than 8 hours from every control of its run",
            "test controls within the eight hours of the specimens they vouch for"
        ),
        new(
            "one-control-level",
            Attention,
            "a run has one control only, where two levels are usual",
            "add the other level, or say in a deviation why one is enough"
        ),
        new(
            "control-in-some-runs",
            Attention,
            "a control has results in some runs and none in others",
            "add its results, whatever they were"
        ),
        new(
            "control-of-two-kinds",
            Attention,
            "a material is a control in some rows and bridging plasma in others",
            "name it one or the other in every row"
        ),
        new(
            "control-range-wide",
            Attention,
            "a control has an allowed range of more than ± 30 %",
            "enter the range that the laboratory works with"
        ),
        new(
            "control-results-same",
            Attention,
            "a control has the same result every time",
            "compare with the instrument's own record"
        ),
        new(
            "hemolysis-at-baseline",
            Attention,
            "baseline tubes were moderately or grossly hemolyzed",
            "check that the laboratory would report such specimens"
        ),
        new(
            "collected-in-one-minute",
            Attention,
            "more than three subjects were collected in one minute",
            "check the times and that the subjects are different people"
        ),
        new(
            "times-as-planned",
            Attention,
            "half or more of the delayed results were tested at the planned delay to the minute",
            "enter the times of the tests as the instrument recorded them"
        ),
        new(
            "more-delays-than-planned",
            Attention,
            "specimens were tested at more time points than delays_per_specimen says",
            "state the number of delays that was planned, and add the results of every tube"
        ),
        new(
            "waited-mostly-spun",
            Attention,
            "half of the delayed tubes of whole blood waited unspun for less than three quarters of their delay",
            "spin delayed tubes shortly before their test"
        ),
        new(
            "origin-not-native",
            Attention,
            "specimens are of pooled or spiked plasma",
            "repeat the study with patients' specimens, or limit the conclusion to such plasma"
        ),
        new(
            "no-time-for-spinning",
            Attention,
            "results were tested less than five minutes after their tubes were spun",
            "enter the times at which tubes were spun, not those of their tests"
        ),
        new(
            "tested-before-receipt",
            Attention,
            "results were tested before their tubes were received",
            "correct the time that is wrong"
        ),
        new(
            "replicates-disagree",
            Attention,
            "results of one tube and time differ by more than six times the between-run CV",
            "look for an error; the mean of such results stands for neither"
        ),
        new(
            "result-of-other-magnitude",
            Attention,
            "a result of a specimen is six times another or more",
            "look for a lost decimal point or another unit"
        ),
        new(
            "cv-below-controls",
            Attention,
            "a control varies more than twice as much as the protocol states",
            "state the between-run CV that the laboratory's own controls show"
        ),
        new(
            "extended-as-planned",
            Attention,
            "more specimens were received than planned for the first of two looks",
            "check that the extension was begun because the first look was inconclusive"
        ),
        new(
            "frozen-briefly",
            Attention,
            "tubes were frozen for less than three quarters of their delay",
            "correct frozen_at and thawed_at"
        ),
        new(
            "offsets-differ",
            Attention,
            "times of one specimen have offsets from UTC that differ by more than an hour",
            "correct the offsets, or name one time zone and write local times"
        ),
        new(
            "many-beyond-interval",
            Attention,
            "more than one in ten results lies beyond the measuring interval, and no mean holds them",
            "show that such results are as reported"
        ),
        new(
            "excluded-beyond-limit",
            Attention,
            "a pair excluded by decision had changed by more than a limit",
            "check that the reason does not depend on the result"
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
