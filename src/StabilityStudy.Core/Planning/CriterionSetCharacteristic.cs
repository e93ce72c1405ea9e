using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Planning;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Planning;

/// <summary>
/// How often all criteria of a protocol together support a time point, over the true mean change: the operating characteristic of the whole set, by simulation. Every study is drawn and then
/// judged by the very code that judges a real one, doubts about days, skewness and spread included.
/// </summary>
/// <remarks>
/// Supposed: changes normal among specimens, log-normal baselines, days and runs as stated; each run with an error of its own, each result with its imprecision, both in proportion to the result;
/// results reported with the analyte's decimals, no failed and no missing tube, controls in order. Real studies lose some; so the true probability is rather below. Where the change counts from collection the supposed one does too, and a part of it that follows a logarithm comes before the baseline. Where a criterion on drift applies, the earlier time points are drawn too: each specimen's change grows with time in the analyte's shape.
/// </remarks>
public static class CriterionSetCharacteristic
{
    /// <summary>Level of the interval of a simulated probability.</summary>
    public const double ConfidenceLevel = 0.95;

    private static readonly DateTimeOffset s_firstCollection = new(
        2000,
        1,
        3,
        8,
        0,
        0,
        TimeSpan.Zero
    );

    /// <summary>The probability of <see cref="Conclusion.Supported"/> for a time point on its own, one point a mean change.</summary>
    /// <param name="protocol">The protocol with its criteria.</param>
    /// <param name="analyte">Key of an analyte whose results are numbers.</param>
    /// <param name="group">Key of a patient group.</param>
    /// <param name="timePoint">The time point.</param>
    /// <param name="supposed">How its results arise.</param>
    /// <param name="meanChangesPercent">True mean changes, percent of the baseline.</param>
    /// <param name="studies">Studies a point, from 1 to a million.</param>
    /// <param name="seed">Any number; to be printed with the curve.</param>
    /// <exception cref="ArgumentNullException">Protocol or supposition is absent.</exception>
    /// <exception cref="ArgumentException">The protocol has no such analyte or group, the analyte's results are classes, or a number is outside its range.</exception>
    public static ImmutableArray<CharacteristicPoint> Curve(
        StudyProtocol protocol,
        string analyte,
        string group,
        TimePoint timePoint,
        SupposedResults supposed,
        ReadOnlySpan<double> meanChangesPercent,
        int studies,
        ulong seed
    )
    {
        ArgumentNullException.ThrowIfNull(protocol);
        ArgumentNullException.ThrowIfNull(supposed);
        var context = new CellContext(
            protocol,
            protocol.Analytes.SingleOrDefault(item => item.Id == analyte && !item.IsQualitative)
                ?? throw new ArgumentException(
                    $"The protocol has no analyte {analyte} with numbers for results.",
                    nameof(analyte)
                ),
            protocol.Groups.SingleOrDefault(item => item.Id == group)
                ?? throw new ArgumentException(
                    $"The protocol has no patient group {group}.",
                    nameof(group)
                ),
            protocol.Storages[0],
            timePoint,
            []
        );
        return Curve(context, supposed, meanChangesPercent, studies, seed);
    }

    /// <summary>The same for a time point that is looked up already.</summary>
    internal static ImmutableArray<CharacteristicPoint> Curve(
        CellContext context,
        SupposedResults supposed,
        ReadOnlySpan<double> meanChangesPercent,
        int studies,
        ulong seed
    )
    {
        RequirePossible(supposed);
        var timePoints = Needed(context);
        return OperatingCharacteristic.Curve(
            meanChangesPercent,
            studies,
            seed,
            ConfidenceLevel,
            (mean, random) => IsSupported(context, timePoints, supposed, mean, random)
        );
    }

    /// <summary>Whether one study, drawn at random, supports a time point.</summary>
    internal static bool IsSupported(
        CellContext context,
        ImmutableArray<TimePoint> timePoints,
        SupposedResults supposed,
        double meanPercent,
        SeededRandom random
    )
    {
        var drawn = Draw(context, timePoints, supposed, meanPercent, random);
        return CellEvaluation.IsSupported(drawn[^1], context with { Earlier = drawn[..^1] });
    }

    /// <summary>The time points whose pairs a time point is judged by: its own, and where a criterion on drift applies the earlier ones.</summary>
    internal static ImmutableArray<TimePoint> Needed(CellContext context)
    {
        var last = context.TimePoint;
        return
        [
            .. context
                .Protocol.TimePointsOf(context.Analyte, context.Group.Id)
                .Where(point =>
                    point.Delay < last.Delay
                    && context.Applying.Any(item => item.Criterion is DriftCriterion)
                ),
            last,
        ];
    }

    /// <summary>The pairs of one study at each of some time points; the change grows up to the last of them.</summary>
    internal static ImmutableArray<ImmutableArray<PairRecord>> Draw(
        CellContext context,
        ImmutableArray<TimePoint> timePoints,
        SupposedResults supposed,
        double meanPercent,
        SeededRandom random
    )
    {
        var atLast = Growth(timePoints[^1]);
        return Draw(
            context,
            [
                .. timePoints.Select(point => new DrawnTimePoint(
                    point,
                    meanPercent,
                    supposed.SpecimenSdPercent,
                    Growth(point) / atLast
                )),
            ],
            supposed,
            random
        );

        double Growth(TimePoint timePoint) =>
            SpecimenSlopes.Transform(context.Analyte.DriftShape, timePoint.Delay.TotalHours)
            - (
                context.IsSinceCollection
                    ? 0
                    : SpecimenSlopes.Transform(
                        context.Analyte.DriftShape,
                        BaselineDelay(context).TotalHours
                    )
            );
    }

    /// <summary>The pairs of one study at time points with changes of their own; a specimen that changes much at one does so at all.</summary>
    internal static ImmutableArray<ImmutableArray<PairRecord>> Draw(
        CellContext context,
        ImmutableArray<DrawnTimePoint> timePoints,
        SupposedResults supposed,
        SeededRandom random
    )
    {
        var conduct = supposed.Conduct;
        var before = ShareBeforeBaseline(context);
        var baselines = Results(conduct.BaselineRun);
        var specimens = conduct
            .Day.Select((_, i) => (Level: Level(i), Deviation: random.NextNormal()))
            .Select(
                (specimen, i) =>
                    (
                        specimen.Level,
                        specimen.Deviation,
                        Baseline: baselines(
                            i,
                            specimen.Level
                                * (1 + (before * timePoints[^1].ChangeOf(specimen.Deviation)))
                        )
                    )
            )
            .ToImmutableArray();
        return
        [
            .. timePoints.Select(timePoint =>
            {
                var delayed = Results(conduct.DelayedRun);
                var place = context with { TimePoint = timePoint.TimePoint };
                return specimens
                    .Select(
                        (specimen, i) =>
                            Pair(
                                i,
                                specimen.Baseline,
                                delayed(
                                    i,
                                    specimen.Level * (1 + timePoint.ChangeOf(specimen.Deviation))
                                ),
                                place,
                                supposed
                            )
                    )
                    .ToImmutableArray();
            }),
        ];

        double Level(int specimen) =>
            supposed.PartOf(specimen) is { } part
                ? part.Lowest * Math.Pow(part.Highest / part.Lowest, random.NextDouble())
                : supposed.BaselineMedian * Math.Exp(supposed.BaselineLogSd * random.NextNormal());

        // One error a run and one a result, log-normal, so that a result stays above zero.
        Func<int, double, double> Results(ImmutableArray<int> runs)
        {
            var runSd = supposed.SameRun ? 0 : supposed.RunSdPercent;
            double[] errors =
            [
                .. Enumerable.Range(0, runs.Max() + 1).Select(_ => runSd * random.NextNormal()),
            ];
            return (specimen, value) =>
                value
                * Math.Exp(
                    (errors[runs[specimen]] + (supposed.RepeatCvPercent * random.NextNormal()))
                        / 100
                );
        }
    }

    /// <summary>Which share of a change counted from collection comes before the baseline, by a logarithmic course; 0 where it is counted from the baseline.</summary>
    internal static double ShareBeforeBaseline(CellContext context) =>
        context.IsSinceCollection
            ? Course(BaselineDelay(context)) / Course(context.TimePoint.Delay)
            : 0;

    private static double Course(TimeSpan delay) =>
        SpecimenSlopes.Transform(DriftShape.Logarithmic, delay.TotalHours);

    internal static TimeSpan BaselineDelay(CellContext context) =>
        context.Protocol.BaselineWithin / 2;

    private static PairRecord Pair(
        int number,
        double baseline,
        double delayed,
        CellContext context,
        SupposedResults supposed
    )
    {
        var (conduct, sameRun) = (supposed.Conduct, supposed.SameRun);
        var collected = s_firstCollection.AddDays(conduct.Day[number]);
        var code = number.ToString("D4", System.Globalization.CultureInfo.InvariantCulture);
        var (early, late) = (BaselineDelay(context), context.TimePoint.Delay);
        Measurement Of(string tube, double value, TimeSpan delay, int run) =>
            new(
                tube,
                new MeasuredResult(
                    "",
                    decimal.Round((decimal)value, context.Analyte.Decimals, MidpointRounding.ToEven)
                ),
                collected + (sameRun ? late : delay),
                delay,
                TestConditions.OfRun(FormattableString.Invariant($"{(sameRun ? "" : tube)} {run}")),
                null
            );
        return new PairRecord(
            new(code, code, collected),
            PairStatus.Compared,
            "",
            Of("baseline", baseline, early, conduct.BaselineRun[number]),
            Of("delayed", delayed, late, conduct.DelayedRun[number]),
            false
        );
    }

    private static void RequirePossible(SupposedResults supposed)
    {
        if (
            !(supposed.BaselineMedian > 0 && double.IsFinite(supposed.BaselineMedian))
            || !IsSpread(supposed.BaselineLogSd)
            || !IsSpread(supposed.SpecimenSdPercent)
            || !IsSpread(supposed.RepeatCvPercent)
            || !IsSpread(supposed.RunSdPercent)
            || supposed.Parts.Any(part => !(part.Lowest > 0 && part.Highest >= part.Lowest))
        )
        {
            throw new ArgumentException(
                "The median is above zero, and standard deviations are not below it.",
                nameof(supposed)
            );
        }
    }

    private static bool IsSpread(double value) => value >= 0 && double.IsFinite(value);
}
