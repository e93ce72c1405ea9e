using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>What becomes of a pair, and why. The first rule that applies decides.</summary>
/// <param name="Status">What became of it.</param>
/// <param name="Reason">Why, in words; empty when the pair is compared.</param>
internal sealed record PairDecision(PairStatus Status, string Reason)
{
    private static readonly PairDecision s_compared = new(PairStatus.Compared, "");

    /// <summary>Whether the pair is ineligible for its delayed tube alone, while the baseline is sound.</summary>
    public bool IsOfDelayedTube { get; init; }

    /// <summary>Whether the exclusion came when the delayed result could be known.</summary>
    public bool IsExcludedKnowing { get; init; }

    /// <summary>Decides by the rows, and then by the documented exclusions.</summary>
    public static PairDecision Of(
        Draw draw,
        BaselineFinding baseline,
        ChosenResult? chosen,
        TubeRow? tube,
        TimePoint timePoint,
        PairContext context
    )
    {
        var decision = ByRows(draw, baseline, chosen, tube, timePoint, context);
        // A failed or lost pair stays: excluding it would take out the very tubes that speak against the window.
        return
            decision.Status is PairStatus.Compared or PairStatus.BeyondInterval
            && ExclusionOf(draw.Specimen, timePoint, context) is { } exclusion
            ? new(
                PairStatus.Excluded,
                FormattableString.Invariant(
                    $"{exclusion.Reason} ({exclusion.By}, {exclusion.On:yyyy-MM-dd})"
                )
            )
            {
                IsExcludedKnowing =
                    chosen?.Row.TestedAt is { } testedAt && exclusion.IsAfter(testedAt),
            }
            : decision;
    }

    private static Exclusion? ExclusionOf(string specimen, TimePoint timePoint, PairContext context)
    {
        foreach (var item in context.Facts.Exclusions)
        {
            if (
                item.Specimen == specimen
                && (item.Analyte is null || item.Analyte == context.Analyte.Id)
                && (item.TimePoint is null || item.TimePoint == timePoint)
            )
            {
                return item;
            }
        }

        return null;
    }

    private static PairDecision ByRows(
        Draw draw,
        BaselineFinding baseline,
        ChosenResult? chosen,
        TubeRow? tube,
        TimePoint timePoint,
        PairContext context
    )
    {
        if (baseline.Status == PairStatus.Ineligible)
        {
            return new(baseline.Status, baseline.Reason);
        }

        if (baseline.Status == PairStatus.Compared && draw.NotDrawnAt(timePoint) is { } notDrawn)
        {
            return new(
                PairStatus.NotDrawn,
                FormattableString.Invariant(
                    $"tube not drawn: {notDrawn.Reason} ({notDrawn.By}, {notDrawn.On:yyyy-MM-dd})"
                )
            );
        }

        if (chosen is null || tube is null)
        {
            return baseline.Status == PairStatus.Compared
                ? new(
                    PairStatus.NoDelayedResult,
                    "neither a result nor a reason for its absence in results.csv"
                )
                : new(PairStatus.BaselineInvalid, baseline.Reason);
        }

        if (
            baseline is { Status: PairStatus.Compared, Tube: { } baselineTube }
            && DelayedFailure.Failure(tube, baselineTube, chosen.Row) is { } failure
        )
        {
            return new(PairStatus.Failed, failure);
        }

        if (
            EligibilityRules.Problem(tube, context.Storage, context.Protocol.Eligibility) is
            { } unusable
        )
        {
            return new(PairStatus.Ineligible, unusable)
            {
                IsOfDelayedTube = baseline.Status == PairStatus.Compared,
            };
        }

        if (
            (
                TimingRules.TubePlanProblem(draw, tube, context)
                ?? Untimely(chosen, tube, timePoint, context)
            ) is
            { } untimely
        )
        {
            // A rerun that does not stand for the planned delay leaves the failed test standing.
            return
                baseline is { Status: PairStatus.Compared, Tube: { } soundBaseline }
                && chosen.FailedBefore is { } failedBefore
                && DelayedFailure.Failure(tube, soundBaseline, failedBefore) is { } firstFailure
                ? new(PairStatus.Failed, $"{firstFailure}; the rerun was {untimely}")
                : new(PairStatus.OutsideTiming, untimely);
        }

        if (baseline.Status != PairStatus.Compared)
        {
            return new(PairStatus.BaselineInvalid, baseline.Reason);
        }

        if (DelayedFailure.NotTested(chosen.Row) is { } notTested)
        {
            return new(PairStatus.NoDelayedResult, notTested);
        }

        if (!IsTimed(chosen.Rows))
        {
            return new(PairStatus.OutsideTiming, "time of the delayed test not recorded");
        }

        if (chosen.Row.TestedAt <= baseline.Measurement?.TestedAt)
        {
            return new(PairStatus.OutsideTiming, "tested no later than its baseline");
        }

        return baseline.Measurement?.Result is CensoredResult || chosen.Row.Result is CensoredResult
            ? new(PairStatus.BeyondInterval, "beyond the measuring interval")
            : s_compared;
    }

    private static string? Untimely(
        ChosenResult chosen,
        TubeRow tube,
        TimePoint timePoint,
        PairContext context
    )
    {
        foreach (var row in chosen.Rows)
        {
            if (
                row.TestedAt is { } testedAt
                && TimingRules.DelayedProblem(tube, testedAt, timePoint, context) is { } problem
            )
            {
                return problem;
            }
        }

        return null;
    }

    private static bool IsTimed(ImmutableArray<ResultRow> rows)
    {
        foreach (var row in rows)
        {
            if (row.TestedAt is null)
            {
                return false;
            }
        }

        return true;
    }
}
