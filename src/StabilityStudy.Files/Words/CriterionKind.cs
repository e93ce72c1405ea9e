namespace StabilityStudy.Files.Words;

/// <summary>The kinds of criterion that a protocol can state.</summary>
internal enum CriterionKind
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
