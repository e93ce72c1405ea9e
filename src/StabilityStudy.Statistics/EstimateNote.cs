namespace StabilityStudy.Statistics;

/// <summary>A remark that a reader of a computed value must see; <see cref="AssumptionCode.Of(EstimateNote)"/> gives its code, the sentence is the report's.</summary>
public enum EstimateNote
{
    /// <summary>All values are the same: the interval has no width and says nothing about the spread that rounding hides.</summary>
    SameValues,

    /// <summary>All values share one cluster, so the interval does not know the error that they share.</summary>
    OneCluster,

    /// <summary>The ranks of the interval come from the normal approximation of the signed-rank distribution.</summary>
    ApproximateRank,

    /// <summary>The p value comes from the normal approximation of the signed-rank distribution.</summary>
    ApproximatePValue,

    /// <summary>With fewer than 25 values the significance level of the outlier search is approximate.</summary>
    ApproximateOutlierLevel,

    /// <summary>Many results are the same number, or lie on one line exactly: the interval looks narrower than the data allow.</summary>
    HeavyTies,

    /// <summary>Specimens without a delay other than that of their baseline have no slope and are left out.</summary>
    NoDelayBeyondBaseline,
}
