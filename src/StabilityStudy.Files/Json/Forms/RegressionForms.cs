using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Regression;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>Lines, correlations and their intervals.</summary>
internal static class RegressionForms
{
    public static readonly ObjectForm<BiasAtLevel> BiasAtLevelForm = new("biasAtLevel")
    {
        { "level", v => v.Level, Form.Number },
        { "predictedDelayed", v => v.PredictedDelayed, Form.Number },
        { "bias", v => v.Bias, Form.Number },
        { "biasPercent", v => v.BiasPercent, Form.Number },
        { "standardError", v => v.StandardError, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "decidedBy", v => v.DecidedBy, Form.Word<IntervalSource>() },
    };

    public static readonly ObjectForm<CoefficientInterval> CoefficientIntervalForm = new(
        "coefficientInterval"
    )
    {
        { "value", v => v.Value, Form.Number },
        { "standardError", v => v.StandardError, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
    };

    public static readonly ObjectForm<LineFit> LineFitForm = new("lineFit")
    {
        { "count", v => v.Count, Form.Count },
        { "intercept", v => v.Intercept, CoefficientIntervalForm },
        { "slope", v => v.Slope, CoefficientIntervalForm },
        { "residualStandardDeviation", v => v.ResidualStandardDeviation, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "degreesOfFreedom", v => v.DegreesOfFreedom, Form.Number },
    };

    public static readonly ObjectForm<CusumLinearity> CusumLinearityForm = new("cusumLinearity")
    {
        { "statistic", v => v.Statistic, Form.Number },
        { "criticalValue", v => v.CriticalValue, Form.Number },
        { "deviatesFromLinearity", v => v.DeviatesFromLinearity, Form.Truth },
        { "above", v => v.Above, Form.Count },
        { "below", v => v.Below, Form.Count },
    };

    public static readonly ObjectForm<PassingBablokFit> PassingBablokFitForm = new(
        "passingBablokFit"
    )
    {
        { "count", v => v.Count, Form.Count },
        { "slopeCount", v => v.SlopeCount, Form.LongCount },
        { "slopesBelowMinusOne", v => v.SlopesBelowMinusOne, Form.LongCount },
        { "slope", v => v.Slope, Form.Number },
        { "slopeLower", v => v.SlopeLower, Form.Number },
        { "slopeUpper", v => v.SlopeUpper, Form.Number },
        { "intercept", v => v.Intercept, Form.Number },
        { "interceptLower", v => v.InterceptLower, Form.Number },
        { "interceptUpper", v => v.InterceptUpper, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "linearity", v => v.Linearity, CusumLinearityForm },
    };

    public static readonly ObjectForm<CorrelationCoefficient> CorrelationCoefficientForm = new(
        "correlationCoefficient"
    )
    {
        { "pearson", v => v.Pearson, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
    };

    public static readonly ObjectForm<TheilSenFit> TheilSenFitForm = new("theilSenFit")
    {
        { "count", v => v.Count, Form.Count },
        { "slopeCount", v => v.SlopeCount, Form.LongCount },
        { "slope", v => v.Slope, Form.Number },
        { "slopeLower", v => v.SlopeLower, Form.Number },
        { "slopeUpper", v => v.SlopeUpper, Form.Number },
        { "intercept", v => v.Intercept, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
    };

    public static readonly ObjectForm<SlopeBootstrapInterval> SlopeBootstrapIntervalForm = new(
        "slopeBootstrapInterval"
    )
    {
        { "value", v => v.Value, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "replicates", v => v.Replicates, Form.Count },
        { "redrawn", v => v.Redrawn, Form.Count },
        { "biasCorrection", v => v.BiasCorrection, Form.Number },
        { "acceleration", v => v.Acceleration, Form.Number },
        { "seed", v => v.Seed, Form.Seed },
    };

    public static readonly ObjectForm<BootstrapBias> BootstrapBiasForm = new("bootstrapBias")
    {
        { "level", v => v.Level, Form.Number },
        { "bias", v => v.Bias, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
        { "replicates", v => v.Replicates, Form.Count },
        { "redrawn", v => v.Redrawn, Form.Count },
        { "biasCorrection", v => v.BiasCorrection, Form.Number },
        { "acceleration", v => v.Acceleration, Form.Number },
        { "seed", v => v.Seed, Form.Seed },
    };

    public static readonly ObjectForm<KendallTau> KendallTauForm = new("kendallTau")
    {
        { "count", v => v.Count, Form.Count },
        { "concordant", v => v.Concordant, Form.LongCount },
        { "discordant", v => v.Discordant, Form.LongCount },
        { "tiedInX", v => v.TiedInX, Form.LongCount },
        { "tiedInY", v => v.TiedInY, Form.LongCount },
        { "tauB", v => v.TauB, Form.Number },
        { "standardError", v => v.StandardError, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
    };

    public static readonly ObjectForm<ConcordanceCoefficient> ConcordanceCoefficientForm = new(
        "concordanceCoefficient"
    )
    {
        { "concordance", v => v.Concordance, Form.Number },
        { "accuracy", v => v.Accuracy, Form.Number },
        { "standardError", v => v.StandardError, Form.Number },
        { "lower", v => v.Lower, Form.Number },
        { "upper", v => v.Upper, Form.Number },
        { "confidenceLevel", v => v.ConfidenceLevel, Form.Number },
    };
}
