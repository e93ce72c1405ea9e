using System.Collections.Immutable;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Conclusions;

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
    public static ImmutableArray<SizedFigure> Of(CriterionResult result, int compared) =>
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
                    .Select(level => OfLevel(levels, level, compared)),
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
                    ? 0
                    : mean.BySpecimen.StandardDeviation,
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
    private static SizedFigure OfLevel(DecisionLevelResult levels, LevelResult level, int compared)
    {
        var change = level.Change.Value!;
        return OfInterval(
            levels.Criterion,
            change.Bias,
            change.StandardError * Math.Sqrt(compared),
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
            slope.MeanSlope.BySpecimen.StandardDeviation * Math.Abs(growth),
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
        double standardDeviation,
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
            standardDeviation > 0
                ? power =>
                    SmallestN.ForEquivalence(
                        power,
                        mean,
                        standardDeviation,
                        lower,
                        upper,
                        confidenceLevel,
                        MostSpecimens
                    )
                : null
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
}
