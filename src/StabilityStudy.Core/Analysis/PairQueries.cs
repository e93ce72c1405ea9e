using System.Diagnostics;

namespace StabilityStudy.Core.Analysis;

/// <summary>What a pair gives rise to: a flagged outlier, a failed tube, a pair left out.</summary>
internal static class PairQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    /// <summary>A change that stands out from the others.</summary>
    internal static readonly QueryKind OutlierFlagged = Kinds.Add("outlier-flagged", QueryRank.Outlier, "the change of a specimen stands out from the others; it stays in every figure", "look for a mix-up or a transcription error");
    /// <summary>A delayed tube without a result that waiting may have caused.</summary>
    internal static readonly QueryKind DelayedTubeFailed = Kinds.Add("delayed-tube-failed", QueryRank.CountedOutside, "a delayed tube failed and counts as outside the allowable difference", "check mixing and fill at collection; the tube stays counted");
    internal static readonly QueryKind PairExcluded = Kinds.Add("pair-excluded", QueryRank.StatedAnyway, "a pair is left out by a documented decision", "check that the reason does not depend on the result");
    internal static readonly QueryKind OutsideTiming = Kinds.Add("outside-timing", QueryRank.StatedAnyway, "a pair is left out because a time lies outside the protocol", "nothing when the times are right; correct them when they are not");
    internal static readonly QueryKind BaselineInvalid = Kinds.Add("baseline-invalid", QueryRank.StatedAnyway, "a pair is left out because its baseline is not valid", "nothing when the times are right; correct them when they are not");
    /// <summary>A delayed result is missing without a reason.</summary>
    internal static readonly QueryKind DelayedResultMissing = Kinds.Add("delayed-result-missing", QueryRank.CountedOutside, "a delayed result is missing without a reason and counts as outside the allowable difference", "add the result, or the reason why there is none (NT, QNS)");
    internal static readonly QueryKind NoDelayedResult = Kinds.Add("no-delayed-result", QueryRank.StatedAnyway, "a pair is left out because it has no delayed result", "add the result, or state in a deviation why there is none");
    internal static readonly QueryKind SpecimenIneligible = Kinds.Add("specimen-ineligible", QueryRank.ForTheRecord, "a specimen is left out by a rule of the protocol", "nothing");
    internal static readonly QueryKind BeyondMeasuringInterval = Kinds.Add("beyond-measuring-interval", QueryRank.ForTheRecord, "a result lies beyond the measuring interval: it counts for individual agreement, not for means", "nothing");
    internal static readonly QueryKind LeftMeasuringInterval = Kinds.Add("left-measuring-interval", QueryRank.Measurement, "a result lies beyond the measuring interval, and the other of the pair far from that end of it", "look for a clot, a mix-up or a transcription error; the pair stays, counted for individual agreement and not for means", point: "A result left what can be measured.");
    internal static readonly QueryKind TubeNotDrawn = Kinds.Add("tube-not-drawn", QueryRank.ForTheRecord, "the tube of a time point was not drawn, as stated on the day of collection: no loss", "nothing");
    // csharpier-ignore-end

    /// <summary>More than twice the imprecision of any coagulation test, as a share of the result.</summary>
    private const decimal FarFromLimit = 0.2m;

    /// <summary>The queries about the pairs of a cell.</summary>
    /// <param name="key">The cell.</param>
    /// <param name="pairs">Its pairs.</param>
    /// <param name="excludedChange">What is said of the change of an excluded pair; gives nothing away while specimens are being collected.</param>
    internal static IEnumerable<DataQuery> OfAll(
        CellKey key,
        ImmutableArray<PairRecord> pairs,
        Func<PairRecord, string> excludedChange
    )
    {
        var found = new List<(QueryKind Kind, PairRecord Pair)>();
        foreach (var pair in pairs)
        {
            if (pair.IsOutlier)
            {
                found.Add((OutlierFlagged, pair));
            }

            if (KindOf(pair) is { } kind)
            {
                found.Add((kind, pair));
            }
        }

        return GroupedQueries.Of(
            key,
            found,
            (kind, pair) =>
                kind == OutlierFlagged
                    ? OfOutlier(key, pair)
                    : OfStatus(kind, key, pair, excludedChange)
        );
    }

    /// <summary>What is asked about a pair for what became of it; null where nothing is.</summary>
    private static QueryKind? KindOf(PairRecord pair) =>
        pair.Status switch
        {
            PairStatus.Failed => DelayedTubeFailed,
            PairStatus.Excluded => PairExcluded,
            PairStatus.OutsideTiming => OutsideTiming,
            PairStatus.BaselineInvalid => BaselineInvalid,
            PairStatus.NoDelayedResult when pair.Delayed is null => DelayedResultMissing,
            PairStatus.NoDelayedResult => NoDelayedResult,
            PairStatus.Ineligible => SpecimenIneligible,
            PairStatus.BeyondInterval when HasLeftInterval(pair) => LeftMeasuringInterval,
            PairStatus.BeyondInterval => BeyondMeasuringInterval,
            PairStatus.NotDrawn => TubeNotDrawn,
            PairStatus.NotAssigned
            or PairStatus.AddedAfterLook
            or PairStatus.BeyondPlanned
            or PairStatus.RunNotInControl
            or PairStatus.Compared => null,
        };

    private static DataQuery OfOutlier(CellKey key, PairRecord pair) =>
        Query(
            OutlierFlagged,
            key,
            pair,
            $"the change from {pair.Baseline?.Result.Text} to {pair.Delayed?.Result.Text} stands out from the others; it stays in every figure.",
            "Look for a mix-up or a transcription error and record it as a deviation; the pair stays."
        );

    private static DataQuery OfStatus(
        QueryKind kind,
        CellKey key,
        PairRecord pair,
        Func<PairRecord, string> excludedChange
    )
    {
        var (message, action) = WordsOf(kind, pair, excludedChange);
        var query = Query(kind, key, pair, message, action);
        return pair is { Status: PairStatus.Ineligible, IsOfDelayedTube: true }
            ? query with
            {
                Rank = QueryRank.StatedAnyway,
            }
            : query;
    }

    private static (string Message, string? Action) WordsOf(
        QueryKind kind,
        PairRecord pair,
        Func<PairRecord, string> excludedChange
    ) =>
        pair.Status switch
        {
            PairStatus.Failed => (
                $"{pair.Reason} in the delayed tube: counts as outside the allowable difference.",
                "Check mixing and fill at collection; the tube stays counted, since waiting may be why it failed."
            ),
            PairStatus.Excluded => (
                pair.IsExcludedKnowing
                    ? $"left out of the mean by a documented decision when its result could be known, and counted as outside the allowable difference: {pair.Reason}{excludedChange(pair)}."
                    : $"left out by a documented decision: {pair.Reason}{excludedChange(pair)}.",
                null
            ),
            PairStatus.OutsideTiming => ($"left out: {pair.Reason}.", null),
            PairStatus.BaselineInvalid => BaselineIsMissing(pair)
                ? (
                    $"left out: {pair.Reason}, although the delayed tube has a result.",
                    "Add the baseline result, or state in a deviation why there is none."
                )
                : ($"left out: {pair.Reason}.", null),
            PairStatus.NoDelayedResult => kind == DelayedResultMissing
                ? (
                    $"{pair.Reason}: counts as outside the allowable difference.",
                    "Add the result; a tube that was not drawn is stated as [[not_drawn]] on the day of collection."
                )
                : (
                    $"no delayed result: {pair.Reason}. It counts as outside the allowable difference, because a loss may hide a failure.",
                    null
                ),
            PairStatus.Ineligible => (
                $"left out: {pair.Reason}.",
                pair.IsOfDelayedTube
                    ? "State when this was seen: one that was left out after its result was known looks chosen."
                    : "Nothing."
            ),
            PairStatus.BeyondInterval => (
                kind == LeftMeasuringInterval
                    ? $"{(pair.Delayed?.Result is CensoredResult ? "the delayed result" : "the baseline")} lies beyond the measuring interval, and the other result far from that end of it: counts for individual agreement, not for means."
                    : "a result lies beyond the measuring interval: counts for individual agreement, not for means.",
                null
            ),
            PairStatus.NotDrawn => ($"{pair.Reason}; no loss.", null),
            PairStatus.NotAssigned
            or PairStatus.AddedAfterLook
            or PairStatus.BeyondPlanned
            or PairStatus.RunNotInControl
            or PairStatus.Compared => throw new UnreachableException(),
        };

    private static bool BaselineIsMissing(PairRecord pair) =>
        pair
            is {
                Baseline: null or { Result: MissingResult },
                Delayed.Result: not MissingResult and not null
            };

    /// <summary>Whether one result is beyond a limit from which the other is more than a fifth of itself away; imprecision does not make so much.</summary>
    private static bool HasLeftInterval(PairRecord pair) =>
        (pair.Baseline?.Result, pair.Delayed?.Result) switch
        {
            (MeasuredResult within, CensoredResult beyond) => IsFar(within, beyond),
            (CensoredResult beyond, MeasuredResult within) => IsFar(within, beyond),
            (CensoredResult first, CensoredResult second) => first.Side != second.Side,
            _ => false,
        };

    private static bool IsFar(MeasuredResult within, CensoredResult beyond) =>
        beyond.Side == CensoredSide.Above
            ? beyond.Limit > within.Value * (1 + FarFromLimit)
            : beyond.Limit < within.Value * (1 - FarFromLimit);

    private static DataQuery Query(
        QueryKind kind,
        CellKey key,
        PairRecord pair,
        string message,
        string? action = null
    ) =>
        new(
            kind,
            DataFiles.ResultsAt((pair.Delayed ?? pair.Baseline)?.SourceRow, null),
            pair.Delayed?.Result.Text ?? "",
            $"{key.Analyte}, specimen {pair.Specimen} at {key.TimePoint}: {message}",
            action
        )
        {
            Specimen = new(pair.Specimen, key.TimePoint),
        };
}
