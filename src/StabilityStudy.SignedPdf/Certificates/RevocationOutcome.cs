namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>What the given lists say about a chain of certificates.</summary>
public enum RevocationOutcome
{
    /// <summary>For at least one certificate below the trusted one there is no list of its issuer that was made at or after the time in question and is signed by it.</summary>
    NotChecked,

    /// <summary>A certificate of the chain was revoked.</summary>
    Revoked,

    /// <summary>None was.</summary>
    NotRevoked,
}
