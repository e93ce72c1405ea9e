using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Drift;

/// <summary>How the result of a sequence drifts with time since collection: description, never a decision.</summary>
/// <param name="Estimate">Mean slope over specimens.</param>
/// <param name="LimitPercent">The allowable bias it is compared with, percent; null when the protocol has none on that scale, or one whose absolute part is the greater at some baseline.</param>
/// <param name="Crossing">When the bound leaves the limit; null when there is no limit or no slope.</param>
/// <param name="Curve">The fitted change with its one-sided bounds, from the baseline to the longest actual delay among compared pairs.</param>
public sealed record DriftResult(
    Estimate<DriftEstimate> Estimate,
    double? LimitPercent,
    CrossingTime? Crossing,
    ImmutableArray<DriftPoint> Curve
)
{
    /// <summary>Confidence level of each one-sided bound.</summary>
    public const double OneSidedConfidence = 0.95;

    private const int CurvePoints = 49;

    /// <summary>
    /// Time points whose measured mean change the fitted curve does not describe: each lies outside the interval of the other. A time read from such a curve is not to be used.
    /// </summary>
    public ImmutableArray<TimePoint> Misfits { get; init; } = [];

    /// <summary>The drift by a mixed model, in every shape; empty without compared results.</summary>
    public ImmutableArray<MixedDrift> Mixed { get; init; } = [];

    internal static DriftResult Of(
        ImmutableArray<(TimePoint TimePoint, ImmutableArray<PairRecord> Pairs)> cells,
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group
    )
    {
        var timed = cells.Map(cell => TimedPair.Of(cell.Pairs));
        var specimens = SpecimenPairs.Of(timed);
        var estimate = Fit(specimens, analyte.DriftShape, OneSidedConfidence);
        var limit = LimitPercentOf(protocol, analyte, group, timed);
        var result = estimate.TryGet(out var drift)
            ? new DriftResult(
                estimate,
                limit,
                limit is { } percent ? Statistics.Drift.Crossing.Find(drift, percent) : null,
                CurveOf(drift, timed.SelectMany(pairs => pairs).Max(pair => pair.DelayedHours))
            )
            : new DriftResult(estimate, limit, null, []);
        return result with
        {
            Misfits = estimate.TryGet(out var fitted)
                ?
                [
                    .. cells
                        .Select(cell => cell.TimePoint)
                        .Zip(timed)
                        .Where(cell => IsMisfit(cell.Second, cell.First, fitted))
                        .Select(cell => cell.First),
                ]
                : [],
            Mixed = MixedDrift.InEveryShape(
                specimens,
                analyte.DriftShape,
                OneSidedConfidence,
                limit
            ),
        };
    }

    /// <summary>Whether the mean change at a time point and the change that the shape predicts there lie outside each other's interval.</summary>
    internal static bool IsMisfit(
        ImmutableArray<TimedPair> pairs,
        TimePoint timePoint,
        DriftEstimate drift
    )
    {
        var compared = pairs.Keep(pair => pair.ChangePercent is not null);
        var changes = compared.Map(pair => pair.ChangePercent!.Value).AsSpan();
        var point = DriftPrediction.At(drift, timePoint.Delay.TotalHours);
        return ClusteredMean
                .WithInterval(
                    changes,
                    SharedErrors.Of(compared.Map(pair => pair.Pair)).Clusterings,
                    (2 * OneSidedConfidence) - 1
                )
                .TryGet(out var mean)
            && (point.Change < mean.Lower || point.Change > mean.Upper)
            && (mean.Mean < point.LowerBound || mean.Mean > point.UpperBound);
    }

    /// <summary>The drift of specimens in a shape; a specimen with a baseline of zero or below has none.</summary>
    internal static Estimate<DriftEstimate> Fit(
        SpecimenPairs specimens,
        DriftShape shape,
        double oneSidedConfidence
    )
    {
        var measured = specimens.Where(pairs => pairs.All(pair => pair.ChangePercent is not null));
        return SpecimenSlopes.Fit(
            [
                .. measured.All.Select(
                    (pairs, index) =>
                        new SpecimenSeries(
                            index,
                            pairs[0].BaselineHours,
                            pairs.Map(pair => pair.DelayedHours),
                            pairs.Map(pair => pair.ChangePercent!.Value)
                        )
                ),
            ],
            measured.Clusterings,
            shape,
            oneSidedConfidence
        );
    }

    private static double? LimitPercentOf(
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group,
        ImmutableArray<ImmutableArray<TimedPair>> cells
    ) =>
        protocol
            .Applying(analyte.Id, group.Id)
            .Where(item => item.Criterion is BiasCriterion)
            .Select(item => item.Limit)
            .OfType<Limit>()
            .Where(limit => IsPercentAtEvery(limit, cells))
            .Select(limit => (double?)limit.Percent)
            .Min();

    /// <summary>A limit with both parts is one in percent only as long as the percentage is the greater part at every baseline.</summary>
    private static bool IsPercentAtEvery(
        Limit limit,
        ImmutableArray<ImmutableArray<TimedPair>> cells
    ) =>
        limit.Percent is { } percent
        && (
            limit.AbsoluteInUnit is not { } amount
            || cells.All(pairs =>
                pairs.All(pair => percent * pair.Pair.Values().Baseline / 100 >= amount)
            )
        );

    private static ImmutableArray<DriftPoint> CurveOf(DriftEstimate drift, double longest)
    {
        var start = drift.BaselineDelayHours;
        var step = (longest - start) / (CurvePoints - 1);
        return
        [
            .. Enumerable
                .Range(0, CurvePoints)
                .Select(i => DriftPrediction.At(drift, start + i * step)),
        ];
    }
}
