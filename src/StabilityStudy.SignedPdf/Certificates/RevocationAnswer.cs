using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>An issuer's answer about a single certificate (OCSP, RFC 6960), read from a file.</summary>
public sealed class RevocationAnswer : RevocationStatement
{
    // Extended key usage of a key that answers for the issuer, and the extension that says not to ask about that key (RFC 6960, 4.2.2.2).
    private const string AnswersForIssuer = "1.3.6.1.5.5.7.3.9";
    private const string NotAskedAbout = "1.3.6.1.5.5.7.48.1.5";

    private readonly RevocationAnswerParser.Response _response;
    private readonly RevocationAnswerParser.Single _about;

    internal RevocationAnswer(
        RevocationAnswerParser.Response response,
        RevocationAnswerParser.Single about
    ) => (_response, _about) = (response, about);

    /// <summary>Serial number of the certificate that it is about, in hexadecimal digits.</summary>
    public string SerialNumber => _about.SerialNumber;

    /// <inheritdoc/>
    internal override DateTimeOffset? RevocationOf(X509Certificate2 certificate) =>
        Key(certificate.SerialNumber) == Key(SerialNumber) ? _about.RevokedAt : null;

    /// <inheritdoc/>
    internal override RevocationListProblem? ProblemAgainst(
        X509Certificate2 certificate,
        X509Certificate2 issuer
    ) =>
        !IsAbout(certificate, issuer) ? RevocationListProblem.OfAnotherIssuer
        : _response.Method is not { } method || !CryptographicPolicy.Allows(issuer.PublicKey)
            ? RevocationListProblem.SignatureNotStrong
        : !Signers(issuer)
            .Any(signer =>
                method.Verifies(signer.PublicKey, _response.Signed.Span, _response.Signature.Span)
            )
            ? RevocationListProblem.NotSignedByIssuer
        : !_about.IsKnown ? RevocationListProblem.NotKnownToIssuer
        : null;

    // The hash may be SHA-1: it names the issuer and signs nothing.
    private bool IsAbout(X509Certificate2 certificate, X509Certificate2 issuer) =>
        Key(certificate.SerialNumber) == Key(SerialNumber)
        && _about.IssuerNameHash.Span.SequenceEqual(
            CryptographicOperations.HashData(_about.Hash, issuer.SubjectName.RawData)
        )
        && _about.IssuerKeyHash.Span.SequenceEqual(
            CryptographicOperations.HashData(_about.Hash, KeyOf(issuer))
        );

    /// <summary>Who may have signed it: the issuer, or somebody to whom the issuer gave a certificate for this.</summary>
    private IEnumerable<X509Certificate2> Signers(X509Certificate2 issuer) =>
        _response
            .Certificates.Where(signer =>
                signer.IssuerName.RawData.AsSpan().SequenceEqual(issuer.SubjectName.RawData)
                && IsIssuedBy(signer, issuer)
                && CryptographicPolicy.Allows(signer.PublicKey)
                && signer
                    .Extensions.OfType<X509EnhancedKeyUsageExtension>()
                    .Any(uses =>
                        uses.EnhancedKeyUsages.Cast<Oid>().Any(use => use.Value == AnswersForIssuer)
                    )
                && signer.Extensions.Any(extension => extension.Oid?.Value == NotAskedAbout)
                && CertificateFacts.Of(signer) is var facts
                && facts.NotBefore <= ThisUpdate
                && facts.NotAfter >= ThisUpdate
            )
            .Prepend(issuer)
            .Where(Answers);

    private bool Answers(X509Certificate2 signer) =>
        _response.ResponderName is { } name
            ? name.Span.SequenceEqual(signer.SubjectName.RawData)
            : _response.ResponderKeyHash.Span.SequenceEqual(
                CryptographicOperations.HashData(HashAlgorithmName.SHA1, KeyOf(signer))
            );

    private static bool IsIssuedBy(X509Certificate2 certificate, X509Certificate2 issuer)
    {
        var whole = new System.Formats.Asn1.AsnReader(
            certificate.RawDataMemory,
            System.Formats.Asn1.AsnEncodingRules.DER
        ).ReadSequence();
        var signed = whole.ReadEncodedValue();
        whole.ReadEncodedValue();
        return SignatureMethod.Of(certificate) is { } method
            && method.Verifies(issuer.PublicKey, signed.Span, whole.ReadBitString(out _));
    }

    private static byte[] KeyOf(X509Certificate2 certificate) =>
        certificate.PublicKey.EncodedKeyValue.RawData;
}
