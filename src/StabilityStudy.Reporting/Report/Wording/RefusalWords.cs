using StabilityStudy.Statistics;

namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>Why a method gives no figure, and what a reader of a figure must see.</summary>
internal static class RefusalWords
{
    /// <summary>Why there is no figure, as a sentence; nothing where there is one.</summary>
    public static string Sentence<T>(Estimate<T> estimate)
        where T : class => estimate.NotComputable is { } why ? Sentence(why) : "";

    /// <summary>Why there is no figure, as a sentence.</summary>
    public static string Sentence(NotComputable why) => TradeWords.Capital(Clause(why)) + ".";

    /// <summary>Why there is no figure, as a part of a sentence.</summary>
    public static string Clause(NotComputable why) =>
        why.Omitted switch
        {
            { Pair: { } pair, Pairs: var all } =>
                $"without pair {NumberText.Count(pair)} of {NumberText.Count(all)} there is no standard error: {TradeWords.Capital(OfAll(why))}",
            { } =>
                $"without the pairs of one cluster, such as a collection day, there is no line: {TradeWords.Capital(OfAll(why))}",
            null => OfAll(why),
        };

    /// <summary>A remark as a sentence.</summary>
    public static string Of(EstimateNote note) =>
        note switch
        {
            EstimateNote.SameValues =>
                "All values are the same; the interval has no width and says nothing about the spread that rounding hides.",
            EstimateNote.OneCluster =>
                "All values share one cluster, so the interval knows nothing about the error that the cluster's values share.",
            EstimateNote.ApproximateRank =>
                "The ranks of the interval come from the normal approximation of the signed-rank distribution.",
            EstimateNote.ApproximatePValue =>
                "The p value comes from the normal approximation of the signed-rank distribution.",
            EstimateNote.ApproximateOutlierLevel =>
                "With fewer than 25 values the significance level of the outlier search is approximate.",
            EstimateNote.HeavyTies =>
                "Many results are the same number, as after rounding, or lie on one line exactly: the interval looks narrower than the data allow.",
            EstimateNote.NoDelayBeyondBaseline =>
                "Specimens without a measurement at a delay other than the baseline delay are left out.",
        };

    private static string OfAll(NotComputable why) =>
        why.Kind switch
        {
            Refusal.NoneForLocation => "a location estimate needs at least one value",
            Refusal.TooFewForMean => "an interval of a mean needs at least two values",
            Refusal.TooFewForSkewness => "a skewness needs at least three values",
            Refusal.TooFewForNormality => "a test of normality needs at least three values",
            Refusal.TooFewForPercentiles =>
                "percentiles so far out lie beyond the smallest and the largest of so few values",
            Refusal.TooFewForTolerance => "a tolerance interval needs at least two values",
            Refusal.TooFewForLimitsOfAgreement =>
                "limits of agreement need at least two differences",
            Refusal.TooFewForClusterVariation =>
                "what clusters have in common shows only with two clusters, one of them with two values",
            Refusal.TooFewForOutliers =>
                "the values must outnumber the outliers looked for by at least two",
            Refusal.NoneForSignedRank => "a signed-rank test needs at least one pair",
            Refusal.TooFewForLine => "a line with an interval needs at least three pairs",
            Refusal.TooFewForJackknife => "a jackknife interval needs at least three pairs",
            Refusal.TooFewForCorrelation =>
                "a correlation with an interval needs at least four pairs",
            Refusal.TooFewForConcordance =>
                "a concordance with an interval needs at least four pairs",
            Refusal.TooFewForRankCorrelation =>
                "a rank correlation with an interval needs at least three pairs",
            Refusal.TooFewForDrift =>
                "a mean drift needs at least two specimens with a delay other than their baseline delay",
            Refusal.TooFewForMixedModel =>
                "a model with a slope for each specimen needs at least three specimens with results at two delays, some of them at three",
            Refusal.OnePerson => "all specimens are of one person",
            Refusal.NothingCounted => "no specimen can be counted",
            Refusal.TooManyForNormality =>
                $"the approximation of the test holds up to {NumberText.Count(LargestSample.Normality)} values",
            Refusal.TooManyForTolerance =>
                $"the exact factor has been checked up to {NumberText.Count(LargestSample.Tolerance)} values; with more the percentiles themselves say as much",
            Refusal.TooManyForJackknife =>
                $"the line is fitted again with each pair left out; more than {NumberText.Count(LargestSample.Jackknife)} pairs are too many",
            Refusal.TooManyForDemingBootstrap =>
                $"with more than {NumberText.Count(LargestSample.Bootstrap)} pairs the jackknife interval says as much",
            Refusal.TooManyForPassingBablokBootstrap =>
                $"the bootstrap of a Passing–Bablok line takes at most {NumberText.Count(LargestSample.Bootstrap)} pairs",
            Refusal.TooManyToSimulate =>
                $"studies of more than {NumberText.Count(LargestSample.Simulation)} specimens are not simulated",
            Refusal.SameValues => "all values are the same",
            Refusal.SameValuesForTTest => "a t test needs values that differ",
            Refusal.SameValuesForSkewness =>
                "all values are the same, so their skewness is not defined",
            Refusal.SameSecondValues => "all second values are the same",
            Refusal.SecondValuesOrderNothing =>
                "all second values are the same, so they order nothing",
            Refusal.NoDifferenceToRank => "every difference is zero, so there is nothing to rank",
            Refusal.NoScatterAboutLines =>
                "every result lies on the line of its specimen, so there is no scatter to work with",
            Refusal.SidesNotSeparate =>
                "which specimens lie below the level and which above follows from their runs, so the sides cannot be told apart",
            Refusal.SameBaselines => "all baseline values are the same",
            Refusal.BaselinesOrderNothing =>
                "all baseline values are the same, so they order nothing",
            Refusal.NotPositiveForPercent => "a percent change needs first members above zero",
            Refusal.NotPositiveForLogRatio => "a log-ratio needs both members above zero",
            Refusal.NotPositiveForLogarithm => "logarithms need results above zero",
            Refusal.NotPositiveForShare =>
                "a share of an allowance in percent needs baselines above zero",
            Refusal.NotPositiveForBaselineWeights =>
                "weights by the baseline need baselines above zero",
            Refusal.NotPositiveForWeights =>
                "weights in proportion to the level need values above zero",
            Refusal.NotPositiveForLevelWeights =>
                "weights in proportion to the level need levels above zero, measured and estimated",
            Refusal.TooFewToReachConfidence =>
                "even the interval from the smallest to the largest value has less than the wanted confidence",
            Refusal.TooFewSlopes => "so few slopes give no interval at this confidence level",
            Refusal.TooManyAveragesToRank => "there are too many averages to count their ranks",
            Refusal.DrawnToOneSide =>
                "the values of the drawn samples lie too far to one side of the estimate for a corrected interval",
            Refusal.NoDirection =>
                "the values do not vary together, so the fitted line is vertical or has no direction",
            Refusal.VerticalSlope => "the slope or an end of its interval is vertical",
            Refusal.DrawnWithoutLine => "samples drawn from these pairs keep giving no line",
            Refusal.WeightsDidNotSettle => "the weights and the line did not settle",
            Refusal.VariancesDidNotSettle => "the search for the variances did not settle",
            Refusal.NoPositiveAssociation => string.Create(
                CultureInfo.InvariantCulture,
                $"the method presumes that y rises with x; the interval of Kendall's tau-b, {why.Association?.Lower:F3} to {why.Association?.Upper:F3}, does not show that it does"
            ),
            Refusal.LimitNotOnScale =>
                "the limit has no part that can be expressed on the scale of the criterion",
            Refusal.LevelOutsideCoverage => "the baselines do not cover the level",
            Refusal.NoLimit => "no criterion holds a change to a limit",
            Refusal.SpreadTooWide =>
                "with the spread found a criterion would not be true even without any mean change",
        };
}
