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
}
