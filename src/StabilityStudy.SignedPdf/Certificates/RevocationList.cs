using System.Collections.Frozen;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>A list of certificates that their issuer has revoked (RFC 5280, section 5), read from a file.</summary>
public sealed class RevocationList
{
    private readonly byte[] _issuer;
    private readonly byte[] _signed;
    private readonly byte[] _signature;
    private readonly SignatureMethod? _method;
    private readonly FrozenDictionary<string, DateTimeOffset> _revoked;

    internal RevocationList(
        RevocationListParser.Content content,
        ReadOnlyMemory<byte> signed,
        SignatureMethod? method,
        byte[] signature
    )
    {
        _issuer = content.Issuer;
        Issuer = new X500DistinguishedName(content.Issuer).Name;
        ThisUpdate = content.ThisUpdate;
        NextUpdate = content.NextUpdate;
        _revoked = content.Revoked;
        _signed = signed.ToArray();
        _method = method;
        _signature = signature;
    }

    /// <summary>The whole list in DER.</summary>
    internal ReadOnlyMemory<byte> Encoded { get; init; }

    /// <summary>Who made the list, as it says (RFC 4514 text).</summary>
    public string Issuer { get; }

    /// <summary>When the list was made.</summary>
    public DateTimeOffset ThisUpdate { get; }

    /// <summary>When the next list is due; null when the list does not say.</summary>
    public DateTimeOffset? NextUpdate { get; }

    /// <summary>Reads a list in DER or PEM; or why it cannot be used: damaged, or one of the kinds that hold only a part or changes.</summary>
    public static PdfResult<RevocationList> Read(ReadOnlyMemory<byte> file) =>
        !TrustFile.Read(file).TryGet(out var read, out var failure) ? new(failure)
        : read.RevocationLists is [var list] ? new(list)
        : new(new PdfFailure(null, "This is no list of revoked certificates."));

    /// <summary>When the certificate was revoked; null when it is not in the list.</summary>
    internal DateTimeOffset? RevocationOf(X509Certificate2 certificate) =>
        _revoked.TryGetValue(Key(certificate.SerialNumber), out var date) ? date : null;

    /// <summary>A serial number without the zeros before it, which one side may write and the other not.</summary>
    internal static string Key(string serialNumber) => serialNumber.TrimStart('0');

    /// <summary>Why the list is none that the issuer has made and signed; null when it is.</summary>
    internal RevocationListProblem? ProblemAgainst(X509Certificate2 issuer)
    {
        if (!_issuer.AsSpan().SequenceEqual(issuer.SubjectName.RawData))
        {
            return RevocationListProblem.OfAnotherIssuer;
        }

        if (_method is not { } method || !CryptographicPolicy.Allows(issuer.PublicKey))
        {
            return RevocationListProblem.SignatureNotStrong;
        }

        var usage = issuer.Extensions.OfType<X509KeyUsageExtension>().FirstOrDefault();
        return
            usage?.KeyUsages.HasFlag(X509KeyUsageFlags.CrlSign) != false
            && method.Verifies(issuer.PublicKey, _signed, _signature)
            ? null
            : RevocationListProblem.NotSignedByIssuer;
    }
}
