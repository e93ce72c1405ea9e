using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Outliers;
using StabilityStudy.Statistics.Proportions;
using static StabilityStudy.Files.Json.Forms.EstimateForm;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>Estimates of location, spread and agreement.</summary>
internal static class LocationForms
{
    public static readonly ObjectForm<MeanInterval> MeanIntervalForm = new("meanInterval")
    {
        { "count", v => v.Count, Form.Count },
        { "mean", v => v.Mean, Form.Number },
        { "standardDeviation", v => v.StandardDeviation, Form.Number },
        { "standardError", v => v.StandardError, Form.Number },
        { "degreesOfFreedom", v => v.DegreesOfFreedom, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
    };

    public static readonly ObjectForm<ClusterInterval> ClusterIntervalForm = new("clusterInterval")
    {
        { "source", v => v.Source, Form.Word<IntervalSource>() },
        { "clusters", v => v.Clusters, Form.Count },
        { "mean", v => v.Mean, Form.Number },
        { "standardError", v => v.StandardError, Form.Number },
        { "degreesOfFreedom", v => v.DegreesOfFreedom, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
    };

    public static readonly ObjectForm<SkewnessStretch> SkewnessStretchForm = new("skewnessStretch")
    {
        { "skewness", v => v.Skewness, Form.Number },
        { "downward", v => v.Downward, Form.Number },
        { "upward", v => v.Upward, Form.Number },
    };

    public static readonly ObjectForm<ClusteredMeanInterval> ClusteredMeanIntervalForm = new(
        "clusteredMeanInterval"
    )
    {
        { "bySpecimen", v => v.BySpecimen, MeanIntervalForm },
        { "byCluster", v => v.ByCluster, Form.List(ClusterIntervalForm) },
        { "stretch", v => v.Stretch, SkewnessStretchForm },
        { "mean", v => v.Mean, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
        { "standardError", v => v.StandardError, Form.Number },
        { "degreesOfFreedom", v => v.DegreesOfFreedom, Form.Number },
        { "decidedBy", v => v.DecidedBy, Form.Word<IntervalSource>() },
    };

    public static readonly ObjectForm<EquivalenceTest> EquivalenceTestForm = new("equivalenceTest")
    {
        { "lowerLimit", v => v.LowerLimit, Form.Number },
        { "upperLimit", v => v.UpperLimit, Form.Number },
        { "pValueLower", v => v.PValueLower, Form.Number },
        { "pValueUpper", v => v.PValueUpper, Form.Number },
        { "pValue", v => v.PValue, Form.Number },
    };

    public static readonly ObjectForm<SpreadSummary> SpreadSummaryForm = new("spreadSummary")
    {
        { "count", v => v.Count, Form.Count },
        { "mean", v => v.Mean, Form.Number },
        { "standardDeviation", v => v.StandardDeviation, Form.Number },
        { "skewness", v => v.Skewness, Form.Number },
        { "minimum", v => v.Minimum, Form.Number },
        { "maximum", v => v.Maximum, Form.Number },
    };

    public static readonly ObjectForm<ProportionBounds> ProportionBoundsForm = new(
        "proportionBounds"
    )
    {
        { "successes", v => v.Successes, Form.Count },
        { "trials", v => v.Trials, Form.Count },
        { "share", v => v.Share, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "oneSidedLower", v => v.OneSidedLower, Form.Number },
        { "oneSidedUpper", v => v.OneSidedUpper, Form.Number },
        { "twoSidedLower", v => v.TwoSidedLower, Form.Number },
        { "twoSidedUpper", v => v.TwoSidedUpper, Form.Number },
    };

    public static readonly ObjectForm<IntervalBounds> IntervalBoundsForm = new("intervalBounds")
    {
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
    };

    public static readonly ObjectForm<LimitsOfAgreement> LimitsOfAgreementForm = new(
        "limitsOfAgreement"
    )
    {
        { "count", v => v.Count, Form.Count },
        { "mean", v => v.Mean, Form.Number },
        { "standardDeviation", v => v.StandardDeviation, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
        { "lowerExact", v => v.LowerExact, IntervalBoundsForm },
        { "upperExact", v => v.UpperExact, IntervalBoundsForm },
        { "lowerApproximate", v => v.LowerApproximate, IntervalBoundsForm },
        { "upperApproximate", v => v.UpperApproximate, IntervalBoundsForm },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
    };

    public static readonly ObjectForm<OrderInterval> OrderIntervalForm = new("orderInterval")
    {
        { "count", v => v.Count, Form.Count },
        { "value", v => v.Value, Form.Number },
        { "achievedConfidence", v => v.AchievedConfidence, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
        { "lowerRank", v => v.LowerRank, Form.Count },
    };

    public static readonly ObjectForm<PairedTTest> PairedTTestForm = new("pairedTTest")
    {
        { "t", v => v.T, Form.Number },
        { "degreesOfFreedom", v => v.DegreesOfFreedom, Form.Number },
        { "pValue", v => v.PValue, Form.Number },
    };

    public static readonly ObjectForm<EsdStep> EsdStepForm = new("esdStep")
    {
        {
            "index",
            v => v.Index,
            Form.Count,
            "which of the compared pairs with a percent change, counted from 0 in the order of the pairs"
        },
        { "value", v => v.Value, Form.Number },
        { "statistic", v => v.Statistic, Form.Number },
        { "criticalValue", v => v.CriticalValue, Form.Number },
    };

    public static readonly ObjectForm<ExtremeStudentizedDeviate> ExtremeStudentizedDeviateForm =
        new("extremeStudentizedDeviate")
        {
            { "count", v => v.Count, Form.Count },
            { "mostOutliers", v => v.MostOutliers, Form.Count },
            { "significanceLevel", v => v.SignificanceLevel, Form.Number },
            { "steps", v => v.Steps, Form.List(EsdStepForm) },
            { "outlierIndices", v => v.OutlierIndices, Form.List(Form.Count) },
        };

    public static readonly ObjectForm<PercentileRange> PercentileRangeForm = new("percentileRange")
    {
        { "count", v => v.Count, Form.Count },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
        { "coverage", v => v.Coverage, Form.Number },
        { "type", v => v.Type, Form.Word<PercentileType>() },
    };

    public static readonly ObjectForm<ToleranceInterval> ToleranceIntervalForm = new(
        "toleranceInterval"
    )
    {
        { "count", v => v.Count, Form.Count },
        { "mean", v => v.Mean, Form.Number },
        { "standardDeviation", v => v.StandardDeviation, Form.Number },
        { "factor", v => v.Factor, Form.Number },
        { "howeFactor", v => v.HoweFactor, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
        { "coverage", v => v.Coverage, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
    };

    public static readonly ObjectForm<NormalityTest> NormalityTestForm = new("normalityTest")
    {
        { "count", v => v.Count, Form.Count },
        { "w", v => v.W, Form.Number },
        { "pValue", v => v.PValue, Form.Number },
    };

    public static readonly ObjectForm<SignedRankTest> SignedRankTestForm = new("signedRankTest")
    {
        { "count", v => v.Count, Form.Count },
        { "zeros", v => v.Zeros, Form.Count },
        { "positiveRankSum", v => v.PositiveRankSum, Form.Number },
        { "pValue", v => v.PValue, Form.Number },
        { "normalPValue", v => v.NormalPValue, Form.Number },
    };
}
