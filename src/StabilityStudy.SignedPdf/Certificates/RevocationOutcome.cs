namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>What the given lists say about a chain of certificates.</summary>
public enum RevocationOutcome
{
    /// <summary>For at least one certificate below the trusted one no given list shows that it was not revoked, or a list in the name of an issuer is not right.</summary>
    NotChecked,

    /// <summary>A certificate of the chain was revoked.</summary>
    Revoked,

    /// <summary>None was.</summary>
    NotRevoked,

    /// <summary>The certificate is itself the trusted one: no issuer could revoke it.</summary>
    NotNeeded,
}
