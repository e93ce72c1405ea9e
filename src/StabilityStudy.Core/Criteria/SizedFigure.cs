using System.Collections.Immutable;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Criteria;

/// <summary>One figure by which a criterion is judged and on which the number of specimens bears: a mean, a share, the change at a level, the drift of a shape.</summary>
/// <param name="Criterion">Key of the criterion.</param>
/// <param name="Beyond">Why the truth, were it what was observed, would not meet the criterion; null when it would.</param>
/// <param name="IsOpen">Whether it is open because there are too few specimens.</param>
/// <param name="SmallestFor">The smallest number of specimens, none beyond <see cref="MostSpecimens"/>, that meets it with a chance; null when no number can be computed.</param>
internal sealed record SizedFigure(
    string Criterion,
    string? Beyond,
    bool IsOpen,
    Func<double, int?>? SmallestFor
)
{
    /// <summary>More than a study of one laboratory collects.</summary>
    public const int MostSpecimens = 200;

    /// <summary>The figures of a criterion; empty where it could compute none.</summary>
    /// <param name="result">What the criterion says.</param>
    /// <param name="compared">Number of compared pairs.</param>
    /// <param name="days">Number of collection days among them.</param>
    public static ImmutableArray<SizedFigure> Of(CriterionResult result, int compared, int days) =>
        result switch
        {
            BiasResult bias => OfMean(bias),
            IndividualResult individual when individual.Agreement.Counted > 0 =>
            [
                OfShare(
                    individual.Criterion,
                    (double)individual.Agreement.Inside / individual.Agreement.Counted,
                    individual.RequiredShare,
                    individual.ConfidenceLevel,
                    $"the share within of criterion {individual.Criterion} is at or below the required one",
                    individual.Reasons.Any(reason => reason.Code == "share-open"),
                    individual.Reasons.Any(reason => reason.Code == "point-share-no-error-control")
                ),
            ],
            ClassificationResult { Counted: > 0 } classes =>
            [
                OfShare(
                    classes.Criterion,
                    (double)classes.Kept / classes.Counted,
                    classes.RequiredShare,
                    classes.ConfidenceLevel,
                    $"the share that keeps its class of criterion {classes.Criterion} is at or below the required one",
                    classes.Reasons.Any(reason => reason.Code == "classes-open")
                ),
            ],
            ReclassificationResult sides =>
            [
                .. sides
                    .Levels.Where(level => level.Counted > 0)
                    .Select(level => OfSides(sides, level)),
            ],
            DecisionLevelResult levels =>
            [
                .. levels
                    .Levels.Where(level => level.Change.Value is not null)
                    .Select(level => OfLevel(levels, level, compared, days)),
            ],
            DriftCriterionResult drift =>
            [
                .. drift
                    .Shapes.Where(shape => shape.Predicted is not null)
                    .Select(shape => OfShape(drift, shape)),
            ],
            _ => [],
        };

    private static ImmutableArray<SizedFigure> OfMean(BiasResult bias)
    {
        if (!bias.Mean.TryGet(out var mean) || bias.Spread.Value is null)
        {
            return [];
        }

        var (lower, upper) = (bias.LowerLimit!.Value, bias.UpperLimit!.Value);
        return
        [
            OfInterval(
                bias.Criterion,
                mean.Mean,
                bias.Reasons.Any(reason => reason.Code == "mean-only-no-error-control")
                    ? Scatter.None
                    : Scatter.Of(mean, 1),
                lower,
                upper,
                bias.ConfidenceLevel,
                $"the mean change of criterion {bias.Criterion} is at or beyond its limit",
                bias.Reasons.Any(IsInterval)
            ),
        ];
    }

    private static SizedFigure OfSides(ReclassificationResult sides, LevelReclassification level)
    {
        var changed = level.MovedUp + level.MovedDown + level.Failed + level.Undecidable;
        return OfShare(
            sides.Criterion,
            (double)(level.Counted - changed) / level.Counted,
            1 - sides.LargestShare,
            sides.ConfidenceLevel,
            FormattableString.Invariant(
                $"the share that changes the side of {level.Level} of criterion {sides.Criterion} is at or above the largest allowed"
            ),
            level.Reason.Code == "changes-open"
        );
    }

    // The error of a predicted change falls with the square root of the number, as long as the baselines spread alike.
    private static SizedFigure OfLevel(
        DecisionLevelResult levels,
        LevelResult level,
        int compared,
        int days
    )
    {
        var change = level.Change.Value!;
        return OfInterval(
            levels.Criterion,
            change.Bias,
            change.DecidedByClusters && days > 1
                ? new Scatter(0, change.StandardError * Math.Sqrt(days), (double)compared / days)
                : new Scatter(change.StandardError * Math.Sqrt(compared), 0, 1),
            -level.Allowed,
            level.Allowed,
            levels.ConfidenceLevel,
            FormattableString.Invariant(
                $"the change predicted at {level.Level} of criterion {levels.Criterion} is at or beyond its limit"
            ),
            IsInterval(level.Reason)
        );
    }

    private static SizedFigure OfShape(DriftCriterionResult drift, ShapeResult shape)
    {
        var (slope, predicted) = (shape.Slope.Value!, shape.Predicted!);
        var growth =
            SpecimenSlopes.Transform(shape.Shape, predicted.Hours)
            - SpecimenSlopes.Transform(shape.Shape, slope.BaselineDelayHours);
        return OfInterval(
            drift.Criterion,
            predicted.Change,
            Scatter.Of(slope.MeanSlope, Math.Abs(growth)),
            -shape.LimitPercent,
            shape.LimitPercent,
            drift.ConfidenceLevel,
            $"the change that criterion {drift.Criterion} predicts is at or beyond its limit",
            IsInterval(shape.Reason)
        );
    }

    private static SizedFigure OfInterval(
        string criterion,
        double mean,
        Scatter scatter,
        double lower,
        double upper,
        double confidenceLevel,
        string beyond,
        bool isOpen
    ) =>
        new(
            criterion,
            mean <= lower || mean >= upper ? beyond : null,
            isOpen,
            scatter.IsNone
                ? null
                : power => scatter.Smallest(power, mean, lower, upper, confidenceLevel)
        );

    private static SizedFigure OfShare(
        string criterion,
        double share,
        double required,
        double confidenceLevel,
        string beyond,
        bool isOpen,
        bool withoutErrorControl = false
    ) =>
        new(
            criterion,
            share <= required ? beyond : null,
            isOpen,
            withoutErrorControl
                ? null
                : power =>
                    SmallestN.ForIndividual(power, share, required, confidenceLevel, MostSpecimens)
        );

    private static bool IsInterval(VerdictReason reason) => reason.Code == "interval-reaches-limit";

    /// <summary>How the figure scatters between specimens, and between the means of collection days; 0 where it does not decide.</summary>
    private sealed record Scatter(double OfSpecimens, double OfDays, double SpecimensPerDay)
    {
        public static Scatter None { get; } = new(0, 0, 1);

        public bool IsNone => OfSpecimens == 0 && OfDays == 0;

        public static Scatter Of(ClusteredMeanInterval mean, double factor) =>
            new(
                mean.BySpecimen.StandardDeviation * factor,
                mean.ByCluster.TryGet(out var days) ? days.StandardDeviation * factor : 0,
                (double)mean.BySpecimen.Count / Math.Max(mean.ClusterCount, 1)
            );

        /// <summary>The larger number of the two, as the interval is the wider of the two, with as many specimens a day as here.</summary>
        public int? Smallest(
            double power,
            double mean,
            double lower,
            double upper,
            double confidenceLevel
        )
        {
            var bySpecimen =
                OfSpecimens > 0
                    ? SmallestN.ForEquivalence(
                        power,
                        mean,
                        OfSpecimens,
                        lower,
                        upper,
                        confidenceLevel,
                        MostSpecimens
                    )
                    : 0;
            var byDay =
                OfDays > 0
                    ? SmallestN.ForClusteredEquivalence(
                        power,
                        mean,
                        OfDays,
                        SpecimensPerDay,
                        lower,
                        upper,
                        confidenceLevel,
                        MostSpecimens
                    )
                    : 0;
            return bySpecimen is { } n && byDay is { } m ? Math.Max(n, m) : null;
        }
    }
}
