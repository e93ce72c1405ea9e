using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Reporting.Report;

/// <summary>The figures of a criterion as the report prints them.</summary>
internal static class CriterionWords
{
    private const int PercentDecimals = 2;
    private const int LogRatioDecimals = 4;

    /// <summary>Decimals of figures on the criterion's scale.</summary>
    public static int Decimals(ChangeScale scale, SequenceNames names) =>
        scale == ChangeScale.Absolute ? names.EstimateDecimals : PercentDecimals;

    /// <summary>A change with its unit: "+4.38 %"; it never rounds across the limit.</summary>
    public static string Figure(BiasResult bias, double value, SequenceNames names) =>
        $"{Number(bias, value, names)} {Unit(bias, names)}";

    /// <summary>The same without its unit.</summary>
    public static string Number(BiasResult bias, double value, SequenceNames names) =>
        NumberText.ChangeAgainstLimits(
            value,
            Lowest(bias),
            Highest(bias),
            Decimals(bias.Scale, names)
        );

    /// <summary>An interval of changes with its unit; neither end rounds across the limit.</summary>
    public static string Interval(
        BiasResult bias,
        double lower,
        double upper,
        SequenceNames names
    ) =>
        $"{NumberText.IntervalAgainstLimits(lower, upper, Lowest(bias), Highest(bias), Decimals(bias.Scale, names))} {Unit(bias, names)}";

    /// <summary>
    /// The limit on the criterion's scale: "±7.5 %", "±1 of the allowance (±2 s)"; both ends where they are not alike; the
    /// protocol's own words where the data could not be put on the scale.
    /// </summary>
    public static string Allowed(BiasResult bias, SequenceNames names)
    {
        var asWritten = TradeWords.Of(bias.Limit, names.Analyte.ShownUnit);
        return bias switch
        {
            { LowerLimit: null } or { UpperLimit: null } => asWritten,
            { Scale: ChangeScale.LogRatio } =>
                $"{NumberText.Interval(Lowest(bias), Highest(bias), LogRatioDecimals)} {Unit(bias, names)}, that is {asWritten}",
            { Scale: ChangeScale.Share } => $"±1 {Unit(bias, names)} ({asWritten})",
            { Scale: ChangeScale.Absolute, Limit.AbsoluteInUnit: { } amount } =>
                $"±{NumberText.Plain(amount)} {names.Analyte.ShownUnit}",
            { Limit.Percent: { } percent } => $"±{NumberText.Plain(percent)} %",
            _ => asWritten,
        };
    }

    /// <summary>Mean with its interval: "+4.38 (+3.20 to +5.61) %"; says so when there is none.</summary>
    public static string MeanWithInterval(BiasResult bias, SequenceNames names)
    {
        if (!bias.Mean.TryGet(out var mean))
        {
            return "not computable";
        }

        var decimals = Decimals(bias.Scale, names);
        var (lowest, highest) = (Lowest(bias), Highest(bias));
        return $"{NumberText.ChangeAgainstLimits(mean.Mean, lowest, highest, decimals)} ({NumberText.IntervalAgainstLimits(mean.Lower, mean.Upper, lowest, highest, decimals)}) {Unit(bias, names)}";
    }

    /// <summary>Share with the bound that is read against the required one: "38 of 39 (≥ 88.4 %)", and where it is not met "26 of 40 (≤ 77.5 %)".</summary>
    public static string ShareWithBound(IndividualResult individual) =>
        individual.Bounds.TryGet(out var bounds)
            ? $"{individual.Agreement.Inside} of {individual.Agreement.Counted} ({Bound(bounds, individual.RequiredShare, individual.Verdict)})"
            : "none counted";

    /// <summary>"≥ 88.4 %"; "≤ 77.5 %" of a share that was shown to be too small.</summary>
    public static string Bound(ProportionBounds bounds, double requiredShare, Verdict verdict) =>
        verdict == Verdict.NotMet && bounds.OneSidedUpper < requiredShare
            ? "≤\u00A0" + UpperBound(bounds, requiredShare)
            : "≥\u00A0" + LowerBound(bounds, requiredShare);

    /// <summary>The exact one-sided lower bound: "88.4 %"; it never rounds across the required share.</summary>
    public static string LowerBound(ProportionBounds bounds, double requiredShare) =>
        NumberText.AgainstLimit(100 * bounds.OneSidedLower, 100 * requiredShare, 1) + " %";

    /// <summary>The exact one-sided upper bound; it never rounds across the share it is held to.</summary>
    public static string UpperBound(ProportionBounds bounds, double share) =>
        NumberText.AgainstLimit(100 * bounds.OneSidedUpper, 100 * share, 1) + " %";

    /// <summary>The change predicted at a level with its interval, without unit: "+1.2 (−0.3 to +2.7)"; null when there is none.</summary>
    public static string? Predicted(LevelResult level, SequenceNames names) =>
        level.Change.TryGet(out var change)
            ? WithInterval(
                (change.Bias, change.Lower, change.Upper),
                level.Allowed,
                names.EstimateDecimals
            )
            : null;

    /// <summary>The change that a shape of drift predicts with its interval, without unit; null when there is none.</summary>
    public static string? Predicted(ShapeResult shape) =>
        shape.Predicted is { } point
            ? WithInterval(
                (point.Change, point.LowerBound, point.UpperBound),
                shape.LimitPercent,
                PercentDecimals
            )
            : null;

    /// <summary>Specimens that count as having changed side.</summary>
    public static int Changed(LevelReclassification level) =>
        level.MovedUp + level.MovedDown + level.Failed + level.Undecidable;

    private static string WithInterval(
        (double Value, double Lower, double Upper) change,
        double limit,
        int decimals
    ) =>
        $"{NumberText.ChangeAgainstLimits(change.Value, -limit, limit, decimals)} ({NumberText.IntervalAgainstLimits(change.Lower, change.Upper, -limit, limit, decimals)})";

    // Without a limit on the scale no figure can round across it.
    private static double Lowest(BiasResult bias) => bias.LowerLimit ?? double.NegativeInfinity;

    private static double Highest(BiasResult bias) => bias.UpperLimit ?? double.PositiveInfinity;

    private static string Unit(BiasResult bias, SequenceNames names) =>
        TradeWords.Of(bias.Scale, names.Analyte.ShownUnit);
}
