namespace StabilityStudy.SignedPdf.Verification;

/// <summary>What is wrong with one signature.</summary>
public enum SignatureProblem
{
    /// <summary>The dictionary is of another kind than ETSI.CAdES.detached, or lacks its entries.</summary>
    DictionaryNotSupported,

    /// <summary>The byte range is not four whole numbers within the file.</summary>
    ByteRangeMalformed,

    /// <summary>The byte range does not begin at the start of the file.</summary>
    ByteRangeStart,

    /// <summary>What the byte range leaves out is not exactly the string of this signature.</summary>
    ByteRangeGap,

    /// <summary>The byte range does not end where a revision ends.</summary>
    ByteRangeEnd,

    /// <summary>Another signature covers the same revision; this one was not looked at further.</summary>
    RevisionSignedByAnother,

    /// <summary>The document was prepared for this signature, which is not in its place yet.</summary>
    NotSignedYet,

    /// <summary>There are other bytes than zeros after the signature in its room.</summary>
    PaddingNotZero,

    /// <summary>The signature has another form than a detached CMS signature by one signer in DER.</summary>
    ContainerMalformed,

    /// <summary>The signature names its signer by a key identifier, which signatures here do not do; it was not looked at further.</summary>
    SignerNamedByKey,

    /// <summary>A digest or signature algorithm is not known or not strong enough.</summary>
    AlgorithmNotSupported,

    /// <summary>The key of the signer's certificate is too short, or of a kind that is not accepted.</summary>
    KeyNotStrong,

    /// <summary>The issuer signed the signer's certificate by a method that is not known or not strong enough.</summary>
    CertificateNotStrong,

    /// <summary>The document is not the one that was signed.</summary>
    DigestMismatch,

    /// <summary>The signature was not made with the key of the certificate.</summary>
    SignatureMismatch,

    /// <summary>The signer's certificate is not in the signature.</summary>
    CertificateMissing,

    /// <summary>The signed attribute that names the signing certificate is missing.</summary>
    SigningCertificateMissing,

    /// <summary>The signed attribute names another certificate.</summary>
    SigningCertificateMismatch,

    /// <summary>The date of signing is missing or has another form.</summary>
    SigningTimeMissing,

    /// <summary>The certificate was not valid yet at the time of signing.</summary>
    CertificateNotYetValid,

    /// <summary>The certificate was no longer valid at the time of signing.</summary>
    CertificateExpired,

    /// <summary>The certificate's key usage has neither digital signature nor content commitment, or its extended key usage is for other things than documents.</summary>
    KeyUsageLacksSigning,

    /// <summary>The time stamp is damaged, or of another signature, or not by a certificate for time stamping.</summary>
    TimeStampInvalid,

    /// <summary>A digest, signature algorithm or key of the time stamp is not known or not strong enough.</summary>
    TimeStampNotStrong,

    /// <summary>The date of signing, or a time stamp that is trusted, lies after the verification.</summary>
    DatedInFuture,

    /// <summary>The time stamp proves a time before the date that the signature claims.</summary>
    TimeStampBeforeSigning,
}
