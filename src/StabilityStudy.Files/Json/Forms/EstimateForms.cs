using StabilityStudy.Core.Estimates;
using static StabilityStudy.Files.Json.Forms.EstimateForm;
using static StabilityStudy.Files.Json.Forms.LocationForms;
using static StabilityStudy.Files.Json.Forms.RegressionForms;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>What is estimated of a time point.</summary>
internal static class EstimateForms
{
    public static readonly ObjectForm<ChangeAtLevel> ChangeAtLevelForm = new("changeAtLevel")
    {
        { "level", v => v.Level, Form.Exact },
        { "deming", v => v.Deming, Jackknifed(BiasAtLevelForm) },
        { "ordinaryLeastSquares", v => v.OrdinaryLeastSquares, Jackknifed(BiasAtLevelForm) },
        { "passingBablok", v => v.PassingBablok, Estimate(BootstrapBiasForm) },
    };

    public static readonly ObjectForm<FurtherEstimates> FurtherEstimatesForm = new(
        "furtherEstimates"
    )
    {
        { "percentilesPercent", v => v.PercentilesPercent, Estimate(PercentileRangeForm) },
        { "tolerancePercent", v => v.TolerancePercent, Estimate(ToleranceIntervalForm) },
        { "normalityPercent", v => v.NormalityPercent, Estimate(NormalityTestForm) },
        { "signedRank", v => v.SignedRank, Estimate(SignedRankTestForm) },
        { "weightedLeastSquares", v => v.WeightedLeastSquares, Jackknifed(LineFitForm) },
        { "theilSen", v => v.TheilSen, WithoutInterval(TheilSenFitForm) },
        { "demingBootstrap", v => v.DemingBootstrap, Jackknifed(SlopeBootstrapIntervalForm) },
        { "changesAtLevels", v => v.ChangesAtLevels, Form.List(ChangeAtLevelForm) },
        { "levelDependence", v => v.LevelDependence, Jackknifed(LineFitForm) },
        { "kendall", v => v.Kendall, Estimate(KendallTauForm) },
        { "concordance", v => v.Concordance, Estimate(ConcordanceCoefficientForm) },
    };

    public static readonly ObjectForm<CellEstimates> CellEstimatesForm = new("cellEstimates")
    {
        { "compared", v => v.Compared, Form.Count },
        { "collectionDays", v => v.CollectionDays, Form.Count },
        { "meanPercent", v => v.MeanPercent, Estimate(ClusteredMeanIntervalForm) },
        { "meanAbsolute", v => v.MeanAbsolute, Estimate(ClusteredMeanIntervalForm) },
        { "spreadPercent", v => v.SpreadPercent, Estimate(SpreadSummaryForm) },
        { "agreementPercent", v => v.AgreementPercent, Estimate(LimitsOfAgreementForm) },
        { "agreementAbsolute", v => v.AgreementAbsolute, Estimate(LimitsOfAgreementForm) },
        { "medianPercent", v => v.MedianPercent, WithoutInterval(OrderIntervalForm) },
        { "hodgesLehmannPercent", v => v.HodgesLehmannPercent, WithoutInterval(OrderIntervalForm) },
        { "pairedT", v => v.PairedT, Estimate(PairedTTestForm) },
        { "weightedDeming", v => v.WeightedDeming, Jackknifed(LineFitForm) },
        { "deming", v => v.Deming, Jackknifed(LineFitForm) },
        { "ordinaryLeastSquares", v => v.OrdinaryLeastSquares, Jackknifed(LineFitForm) },
        { "passingBablok", v => v.PassingBablok, WithoutInterval(PassingBablokFitForm) },
        { "correlation", v => v.Correlation, Estimate(CorrelationCoefficientForm) },
        { "outliers", v => v.Outliers, Estimate(ExtremeStudentizedDeviateForm) },
        { "noisePercent", v => v.NoisePercent, Form.Number.OrNull() },
        { "further", v => v.Further, FurtherEstimatesForm },
    };

    public static readonly ObjectForm<SideChange> SideChangeForm = new("sideChange")
    {
        { "level", v => v.Level, Form.Exact },
        { "counted", v => v.Counted, Form.Count },
        { "up", v => v.Up, Form.List(Form.Text) },
        { "down", v => v.Down, Form.List(Form.Text) },
        { "expectedFromNoise", v => v.ExpectedFromNoise, Form.Number.OrNull() },
        { "baselinesBelow", v => v.BaselinesBelow, Form.Count },
    };
}
