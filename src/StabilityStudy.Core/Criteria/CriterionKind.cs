namespace StabilityStudy.Core.Criteria;

/// <summary>The kinds of criterion that a protocol can state. What differs between kinds is a member of <see cref="Criterion"/> or <see cref="CriterionResult"/>, or a switch over this enum that names every kind.</summary>
public enum CriterionKind
{
    /// <summary>The mean change stays within the allowable bias.</summary>
    Bias,

    /// <summary>Enough single specimens stay within the allowable difference.</summary>
    Individual,

    /// <summary>The change predicted at decision levels stays within the limit.</summary>
    DecisionLevel,

    /// <summary>Few enough specimens change the side of a decision level.</summary>
    Reclassification,

    /// <summary>Enough specimens keep their class.</summary>
    Classification,

    /// <summary>The change that the drift predicts stays within the limit.</summary>
    Drift,
}
