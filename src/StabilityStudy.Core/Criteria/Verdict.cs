namespace StabilityStudy.Core.Criteria;

/// <summary>What a criterion says about a cell. The zero member is the safe answer.</summary>
public enum Verdict
{
    /// <summary>The data do not decide.</summary>
    Inconclusive,

    /// <summary>The data show that the criterion does not hold.</summary>
    NotMet,

    /// <summary>The data show that the criterion holds.</summary>
    Met,
}
