namespace StabilityStudy.Statistics;

/// <summary>
/// Why a method gives no value. <see cref="AssumptionCode.Of(Refusal)"/> gives the assumption that does not hold, which is what files carry; the sentences are the report's.
/// </summary>
public enum Refusal
{
    /// <summary>A location has nothing to stand on without a value.</summary>
    NoneForLocation,

    /// <summary>An interval of a mean needs a spread, and so two values.</summary>
    TooFewForMean,

    /// <summary>A skewness is not defined below three values.</summary>
    TooFewForSkewness,

    /// <summary>The test of normality begins at three values.</summary>
    TooFewForNormality,

    /// <summary>Percentiles so far out lie beyond the smallest and the largest value.</summary>
    TooFewForPercentiles,

    /// <summary>A tolerance interval needs a spread, and so two values.</summary>
    TooFewForTolerance,

    /// <summary>Limits of agreement need a spread, and so two differences.</summary>
    TooFewForLimitsOfAgreement,

    /// <summary>What clusters have in common shows with two clusters, one of them with two values.</summary>
    TooFewForClusterVariation,

    /// <summary>Two values must be left when every outlier looked for is taken out.</summary>
    TooFewForOutliers,

    /// <summary>There is no pair whose difference could be ranked.</summary>
    NoneForSignedRank,

    /// <summary>A line through fewer than three pairs leaves nothing for an interval.</summary>
    TooFewForLine,

    /// <summary>Two pairs must be left when one is left out, and n − 2 be above zero.</summary>
    TooFewForJackknife,

    /// <summary>The interval of a correlation has n − 3 in it.</summary>
    TooFewForCorrelation,

    /// <summary>The interval of a concordance begins at four pairs.</summary>
    TooFewForConcordance,

    /// <summary>The interval of a rank correlation begins at three pairs.</summary>
    TooFewForRankCorrelation,

    /// <summary>Fewer than two specimens have a delay other than that of their baseline, and so a slope.</summary>
    TooFewForDrift,

    /// <summary>Fewer than three specimens have results at two delays, or none has at three: scatter of slopes and of results cannot be told apart.</summary>
    TooFewForMixedModel,

    /// <summary>All specimens are of one person, so persons have no spread.</summary>
    OnePerson,

    /// <summary>No specimen can be counted, so there is no share.</summary>
    NothingCounted,

    /// <summary>The approximation of the test of normality was made for up to 5,000 values.</summary>
    TooManyForNormality,

    /// <summary>The exact factor has been checked up to 10,000 values.</summary>
    TooManyForTolerance,

    /// <summary>The line is fitted again with each pair left out, which takes too long beyond 5,000.</summary>
    TooManyForJackknife,

    /// <summary>Beyond 1,000 pairs the jackknife says as much as the bootstrap of a Deming line.</summary>
    TooManyForDemingBootstrap,

    /// <summary>The bootstrap of a Passing–Bablok line takes up to 1,000 pairs.</summary>
    TooManyForPassingBablokBootstrap,

    /// <summary>Studies are simulated with up to 10,000 specimens.</summary>
    TooManyToSimulate,

    /// <summary>All values are the same.</summary>
    SameValues,

    /// <summary>All values are the same, so a t value has zero below the line.</summary>
    SameValuesForTTest,

    /// <summary>All values are the same, so their skewness is not defined.</summary>
    SameValuesForSkewness,

    /// <summary>All second members are the same.</summary>
    SameSecondValues,

    /// <summary>All second members are the same, so they order nothing.</summary>
    SecondValuesOrderNothing,

    /// <summary>Every difference is zero, so there is nothing to rank.</summary>
    NoDifferenceToRank,

    /// <summary>Every result lies on the line of its specimen.</summary>
    NoScatterAboutLines,

    /// <summary>All first members are the same, so there is no line to fit.</summary>
    SameBaselines,

    /// <summary>Whether a first member lies above the level follows from its cluster or from the slope.</summary>
    SidesNotSeparate,

    /// <summary>All first members are the same, so they order nothing.</summary>
    BaselinesOrderNothing,

    /// <summary>A percent change divides by the first member, which is not above zero.</summary>
    NotPositiveForPercent,

    /// <summary>A ratio has a logarithm only of two members above zero.</summary>
    NotPositiveForLogRatio,

    /// <summary>A level and a ratio have logarithms only of members above zero.</summary>
    NotPositiveForLogarithm,

    /// <summary>A share of an allowance in percent divides by the baseline, which is not above zero.</summary>
    NotPositiveForShare,

    /// <summary>Weights 1/baseline² need baselines above zero.</summary>
    NotPositiveForBaselineWeights,

    /// <summary>Weights in proportion to the level need measured values above zero.</summary>
    NotPositiveForWeights,

    /// <summary>Weights in proportion to the level need levels above zero, also those estimated on the way.</summary>
    NotPositiveForLevelWeights,

    /// <summary>Even from the smallest to the largest value the confidence is less than wanted.</summary>
    TooFewToReachConfidence,

    /// <summary>So few slopes give no interval at the wanted confidence.</summary>
    TooFewSlopes,

    /// <summary>There are more averages of two values than ranks can be counted.</summary>
    TooManyAveragesToRank,

    /// <summary>The values of drawn samples lie too far to one side of the estimate to correct the interval for it.</summary>
    DrawnToOneSide,

    /// <summary>The values do not vary together, so the line is vertical or has no direction.</summary>
    NoDirection,

    /// <summary>The slope or an end of its interval is vertical.</summary>
    VerticalSlope,

    /// <summary>Samples drawn from the pairs keep giving no line.</summary>
    DrawnWithoutLine,

    /// <summary>Weights and line did not settle.</summary>
    WeightsDidNotSettle,

    /// <summary>The search for the variances did not settle.</summary>
    VariancesDidNotSettle,

    /// <summary>The method presumes that y rises with x; <see cref="NotComputable.Association"/> does not show it.</summary>
    NoPositiveAssociation,

    /// <summary>The limit has no part on the scale of the criterion: an absolute one says nothing about percent.</summary>
    LimitNotOnScale,

    /// <summary>The baselines do not cover the level, so a line would only guess there.</summary>
    LevelOutsideCoverage,

    /// <summary>No criterion holds a change to a limit, so there is none to measure supposed changes by.</summary>
    NoLimit,

    /// <summary>The spread alone makes a criterion untrue.</summary>
    SpreadTooWide,
}
