namespace StabilityStudy.SignedPdf.Verification;

/// <summary>What happened to an object.</summary>
public enum RevisionChange
{
    /// <summary>It holds something else than before.</summary>
    Changed,

    /// <summary>It was not there before.</summary>
    Added,

    /// <summary>It is gone.</summary>
    Removed,
}
