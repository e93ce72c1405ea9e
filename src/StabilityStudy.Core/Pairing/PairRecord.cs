namespace StabilityStudy.Core.Pairing;

/// <summary>One specimen at one time point: what was measured and what became of it.</summary>
/// <param name="Collected">The specimen, which its pairs have in common.</param>
/// <param name="Status">What became of the pair.</param>
/// <param name="Reason">Why, in words; empty when the pair is compared.</param>
/// <param name="Baseline">The baseline; null when there is no tube or row for it.</param>
/// <param name="Delayed">The delayed result; null when there is no tube or row for it.</param>
/// <param name="IsOutlier">Whether the change was flagged as an outlier; flagged pairs stay in every figure.</param>
public sealed record PairRecord(
    CollectedSpecimen Collected,
    PairStatus Status,
    string Reason,
    Measurement? Baseline,
    Measurement? Delayed,
    bool IsOutlier
)
{
    /// <summary>Code of the draw.</summary>
    public string Specimen => Collected.Code;

    /// <summary>Study code of the person.</summary>
    public string Subject => Collected.Subject;

    /// <summary>Day of collection where it took place.</summary>
    public DateOnly CollectionDay => Collected.Day;

    /// <summary>Time of collection: the order in which specimens take the planned places.</summary>
    public DateTimeOffset CollectedAt => Collected.At;

    /// <summary>Whether the pair is ineligible for its delayed tube alone, while the baseline is sound.</summary>
    public bool IsOfDelayedTube { get; init; }

    /// <summary>Time of the delayed tube from collection to spinning: as whole blood; null when not known.</summary>
    public TimeSpan? TimeBeforeSpinning =>
        Delayed?.Container is { } tube ? tube.SpunAt - tube.CollectedAt : null;

    /// <summary>Time of the delayed tube from spinning to its test; null when not known.</summary>
    public TimeSpan? TimeAfterSpinning => Delayed?.TestedAt - Delayed?.Container?.SpunAt;

    /// <summary>Times of a delayed portion that was frozen and thawed; null for others, and where they are not known.</summary>
    public FrozenTimes? Frozen => FrozenTimes.Of(Delayed?.Container, Delayed?.TestedAt);

    /// <summary>Instrument of the baseline, with which the specimen entered the study; empty where it is not recorded, or there is no baseline.</summary>
    internal string Instrument => Baseline?.Instrument ?? "";

    /// <summary>Whether both results are there, on instruments that are not the same.</summary>
    internal bool IsOnTwoInstruments =>
        Baseline is not null
        && Delayed is { TestedAt: not null } delayed
        && delayed.Instrument != Instrument;

    /// <summary>Whether the specimen has a baseline to compare with, whatever became of the pair.</summary>
    internal bool HasValidBaseline { get; init; }

    /// <summary>Whether the specimen was meant to be tested here and is one of the planned number.</summary>
    public bool IsDue =>
        Status
            is not (
                PairStatus.NotAssigned
                or PairStatus.NotDrawn
                or PairStatus.AddedAfterLook
                or PairStatus.BeyondPlanned
            );

    /// <summary>Whether the pair counts for the individual criterion.</summary>
    public bool CountsForAgreement =>
        Status is PairStatus.Compared or PairStatus.Failed or PairStatus.BeyondInterval || IsLost;

    /// <summary>Whether the pair is left out although it was meant to be tested here; in analysis.json its status says so.</summary>
    public bool IsLeftOut => !CountsForAgreement && IsDue;

    /// <summary>Whether the pair was excluded on or after the day of its delayed test, when the result could be known.</summary>
    public bool IsExcludedKnowing { get; init; }

    /// <summary>
    /// Whether a valid baseline has lost its delayed result, or the result was taken out when it could be known. It may be that of a failed tube, so it counts as
    /// undecidable: outside for what is met, inside for what is refuted.
    /// </summary>
    public bool IsLost => Status == PairStatus.NoDelayedResult || IsExcludedKnowing;

    /// <summary>100·(y − x)/x of a compared pair of numbers with a baseline above zero; null otherwise.</summary>
    public double? ChangePercent =>
        Status == PairStatus.Compared
        && Baseline?.Result is MeasuredResult { Value: > 0 and var baseline }
        && Delayed?.Result is MeasuredResult { Value: var delayed }
            ? (double)(100 * (delayed - baseline) / baseline)
            : null;

    /// <summary>Whether it is a compared pair of numbers; a compared pair of a qualitative test has classes.</summary>
    public bool IsOfNumbers =>
        this
            is {
                Status: PairStatus.Compared,
                Baseline.Result: MeasuredResult,
                Delayed.Result: MeasuredResult
            };

    /// <summary>A compared pair of numbers with another baseline value.</summary>
    internal PairRecord WithBaseline(decimal value) =>
        Baseline is { Result: MeasuredResult result } baseline
            ? this with
            {
                Baseline = baseline with { Result = result with { Value = value } },
            }
            : this;

    /// <summary>A compared pair of numbers with another delayed value.</summary>
    internal PairRecord WithDelayed(decimal value) =>
        Delayed is { Result: MeasuredResult result } delayed
            ? this with
            {
                Delayed = delayed with { Result = result with { Value = value } },
            }
            : this;

    /// <summary>Baseline and delayed value of a compared pair of numbers, in the analyte's unit.</summary>
    /// <exception cref="InvalidOperationException">The pair is not compared, or its results are categories.</exception>
    public (decimal Baseline, decimal Delayed) Values()
    {
        if (
            Status == PairStatus.Compared
            && Baseline?.Result is MeasuredResult baseline
            && Delayed?.Result is MeasuredResult delayed
        )
        {
            return (baseline.Value, delayed.Value);
        }

        throw new InvalidOperationException("Only a compared pair of numbers has two values.");
    }
}
