using System.Collections.Immutable;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Analysis;

/// <summary>What a pair gives rise to: a flagged outlier, a failed tube, a pair left out.</summary>
internal static class PairQueries
{
    private const string CheckTimes =
        "Nothing when the times are right; correct them when they are not.";

    /// <summary>The code of a documented exclusion.</summary>
    public const string ExcludedCode = "pair-excluded";

    /// <summary>The queries about the pairs of a cell.</summary>
    /// <param name="key">The cell.</param>
    /// <param name="pairs">Its pairs.</param>
    /// <param name="excludedChange">What is said of the change of an excluded pair; gives nothing away while specimens are being collected.</param>
    public static IEnumerable<DataQuery> OfAll(
        CellKey key,
        ImmutableArray<PairRecord> pairs,
        Func<PairRecord, string> excludedChange
    ) =>
        GroupedQueries.Of(
            key,
            pairs.SelectMany(pair => Of(key, pair, excludedChange).Select(query => (pair, query)))
        );

    private static IEnumerable<DataQuery> Of(
        CellKey key,
        PairRecord pair,
        Func<PairRecord, string> excludedChange
    )
    {
        if (pair.IsOutlier)
        {
            yield return Query(
                "outlier-flagged",
                Severity.Attention,
                key,
                pair,
                $"the change from {pair.Baseline?.Result.Text} to {pair.Delayed?.Result.Text} stands out from the others; it stays in every figure.",
                "Look for a mix-up or a transcription error and record it as a deviation; the pair stays."
            );
        }

        if (OfStatus(key, pair, excludedChange) is { } query)
        {
            yield return query;
        }
    }

    private static DataQuery? OfStatus(
        CellKey key,
        PairRecord pair,
        Func<PairRecord, string> excludedChange
    ) =>
        pair.Status switch
        {
            PairStatus.Failed => Query(
                "delayed-tube-failed",
                Severity.Attention,
                key,
                pair,
                $"{pair.Reason} in the delayed tube: counts as outside the allowable difference.",
                "Check mixing and fill at collection; the tube stays counted, since waiting may be why it failed."
            ),
            PairStatus.Excluded => Query(
                ExcludedCode,
                Severity.Attention,
                key,
                pair,
                $"left out by a documented decision: {pair.Reason}{excludedChange(pair)}.",
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
                $"left out: {pair.Reason}{(BaselineIsMissing(pair) ? ", although the delayed tube has a result" : "")}.",
                BaselineIsMissing(pair)
                    ? "Add the baseline result, or state in a deviation why there is none."
                    : CheckTimes
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
                pair.IsOfDelayedTube ? Severity.Attention : Severity.Note,
                key,
                pair,
                $"left out: {pair.Reason}.",
                pair.IsOfDelayedTube
                    ? "State when this was seen: one that was left out after its result was known looks chosen."
                    : "Nothing."
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

    private static bool BaselineIsMissing(PairRecord pair) =>
        pair
            is {
                Baseline: null or { Result: MissingResult },
                Delayed.Result: not MissingResult and not null
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
