namespace StabilityStudy.Core.Conclusions;

/// <summary>What a cell concludes. The zero member is the safe answer.</summary>
public enum Conclusion
{
    /// <summary>The data do not decide.</summary>
    Inconclusive,

    /// <summary>No criterion applies, or what the criteria need is missing.</summary>
    NotAssessed,

    /// <summary>An earlier time point was not supported, so this one is not concluded on.</summary>
    NotReached,

    /// <summary>At least one required criterion is not met.</summary>
    NotSupported,

    /// <summary>Every required criterion is met.</summary>
    Supported,
}
