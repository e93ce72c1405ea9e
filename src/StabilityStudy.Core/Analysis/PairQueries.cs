using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Queries;

namespace StabilityStudy.Core.Analysis;

/// <summary>What a pair gives rise to: a flagged outlier, a failed tube, a pair left out.</summary>
internal static class PairQueries
{
    private const string CheckTimes =
        "Nothing when the times are right; correct them when they are not.";

    public static IEnumerable<DataQuery> Of(CellKey key, PairRecord pair)
    {
        if (pair.IsOutlier)
        {
            yield return Query(
                "outlier-flagged",
                Severity.Attention,
                key,
                pair,
                $"the change from {pair.Baseline?.Result.Text} to {pair.Delayed?.Result.Text} stands out from the others; it stays in every figure.",
                "Look for a mix-up or a transcription error; if one is documented, exclude the pair with reason, person and date."
            );
        }

        if (OfStatus(key, pair) is { } query)
        {
            yield return query;
        }
    }

    private static DataQuery? OfStatus(CellKey key, PairRecord pair) =>
        pair.Status switch
        {
            PairStatus.Failed => Query(
                "delayed-tube-failed",
                Severity.Attention,
                key,
                pair,
                $"{pair.Reason} in the delayed tube: counts as outside the allowable difference.",
                "Nothing: a tube that fails after waiting says something about waiting."
            ),
            PairStatus.Excluded => Query(
                "pair-excluded",
                Severity.Attention,
                key,
                pair,
                $"left out by a documented decision: {pair.Reason}.",
                "Check that the reason does not depend on the result."
            ),
            PairStatus.OutsideTiming => Query(
                "outside-timing",
                Severity.Attention,
                key,
                pair,
                $"left out: {pair.Reason}.",
                CheckTimes
            ),
            PairStatus.BaselineInvalid => Query(
                "baseline-invalid",
                Severity.Attention,
                key,
                pair,
                $"left out: {pair.Reason}.",
                CheckTimes
            ),
            PairStatus.NoDelayedResult when pair.IsUnexplained => Query(
                "delayed-result-missing",
                Severity.Attention,
                key,
                pair,
                $"{pair.Reason}: counts as outside the allowable difference.",
                "Add the result, or the reason why there is none (NT, QNS), or exclude the pair with reason, person and date."
            ),
            PairStatus.NoDelayedResult => Query(
                "no-delayed-result",
                Severity.Attention,
                key,
                pair,
                $"left out, no delayed result: {pair.Reason}.",
                "Add the result, or state in a deviation why there is none."
            ),
            PairStatus.Ineligible => Query(
                "specimen-ineligible",
                Severity.Note,
                key,
                pair,
                $"left out: {pair.Reason}.",
                "Nothing."
            ),
            PairStatus.BeyondInterval => Query(
                "beyond-measuring-interval",
                Severity.Note,
                key,
                pair,
                "a result lies beyond the measuring interval: counts for individual agreement, not for means.",
                "Nothing."
            ),
            _ => null,
        };

    private static DataQuery Query(
        string code,
        Severity severity,
        CellKey key,
        PairRecord pair,
        string message,
        string action
    ) =>
        new(
            code,
            severity,
            DataFiles.ResultsAt((pair.Delayed ?? pair.Baseline)?.SourceRow, null),
            pair.Delayed?.Result.Text ?? "",
            $"{key.Analyte}, specimen {pair.Specimen} at {key.TimePoint}: {message}",
            action
        );
}
