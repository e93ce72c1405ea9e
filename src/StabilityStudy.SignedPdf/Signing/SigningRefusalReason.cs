namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Why a document was not signed.</summary>
public enum SigningRefusalReason
{
    /// <summary>The document cannot be read.</summary>
    DocumentUnreadable,

    /// <summary>The document has a structure that signing does not handle: no form, or a cross-reference stream.</summary>
    DocumentNotPrepared,

    /// <summary>There is no signature field of that name.</summary>
    FieldUnknown,

    /// <summary>The field holds a signature already.</summary>
    FieldAlreadySigned,

    /// <summary>An earlier signature does not verify, or something else than signing was done to the document.</summary>
    EarlierSignatureBroken,

    /// <summary>The certificate becomes valid only later.</summary>
    CertificateNotYetValid,

    /// <summary>The certificate is no longer valid.</summary>
    CertificateExpired,

    /// <summary>The certificate's key usage has neither digital signature nor content commitment.</summary>
    KeyUsageLacksSigning,

    /// <summary>The stamp's font cannot draw a character of a line.</summary>
    CharacterNotInFont,

    /// <summary>The time stamp authority gave no answer.</summary>
    TimeStampUnavailable,

    /// <summary>The time stamp authority's answer is no time stamp of this signature.</summary>
    TimeStampInvalid,

    /// <summary>The signature with its certificates is larger than the room for it.</summary>
    SignatureTooLarge,

    /// <summary>The finished document did not pass the verification of this library.</summary>
    ResultDoesNotVerify,
}
