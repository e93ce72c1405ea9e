using StabilityStudy.Statistics.Drift;
using static StabilityStudy.Files.Json.Forms.LocationForms;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>Estimates of drift.</summary>
internal static class DriftStatisticsForms
{
    public static readonly ObjectForm<DriftEstimate> DriftEstimateForm = new("driftEstimate")
    {
        { "shape", v => v.Shape, Form.Word<DriftShape>() },
        { "specimenCount", v => v.SpecimenCount, Form.Count },
        {
            "leftOut",
            v => v.LeftOut,
            Form.Count,
            "specimens with results of which none was tested later than its baseline"
        },
        {
            "specimens",
            v => v.Specimens,
            Form.List(Form.Count),
            "one number a slope: which of the specimens with a percent change at each of their compared time points, counted from 0 in the order of their codes"
        },
        { "specimenSlopes", v => v.SpecimenSlopes, Form.List(Form.Number) },
        { "meanSlope", v => v.MeanSlope, ClusteredMeanIntervalForm },
        { "oneSidedConfidence", v => v.OneSidedConfidence, Form.Number },
        { "baselineDelayHours", v => v.BaselineDelayHours, Form.Number },
    };

    public static readonly ObjectForm<CrossingTime.AlreadyOutside> AlreadyOutsideForm = new(
        "alreadyOutside"
    )
    { };

    public static readonly ObjectForm<CrossingTime.Never> NeverForm = new("never") { };

    public static readonly ObjectForm<CrossingTime.At> AtForm = new("at")
    {
        { "hours", v => v.Hours, Form.Number },
    };

    public static readonly Form<CrossingTime> CrossingTimeForm = new ChoiceForm<CrossingTime>(
        "crossingTime"
    )
    {
        { "already-outside", AlreadyOutsideForm },
        { "never", NeverForm },
        { "at", AtForm },
    };

    public static readonly ObjectForm<DriftPoint> DriftPointForm = new("driftPoint")
    {
        { "hours", v => v.Hours, Form.Number },
        { "change", v => v.Change, Form.Number },
        { "lowerBound", v => v.LowerBound, Form.Number },
        { "upperBound", v => v.UpperBound, Form.Number },
    };

    public static readonly ObjectForm<RandomSlopeFit> RandomSlopeFitForm = new("randomSlopeFit")
    {
        { "specimenCount", v => v.SpecimenCount, Form.Count },
        { "resultCount", v => v.ResultCount, Form.Count },
        { "intercept", v => v.Intercept, Form.Number },
        { "slope", v => v.Slope, Form.Number },
        { "slopeStandardError", v => v.SlopeStandardError, Form.Number },
        { "slopeLower", v => v.SlopeLower, Form.Number },
        { "slopeUpper", v => v.SlopeUpper, Form.Number },
        { "oneSidedConfidence", v => v.OneSidedConfidence, Form.Number },
        { "degreesOfFreedom", v => v.DegreesOfFreedom, Form.Count },
        { "interceptVariance", v => v.InterceptVariance, Form.Number },
        { "slopeVariance", v => v.SlopeVariance, Form.Number },
        { "correlation", v => v.Correlation, Form.Number.OrNull() },
        { "residualVariance", v => v.ResidualVariance, Form.Number },
        { "boundary", v => v.Boundary, Form.Word<VarianceBoundary>() },
        { "restrictedLogLikelihood", v => v.RestrictedLogLikelihood, Form.Number },
        { "correctedInformation", v => v.CorrectedInformation, Form.Number.OrNull() },
    };

    public static readonly ObjectForm<CrossingRoots> CrossingRootsForm = new("crossingRoots")
    {
        { "lowerLimitHours", v => v.LowerLimitHours, Form.Number.OrNull() },
        { "upperLimitHours", v => v.UpperLimitHours, Form.Number.OrNull() },
        { "first", v => v.First, Form.Number.OrNull() },
    };
}
