using System.Collections.Immutable;
using static StabilityStudy.Core.Queries.Severity;

namespace StabilityStudy.Files.Queries;

/// <summary>Those of <see cref="AnalysisQueries"/> about what the rules let pass and can hardly be so: copied, typed or missing results, times, tubes and controls.</summary>
internal static class PlausibilityQueries
{
    /// <summary>Every kind, an entry each.</summary>
    internal static ImmutableArray<QueryKind> All { get; } =
    [
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
            "days-of-utc",
            Attention,
            "every collection time is written in UTC and no time zone is named, so that collection days are those of UTC",
            "name the time zone and write local times, or write the offset of the place"
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
    ];
}
