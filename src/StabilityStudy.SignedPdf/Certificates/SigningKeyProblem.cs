namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Why a key cannot be used to sign.</summary>
public enum SigningKeyProblem
{
    /// <summary>The file is neither PKCS#12 nor PEM, or is damaged.</summary>
    Unreadable,

    /// <summary>The key is protected and no passphrase was given.</summary>
    PassphraseNeeded,

    /// <summary>The passphrase does not open the key.</summary>
    WrongPassphrase,

    /// <summary>There is no certificate.</summary>
    NoCertificate,

    /// <summary>There is no private key.</summary>
    NoPrivateKey,

    /// <summary>The private key belongs to none of the certificates.</summary>
    KeyDoesNotMatch,

    /// <summary>The key is neither RSA of at least 2,048 bits nor on the curves P-256, P-384 and P-521, or its protection is not known.</summary>
    KeyNotSupported,

    /// <summary>The certificate becomes valid only later.</summary>
    NotYetValid,

    /// <summary>The certificate is no longer valid.</summary>
    Expired,

    /// <summary>The certificate's key usage has neither digital signature nor content commitment.</summary>
    KeyUsageLacksSigning,
}
