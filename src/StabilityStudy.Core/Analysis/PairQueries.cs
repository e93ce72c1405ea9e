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
        var found = new List<(PairRecord Pair, DataQuery Query)>();
        foreach (var pair in pairs)
        {
            if (pair.IsOutlier)
            {
                found.Add((pair, OfOutlier(key, pair)));
            }

            if (OfStatus(key, pair, excludedChange) is { } query)
            {
                found.Add((pair, query));
            }
        }

        return GroupedQueries.Of(key, found);
    }

    private static DataQuery OfOutlier(CellKey key, PairRecord pair) =>
        Query(
            OutlierFlagged,
            key,
            pair,
            $"the change from {pair.Baseline?.Result.Text} to {pair.Delayed?.Result.Text} stands out from the others; it stays in every figure.",
            "Look for a mix-up or a transcription error and record it as a deviation; the pair stays."
        );

    private static DataQuery? OfStatus(
        CellKey key,
        PairRecord pair,
        Func<PairRecord, string> excludedChange
    ) =>
        pair.Status switch
        {
            PairStatus.Failed => Query(
                DelayedTubeFailed,
                key,
                pair,
                $"{pair.Reason} in the delayed tube: counts as outside the allowable difference.",
                "Check mixing and fill at collection; the tube stays counted, since waiting may be why it failed."
            ),
            PairStatus.Excluded => Query(
                PairExcluded,
                key,
                pair,
                pair.IsExcludedKnowing
                    ? $"left out of the mean by a documented decision when its result could be known, and counted as outside the allowable difference: {pair.Reason}{excludedChange(pair)}."
                    : $"left out by a documented decision: {pair.Reason}{excludedChange(pair)}."
            ),
            PairStatus.OutsideTiming => Query(
                OutsideTiming,
                key,
                pair,
                $"left out: {pair.Reason}."
            ),
            PairStatus.BaselineInvalid => Query(
                BaselineInvalid,
                key,
                pair,
                $"left out: {pair.Reason}{(BaselineIsMissing(pair) ? ", although the delayed tube has a result" : "")}.",
                BaselineIsMissing(pair)
                    ? "Add the baseline result, or state in a deviation why there is none."
                    : null
            ),
            PairStatus.NoDelayedResult when pair.Delayed is null => Query(
                DelayedResultMissing,
                key,
                pair,
                $"{pair.Reason}: counts as outside the allowable difference.",
                "Add the result; a tube that was not drawn is stated as [[not_drawn]] on the day of collection."
            ),
            PairStatus.NoDelayedResult => Query(
                NoDelayedResult,
                key,
                pair,
                $"no delayed result: {pair.Reason}. It counts as outside the allowable difference, because a loss may hide a failure."
            ),
            PairStatus.Ineligible => Query(
                SpecimenIneligible,
                key,
                pair,
                $"left out: {pair.Reason}.",
                pair.IsOfDelayedTube
                    ? "State when this was seen: one that was left out after its result was known looks chosen."
                    : "Nothing."
            ) with
            {
                Rank = pair.IsOfDelayedTube ? QueryRank.StatedAnyway : QueryRank.ForTheRecord,
            },
            PairStatus.BeyondInterval when HasLeftInterval(pair) => Query(
                LeftMeasuringInterval,
                key,
                pair,
                $"{(pair.Delayed?.Result is CensoredResult ? "the delayed result" : "the baseline")} lies beyond the measuring interval, and the other result far from that end of it: counts for individual agreement, not for means."
            ),
            PairStatus.BeyondInterval => Query(
                BeyondMeasuringInterval,
                key,
                pair,
                "a result lies beyond the measuring interval: counts for individual agreement, not for means."
            ),
            PairStatus.NotDrawn => Query(TubeNotDrawn, key, pair, $"{pair.Reason}; no loss."),
            PairStatus.NotAssigned
            or PairStatus.AddedAfterLook
            or PairStatus.BeyondPlanned
            or PairStatus.RunNotInControl
            or PairStatus.Compared => null,
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
