namespace StabilityStudy.Core.Pairing;

/// <summary>
/// What became of a specimen at a time point. The first step that leaves a pair out is the one that counts it; the zero
/// member is left out.
/// </summary>
public enum PairStatus
{
    /// <summary>Left out: the specimen or its tube does not meet the eligibility rules.</summary>
    Ineligible,

    /// <summary>Left out: the delayed test was not within the planned time.</summary>
    OutsideTiming,

    /// <summary>Left out: there is no valid baseline.</summary>
    BaselineInvalid,

    /// <summary>There is no delayed result, whatever the reason: counts as outside the allowable difference, because the loss may hide a failure.</summary>
    NoDelayedResult,

    /// <summary>Left out by a person's documented decision; one that came when the delayed result could be known counts as outside the allowable difference.</summary>
    Excluded,

    /// <summary>Left out with its whole run: a control was out of range, or no control vouches for the run.</summary>
    RunNotInControl,

    /// <summary>Not meant to be tested at this time point: the protocol tests each specimen at some of them only.</summary>
    NotAssigned,

    /// <summary>
    /// The tube of this time point was not drawn, as stated on the day of collection: nothing was there to fail, so it is
    /// no loss.
    /// </summary>
    NotDrawn,

    /// <summary>Shown, never counted: it was added after the data had been looked at.</summary>
    AddedAfterLook,

    /// <summary>Shown, never counted: the planned number was complete with the specimens collected before it.</summary>
    BeyondPlanned,

    /// <summary>The delayed tube gave no result although its baseline did: counts as outside the allowable difference.</summary>
    Failed,

    /// <summary>Baseline or delayed result lies beyond the measuring interval: counts for individual agreement, not for means.</summary>
    BeyondInterval,

    /// <summary>Baseline and delayed result are compared.</summary>
    Compared,
}
