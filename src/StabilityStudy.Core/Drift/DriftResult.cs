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
        var compared = WithDelays(cells.Select(cell => cell.Pairs));
        var estimate = Fit(compared, analyte.DriftShape, OneSidedConfidence);
        var limit = LimitPercentOf(protocol, analyte, group, compared);
        var result = estimate.TryGet(out var drift)
            ? new DriftResult(
                estimate,
                limit,
                limit is { } percent ? Statistics.Drift.Crossing.Find(drift, percent) : null,
                CurveOf(drift, compared.Max(pair => pair.Delayed!.Delay!.Value))
            )
            : new DriftResult(estimate, limit, null, []);
        return result with
        {
            Misfits = estimate.TryGet(out var fitted)
                ?
                [
                    .. cells
                        .Where(cell => IsMisfit(cell.Pairs, cell.TimePoint, fitted))
                        .Select(cell => cell.TimePoint),
                ]
                : [],
            Mixed = MixedDrift.InEveryShape(
                compared,
                analyte.DriftShape,
                OneSidedConfidence,
                limit
            ),
        };
    }

    /// <summary>Whether the mean change at a time point and the change that the shape predicts there lie outside each other's interval.</summary>
    internal static bool IsMisfit(
        ImmutableArray<PairRecord> pairs,
        TimePoint timePoint,
        DriftEstimate drift
    )
    {
        var compared = pairs.Keep(pair => HasDelays(pair) && pair.ChangePercent is not null);
        var changes = compared.Map(pair => pair.ChangePercent!.Value).AsSpan();
        var point = DriftPrediction.At(drift, timePoint.Delay.TotalHours);
        return ClusteredMean
                .WithInterval(
                    changes,
                    SharedErrors.Of(compared).Clusterings,
                    (2 * OneSidedConfidence) - 1
                )
                .TryGet(out var mean)
            && (point.Change < mean.Lower || point.Change > mean.Upper)
            && (mean.Mean < point.LowerBound || mean.Mean > point.UpperBound);
    }

    /// <summary>The drift of specimens in a shape.</summary>
    internal static Estimate<DriftEstimate> Fit(
        ImmutableArray<PairRecord> compared,
        DriftShape shape,
        double oneSidedConfidence
    )
    {
        var (series, clusterings) = Series(compared);
        return SpecimenSlopes.Fit(series, clusterings, shape, oneSidedConfidence);
    }

    /// <summary>
    /// One series a specimen, of the measured pairs with known delays; a specimen with a baseline of zero or below has none.
    /// </summary>
    private static (ImmutableArray<SpecimenSeries>, ImmutableArray<Clustering>) Series(
        ImmutableArray<PairRecord> compared
    )
    {
        var specimens = compared
            .GroupBy(pair => pair.Specimen)
            .Where(pairs => pairs.All(pair => pair.ChangePercent is not null))
            .OrderBy(pairs => pairs.Key, StringComparer.Ordinal)
            .Select(pairs => pairs.ToImmutableArray())
            .ToImmutableArray();
        return (
            [
                .. specimens.Select(
                    (pairs, index) =>
                        new SpecimenSeries(
                            index,
                            pairs[0].Baseline!.Delay!.Value.TotalHours,
                            [.. pairs.Select(pair => pair.Delayed!.Delay!.Value.TotalHours)],
                            [.. pairs.Select(pair => pair.ChangePercent!.Value)]
                        )
                ),
            ],
            Clusterings(specimens)
        );
    }

    /// <summary>What specimens share: days, baseline runs and persons, and at each delay its runs.</summary>
    /// <param name="specimens">The pairs of each specimen, by ascending delay.</param>
    internal static ImmutableArray<Clustering> Clusterings(
        ImmutableArray<ImmutableArray<PairRecord>> specimens
    ) =>
        [
            .. SharedErrors
                .Of(specimens.Map(pairs => pairs[0]))
                .Clusterings.Where(item => item.Source != IntervalSource.DelayedRuns),
            .. Enumerable
                .Range(0, specimens.Select(pairs => pairs.Length).DefaultIfEmpty().Max())
                .Select(i =>
                    SharedErrors.DelayedRunsOf(
                        specimens.Map(pairs => pairs[Math.Min(i, pairs.Length - 1)])
                    )
                ),
        ];

    private static double? LimitPercentOf(
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group,
        ImmutableArray<PairRecord> compared
    ) =>
        protocol
            .Applying(analyte.Id, group.Id)
            .Where(item => item.Criterion is BiasCriterion)
            .Select(item => item.Limit)
            .OfType<Limit>()
            .Where(limit => IsPercentAtEvery(limit, compared))
            .Select(limit => (double?)limit.Percent)
            .Min();

    /// <summary>A limit with both parts is one in percent only as long as the percentage is the greater part at every baseline.</summary>
    private static bool IsPercentAtEvery(Limit limit, ImmutableArray<PairRecord> compared) =>
        limit.Percent is { } percent
        && (
            limit.AbsoluteInUnit is not { } amount
            || compared.All(pair => percent * pair.Values().Baseline / 100 >= amount)
        );

    /// <summary>The measured pairs whose two delays are known.</summary>
    internal static ImmutableArray<PairRecord> WithDelays(
        IEnumerable<ImmutableArray<PairRecord>> cells
    ) => [.. cells.SelectMany(pairs => pairs.Keep(HasDelays))];

    private static bool HasDelays(PairRecord pair) =>
        pair
            is {
                Status: PairStatus.Compared,
                Baseline: { Delay: not null, Result: MeasuredResult },
                Delayed: { Delay: not null, Result: MeasuredResult }
            };

    private static ImmutableArray<DriftPoint> CurveOf(DriftEstimate drift, TimeSpan longest)
    {
        var start = drift.BaselineDelayHours;
        var step = (longest.TotalHours - start) / (CurvePoints - 1);
        return
        [
            .. Enumerable
                .Range(0, CurvePoints)
                .Select(i => DriftPrediction.At(drift, start + i * step)),
        ];
    }
}
