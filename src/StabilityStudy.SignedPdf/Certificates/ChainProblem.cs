namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Why a chain of certificates is not trusted.</summary>
public enum ChainProblem
{
    /// <summary>The platform refuses the certificate for a reason that has no member here.</summary>
    Other,

    /// <summary>Neither the trust store nor the file has the certificate of its issuer.</summary>
    IssuerMissing,

    /// <summary>The chain ends with this certificate, which issued itself and is not in the trust store.</summary>
    NotInTrustStore,

    /// <summary>It was not valid at the time in question.</summary>
    NotValidThen,

    /// <summary>Its issuer did not sign it.</summary>
    NotSignedByIssuer,

    /// <summary>It is meant for other uses.</summary>
    ForOtherUses,

    /// <summary>An issuer was not entitled to issue it: it is no authority, or may not issue for such names or under such policies.</summary>
    IssuerNotEntitled,

    /// <summary>It holds something that must be understood and is not known here, or is malformed.</summary>
    NotUnderstood,

    /// <summary>It was revoked.</summary>
    Revoked,

    /// <summary>Whether it was revoked is not known.</summary>
    RevocationUnknown,

    /// <summary>Somebody has declared it not to be trusted.</summary>
    Distrusted,

    /// <summary>Its key is too short, or of a kind that is not accepted.</summary>
    KeyNotStrong,

    /// <summary>Its issuer signed it by a method that is no longer safe, as with MD5 or SHA-1, or not known here.</summary>
    SignatureNotStrong,
}
