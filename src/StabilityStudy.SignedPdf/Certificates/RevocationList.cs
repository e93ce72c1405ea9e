using System.Collections.Frozen;
using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>A list of certificates that their issuer has revoked (RFC 5280, section 5), read from a file.</summary>
public sealed class RevocationList
{
    private readonly byte[] _issuer;
    private readonly byte[] _signed;
    private readonly byte[] _signature;
    private readonly string _algorithm;
    private readonly FrozenDictionary<string, DateTimeOffset> _revoked;

    internal RevocationList(
        RevocationListParser.Content content,
        ReadOnlyMemory<byte> signed,
        string algorithm,
        byte[] signature
    )
    {
        _issuer = content.Issuer;
        ThisUpdate = content.ThisUpdate;
        NextUpdate = content.NextUpdate;
        _revoked = content.Revoked;
        _signed = signed.ToArray();
        _algorithm = algorithm;
        _signature = signature;
    }

    /// <summary>When the list was made.</summary>
    public DateTimeOffset ThisUpdate { get; }

    /// <summary>When the next list is due; null when the list does not say.</summary>
    public DateTimeOffset? NextUpdate { get; }

    /// <summary>Reads a list in DER or PEM; or why it cannot be used: damaged, or one of the kinds that hold only a part or changes.</summary>
    public static PdfResult<RevocationList> Read(ReadOnlyMemory<byte> file)
    {
        try
        {
            return RevocationListParser.Parse(file);
        }
        catch (AsnContentException)
        {
            return new(new PdfFailure(null, "This is no list of revoked certificates."));
        }
    }

    /// <summary>When the certificate was revoked; null when it is not in the list.</summary>
    internal DateTimeOffset? RevocationOf(X509Certificate2 certificate) =>
        _revoked.TryGetValue(Key(certificate.SerialNumber), out var date) ? date : null;

    /// <summary>A serial number without the zeros before it, which one side may write and the other not.</summary>
    internal static string Key(string serialNumber) => serialNumber.TrimStart('0');

    /// <summary>Whether the issuer has made and signed this list.</summary>
    internal bool IsBy(X509Certificate2 issuer)
    {
        if (!_issuer.AsSpan().SequenceEqual(issuer.SubjectName.RawData))
        {
            return false;
        }

        var usage = issuer.Extensions.OfType<X509KeyUsageExtension>().FirstOrDefault();
        if (usage is not null && !usage.KeyUsages.HasFlag(X509KeyUsageFlags.CrlSign))
        {
            return false;
        }

        using var rsa = issuer.GetRSAPublicKey();
        using var curve = issuer.GetECDsaPublicKey();
        return _algorithm switch
        {
            "1.2.840.113549.1.1.11" => ByRsa(rsa, HashAlgorithmName.SHA256),
            "1.2.840.113549.1.1.12" => ByRsa(rsa, HashAlgorithmName.SHA384),
            "1.2.840.113549.1.1.13" => ByRsa(rsa, HashAlgorithmName.SHA512),
            ObjectIdentifiers.EcdsaWithSha256 => ByCurve(curve, HashAlgorithmName.SHA256),
            ObjectIdentifiers.EcdsaWithSha384 => ByCurve(curve, HashAlgorithmName.SHA384),
            ObjectIdentifiers.EcdsaWithSha512 => ByCurve(curve, HashAlgorithmName.SHA512),
            _ => false,
        };
    }

    private bool ByRsa(RSA? key, HashAlgorithmName hash) =>
        key is not null && key.VerifyData(_signed, _signature, hash, RSASignaturePadding.Pkcs1);

    private bool ByCurve(ECDsa? key, HashAlgorithmName hash) =>
        key is not null
        && key.VerifyData(_signed, _signature, hash, DSASignatureFormat.Rfc3279DerSequence);
}
