namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Why nothing shows that a certificate was not revoked.</summary>
public enum RevocationListProblem
{
    /// <summary>There is no list at all.</summary>
    Missing,

    /// <summary>A list is of another issuer than the certificate.</summary>
    OfAnotherIssuer,

    /// <summary>A list in the name of the issuer is not signed by it, or by a key of the issuer that may not sign lists.</summary>
    NotSignedByIssuer,

    /// <summary>A list is signed by a method that is no longer safe, as with MD5 or SHA-1, or not known here.</summary>
    SignatureNotStrong,

    /// <summary>A list was made before the time in question.</summary>
    MadeBefore,

    /// <summary>The next list was due before the verification, and nothing but a claim dates the signature.</summary>
    OutOfDate,

    /// <summary>A list was made after the certificate expired, when issuers leave out what has expired.</summary>
    MadeAfterExpiry,

    /// <summary>A list is dated after the verification.</summary>
    MadeInFuture,

    /// <summary>An answer says that the issuer does not know the certificate.</summary>
    NotKnownToIssuer,
}
