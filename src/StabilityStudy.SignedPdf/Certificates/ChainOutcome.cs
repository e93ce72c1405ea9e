namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Whether a certificate leads to somebody trusted.</summary>
public enum ChainOutcome
{
    /// <summary>No trust store was given: nothing is known, which is not the same as valid.</summary>
    NotChecked,

    /// <summary>It does not, or a certificate on the way is not valid for this or at that time.</summary>
    NotTrusted,

    /// <summary>It does.</summary>
    Trusted,
}
