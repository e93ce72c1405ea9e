using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Drift;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Criteria.Drift;

/// <summary>
/// Decides a drift criterion: the change that one slope a specimen, over all time points up to this one, predicts at
/// the planned delay lies with its interval strictly inside the limit under every declared shape. Shapes that disagree
/// leave it open: nothing in the data says which is true. So does a shape that the measured means do not follow, and a measured mean change at this time point whose own interval is not inside.
/// </summary>
internal static class DriftEvaluation
{
    public static DriftCriterionResult Evaluate(
        DriftCriterion criterion,
        Limit limit,
        CellEvidence cell
    )
    {
        var upToHere = cell.Context.Earlier.Add(cell.Pairs);
        var timed = upToHere.Map(TimedPair.Of);
        var specimens = SpecimenPairs.Of(timed);
        DriftCriterionResult Result(
            Verdict verdict,
            ImmutableArray<VerdictReason> reasons,
            ImmutableArray<ShapeResult> shapes
        ) => new(criterion.Id, limit, verdict, reasons, criterion.ConfidenceLevel, shapes);
        if (limit is not { Percent: { } percent, AbsoluteInUnit: null })
        {
            return Result(Verdict.Inconclusive, [new LimitNotInPercentReason()], []);
        }

        var shapes = criterion
            .Shapes.Distinct()
            .Select(shape =>
                Judge(
                    shape,
                    DriftResult.Fit(specimens, shape, (1 + criterion.ConfidenceLevel) / 2),
                    cell.Context.TimePoint.Delay.TotalHours,
                    (double)percent,
                    drift => Misfits(drift, timed, cell.Context)
                )
            )
            .ToImmutableArray();
        var (verdict, reason) = Together(shapes);
        if (
            verdict == Verdict.Met
            && MeasuredPlace(cell.Data, (double)percent, criterion.ConfidenceLevel) is { } measured
        )
        {
            (verdict, reason) = (Verdict.Inconclusive, measured);
        }

        VerdictReason?[] doubts =
        [
            cell.FewClustersOfMean,
            BiasDoubts.OfUncounted(upToHere.Sum(cell.UncountedAmong)),
        ];
        return doubts.OfType<VerdictReason>().ToImmutableArray() is { IsEmpty: false } found
            ? Result(Verdict.Inconclusive, found.Add(reason), shapes)
            : Result(verdict, [reason], shapes);
    }

    /// <summary>Where the interval of the measured mean change lies, unless that is inside: a curve alone, whose shape nobody knows, does not decide.</summary>
    private static VerdictReason? MeasuredPlace(CellData data, double limit, double confidenceLevel)
    {
        var mean = RelativeChange
            .Percent(data.Pairs)
            .Then(changes =>
                ClusteredMean.WithInterval(
                    changes.AsSpan(),
                    data.Errors.Clusterings,
                    confidenceLevel
                )
            );
        return !mean.TryGet(out var interval) ? new NotComputableReason(mean.NotComputable!)
            : IntervalVerdict.Of(
                interval.Lower,
                interval.Upper,
                -limit,
                limit,
                new MeanChangeFigure()
            )
                is { Verdict: not Verdict.Met, Reason: var reason }
                ? reason
            : null;
    }

    /// <summary>The time points whose mean change the shape does not describe.</summary>
    private static ImmutableArray<TimePoint> Misfits(
        DriftEstimate drift,
        ImmutableArray<ImmutableArray<TimedPair>> upToHere,
        CellContext context
    ) =>
        [
            .. context
                .Protocol.TimePointsOf(context.Analyte, context.Group.Id)
                .Where(point => point.Delay < context.TimePoint.Delay)
                .Append(context.TimePoint)
                .Zip(upToHere)
                .Where(cell => DriftResult.IsMisfit(cell.Second, cell.First, drift))
                .Select(cell => cell.First),
        ];

    private static (Verdict, VerdictReason) Together(ImmutableArray<ShapeResult> shapes) =>
        shapes.IsEmpty ? (Verdict.Inconclusive, new NoShapeReason())
        : shapes.All(shape => shape.Verdict == shapes[0].Verdict)
            ? (shapes[0].Verdict, shapes[0].Reason)
        : (Verdict.Inconclusive, new ShapesDisagreeReason());

    private static ShapeResult Judge(
        DriftShape shape,
        Estimate<DriftEstimate> slope,
        double plannedHours,
        double limit,
        Func<DriftEstimate, ImmutableArray<TimePoint>> misfits
    )
    {
        if (!slope.TryGet(out var drift))
        {
            return new(
                shape,
                slope,
                null,
                limit,
                Verdict.Inconclusive,
                new NotComputableReason(slope.NotComputable!)
            );
        }

        var predicted = DriftPrediction.At(drift, plannedHours);
        ShapeResult With(Verdict verdict, VerdictReason reason) =>
            new(shape, slope, predicted, limit, verdict, reason);
        if (drift.MeanSlope.BySpecimen.StandardDeviation == 0)
        {
            return With(Verdict.Inconclusive, new SameDriftReason());
        }

        if (misfits(drift) is { IsEmpty: false } unlike)
        {
            return With(Verdict.Inconclusive, new ShapeMisfitReason(unlike));
        }

        var (verdict, reason) = IntervalVerdict.Of(
            predicted.LowerBound,
            predicted.UpperBound,
            -limit,
            limit,
            new PredictedChangeFigure()
        );
        return With(verdict, reason);
    }
}
