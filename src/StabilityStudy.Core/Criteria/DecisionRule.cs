namespace StabilityStudy.Core.Criteria;

/// <summary>What is held to a limit. The zero member is the safe one.</summary>
public enum DecisionRule
{
    /// <summary>A confidence interval or bound: the chance of a false claim is controlled.</summary>
    Confidence,

    /// <summary>The estimate alone: no error control, and the report says so.</summary>
    PointOnly,
}
