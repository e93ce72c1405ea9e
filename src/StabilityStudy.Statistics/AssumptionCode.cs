namespace StabilityStudy.Statistics;

/// <summary>
/// The reasons for which a method gives no value or a remark. The codes are stable: the same code stands in
/// METHODS.md, in analysis.json and in the report.
/// </summary>
public static class AssumptionCode
{
    /// <summary>Fewer values than the method needs.</summary>
    public const string TooFewValues = "too-few-values";

    /// <summary>More values than the method can hold, or than it was made or checked for.</summary>
    public const string TooManyValues = "too-many-values";

    /// <summary>A result rests on an approximation that is coarse at this sample size.</summary>
    public const string ApproximateAtThisSize = "approximate-at-this-size";

    /// <summary>All values are the same, so there is no spread to work with.</summary>
    public const string ZeroSpread = "zero-spread";

    /// <summary>All baseline values are the same, so there is no line to fit.</summary>
    public const string ConstantBaseline = "constant-baseline";

    /// <summary>No interval of the wanted confidence exists at this sample size.</summary>
    public const string NoIntervalAtThisSize = "no-interval-at-this-size";

    /// <summary>A specimen has no measurement at a delay other than that of its baseline, so it has no slope.</summary>
    public const string NoDelayBeyondBaseline = "no-delay-beyond-baseline";

    /// <summary>The method presumes that y rises with x, and the data do not show that it does.</summary>
    public const string NoPositiveAssociation = "no-positive-association";

    /// <summary>The slope is vertical or has no direction, also that of a set with a pair left out or of drawn samples.</summary>
    public const string InfiniteSlope = "infinite-slope";

    /// <summary>Heavy ties make the result less informative than its interval looks.</summary>
    public const string HeavyTies = "heavy-ties";

    /// <summary>An iteration did not settle.</summary>
    public const string NoConvergence = "no-convergence";

    /// <summary>A value must be above zero for this scale or weighting and is not.</summary>
    public const string ValueNotPositive = "value-not-positive";

    /// <summary>All values share one cluster, so what they have in common cannot be told from the mean.</summary>
    public const string OneCluster = "one-cluster";

    /// <summary>The ranks of an interval come from an approximation, because the sample is too large for the exact distribution.</summary>
    public const string ApproximateRank = "approximate-rank";

    /// <summary>The limit has no part for the scale: an absolute limit says nothing about percent.</summary>
    public const string LimitNotOnScale = "limit-not-on-scale";

    /// <summary>The baselines do not cover a decision level.</summary>
    public const string LevelOutsideCoverage = "level-outside-coverage";

    /// <summary>No criterion holds a change to a limit, so there is none to measure supposed changes by.</summary>
    public const string NoLimit = "no-limit";

    /// <summary>The spread alone makes a criterion untrue.</summary>
    public const string SpreadTooWide = "spread-too-wide";

    /// <summary>The code of a refusal.</summary>
    public static string Of(Refusal refusal) =>
        refusal switch
        {
            Refusal.NoneForLocation
            or Refusal.TooFewForMean
            or Refusal.TooFewForSkewness
            or Refusal.TooFewForNormality
            or Refusal.TooFewForPercentiles
            or Refusal.TooFewForTolerance
            or Refusal.TooFewForLimitsOfAgreement
            or Refusal.TooFewForClusterVariation
            or Refusal.TooFewForOutliers
            or Refusal.NoneForSignedRank
            or Refusal.TooFewForLine
            or Refusal.TooFewForJackknife
            or Refusal.TooFewForCorrelation
            or Refusal.TooFewForConcordance
            or Refusal.TooFewForRankCorrelation
            or Refusal.TooFewForDrift
            or Refusal.TooFewForMixedModel
            or Refusal.OnePerson
            or Refusal.NothingCounted => TooFewValues,
            Refusal.TooManyForNormality
            or Refusal.TooManyForTolerance
            or Refusal.TooManyForJackknife
            or Refusal.TooManyForDemingBootstrap
            or Refusal.TooManyForPassingBablokBootstrap
            or Refusal.TooManyToSimulate => TooManyValues,
            Refusal.SameValues
            or Refusal.SameValuesForTTest
            or Refusal.SameValuesForSkewness
            or Refusal.SameSecondValues
            or Refusal.SecondValuesOrderNothing
            or Refusal.NoDifferenceToRank
            or Refusal.NoScatterAboutLines => ZeroSpread,
            Refusal.SameBaselines or Refusal.SidesNotSeparate or Refusal.BaselinesOrderNothing =>
                ConstantBaseline,
            Refusal.NotPositiveForPercent
            or Refusal.NotPositiveForLogRatio
            or Refusal.NotPositiveForLogarithm
            or Refusal.NotPositiveForShare
            or Refusal.NotPositiveForBaselineWeights
            or Refusal.NotPositiveForWeights
            or Refusal.NotPositiveForLevelWeights => ValueNotPositive,
            Refusal.TooFewToReachConfidence
            or Refusal.TooFewSlopes
            or Refusal.TooManyAveragesToRank
            or Refusal.DrawnToOneSide => NoIntervalAtThisSize,
            Refusal.NoDirection or Refusal.VerticalSlope or Refusal.DrawnWithoutLine =>
                InfiniteSlope,
            Refusal.WeightsDidNotSettle or Refusal.VariancesDidNotSettle => NoConvergence,
            Refusal.NoPositiveAssociation => NoPositiveAssociation,
            Refusal.LimitNotOnScale => LimitNotOnScale,
            Refusal.LevelOutsideCoverage => LevelOutsideCoverage,
            Refusal.NoLimit => NoLimit,
            Refusal.SpreadTooWide => SpreadTooWide,
        };

    /// <summary>The code of a remark.</summary>
    public static string Of(EstimateNote note) =>
        note switch
        {
            EstimateNote.SameValues => ZeroSpread,
            EstimateNote.OneCluster => OneCluster,
            EstimateNote.ApproximateRank or EstimateNote.ApproximatePValue => ApproximateRank,
            EstimateNote.ApproximateOutlierLevel => ApproximateAtThisSize,
            EstimateNote.HeavyTies => HeavyTies,
            EstimateNote.NoDelayBeyondBaseline => NoDelayBeyondBaseline,
        };
}
