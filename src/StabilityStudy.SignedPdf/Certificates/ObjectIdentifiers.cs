namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Identifiers of what stands in signatures and certificates.</summary>
internal static class ObjectIdentifiers
{
    /// <summary>Plain content (RFC 5652, section 4).</summary>
    public const string Data = "1.2.840.113549.1.7.1";

    /// <summary>A signature container (RFC 5652, section 5).</summary>
    public const string SignedData = "1.2.840.113549.1.7.2";

    /// <summary>Signed attribute: kind of content (RFC 5652, section 11.1).</summary>
    public const string ContentType = "1.2.840.113549.1.9.3";

    /// <summary>Signed attribute: digest of the content (RFC 5652, section 11.2).</summary>
    public const string MessageDigest = "1.2.840.113549.1.9.4";

    /// <summary>Signed attribute: which certificate signed (RFC 5035, section 3).</summary>
    public const string SigningCertificateV2 = "1.2.840.113549.1.9.16.2.47";

    /// <summary>Unsigned attribute: time stamp of the signature (RFC 3161, appendix A).</summary>
    public const string TimeStampToken = "1.2.840.113549.1.9.16.2.14";

    /// <summary>Content of a time stamp (RFC 3161, section 2.4.2).</summary>
    public const string TimeStampInformation = "1.2.840.113549.1.9.16.1.4";

    /// <summary>Extended key usage: time stamping (RFC 3161, section 2.3).</summary>
    public const string TimeStamping = "1.3.6.1.5.5.7.3.8";

    /// <summary>Extended key usage: signing documents (RFC 9336, section 3.1).</summary>
    public const string DocumentSigning = "1.3.6.1.5.5.7.3.36";

    /// <summary>Extended key usage: signing documents, as Adobe named it before there was a standard.</summary>
    public const string AdobeDocumentSigning = "1.2.840.113583.1.1.5";

    /// <summary>Extended key usage: signing documents, as Microsoft named it before there was a standard.</summary>
    public const string MicrosoftDocumentSigning = "1.3.6.1.4.1.311.10.3.12";

    /// <summary>Extended key usage: mail (RFC 5280, section 4.2.1.12).</summary>
    public const string EmailProtection = "1.3.6.1.5.5.7.3.4";

    /// <summary>Extended key usage: a person logs in (RFC 5280, section 4.2.1.12).</summary>
    public const string ClientAuthentication = "1.3.6.1.5.5.7.3.2";

    public const string Sha256 = "2.16.840.1.101.3.4.2.1";
    public const string Sha384 = "2.16.840.1.101.3.4.2.2";
    public const string Sha512 = "2.16.840.1.101.3.4.2.3";
    public const string Rsa = "1.2.840.113549.1.1.1";
    public const string RsaPss = "1.2.840.113549.1.1.10";
    public const string RsaWithSha256 = "1.2.840.113549.1.1.11";
    public const string RsaWithSha384 = "1.2.840.113549.1.1.12";
    public const string RsaWithSha512 = "1.2.840.113549.1.1.13";
    public const string EcdsaWithSha256 = "1.2.840.10045.4.3.2";
    public const string EcdsaWithSha384 = "1.2.840.10045.4.3.3";
    public const string EcdsaWithSha512 = "1.2.840.10045.4.3.4";
    public const string EllipticCurve = "1.2.840.10045.2.1";
}
