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
        .. MeasurementQueries.All,
        new(
            "protocol-changed-after-lock",
            Attention,
            "the protocol is not the one that was locked last",
            "put the locked protocol back, or lock the new one with the reason for the amendment"
        ),
        new(
            "locked-after-first-collection",
            Attention,
            "the protocol was locked when specimens had already been collected",
            "say in a deviation why; lock the next protocol before the first collection"
        ),
        new(
            "lock-evidence-does-not-fit",
            Attention,
            "a signature or time stamp in protocol.lock is not right, or of another time than the lock states",
            "put the file back as the program wrote it; find out who changed it or whose clock was wrong"
        ),
        new(
            "protocol-amended",
            Attention,
            "the protocol was amended after its first lock",
            "read the reasons in protocol.lock and the versions in the folder locked"
        ),
        new(
            "lock-by-unknown",
            Attention,
            "the protocol was locked by somebody who is not among the people of study.toml",
            "add the person to study.toml, or find out who locked the protocol"
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
            "check mixing and fill at collection; the tube stays counted"
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
            "level-not-reached",
            Note,
            "a decision level lies outside the range of the baselines",
            "include specimens on both sides of it, or do not claim it"
        ),
        new(
            "subject-in-two-groups",
            Attention,
            "a person counts in two patient groups",
            "correct the group of one of the specimens"
        ),
        new(
            "exclusion-not-needed",
            Note,
            "an exclusion changes nothing: its pairs are left out for another reason already",
            "nothing"
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
        new(
            "change-before-baseline",
            Attention,
            "what the declared shape puts before the baseline would take the mean change of a supported time point over the limit",
            "weigh it before the window is approved; test baselines sooner in the next study"
        ),
        new(
            "change-turns-back",
            Attention,
            "the mean change is smaller at a later time point: opposite effects may cancel",
            "read nothing into the smaller change"
        ),
    ];
}
