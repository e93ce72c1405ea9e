namespace StabilityStudy.Core.Criteria.Reclassification;

/// <summary>Which changes of side count. The zero member counts most.</summary>
public enum SideDirection
{
    /// <summary>Either way.</summary>
    Both,

    /// <summary>From a level or above it to below.</summary>
    Down,

    /// <summary>From below a level to it or above.</summary>
    Up,
}
