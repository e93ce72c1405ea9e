namespace StabilityStudy.Statistics.Agreement;

/// <summary>Whether a pair differs by no more than the allowance.</summary>
public enum AllowanceVerdict
{
    /// <summary>The pair differs by more.</summary>
    Outside,

    /// <summary>The pair differs by the allowance or less.</summary>
    Within,
}
