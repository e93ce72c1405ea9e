namespace StabilityStudy.Core.Criteria;

/// <summary>How the change from baseline x to delayed y is expressed.</summary>
public enum ChangeScale
{
    /// <summary>100·(y − x)/x.</summary>
    Percent,

    /// <summary>y − x in the analyte's unit.</summary>
    Absolute,

    /// <summary>(y − x)/A(x), the share of the allowance used.</summary>
    Share,

    /// <summary>100·ln(y/x).</summary>
    LogRatio,
}
