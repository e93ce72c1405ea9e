using System.Collections.Frozen;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>A list of certificates that their issuer has revoked (RFC 5280, section 5), read from a file.</summary>
internal sealed class RevocationList : RevocationStatement
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
        _revoked = content.Revoked;
        _signed = signed.ToArray();
        _method = method;
        _signature = signature;
    }

    /// <summary>Reads a list in DER or PEM; or why it cannot be used: damaged, or one of the kinds that hold only a part or changes.</summary>
    public static PdfResult<RevocationList> Read(ReadOnlyMemory<byte> file) =>
        !TrustFile.Read(file).TryGet(out var read, out var failure) ? new(failure)
        : read.RevocationLists is [RevocationList list] ? new(list)
        : new(new PdfFailure(null, "This is no list of revoked certificates."));

    /// <inheritdoc/>
    internal override DateTimeOffset? RevocationOf(X509Certificate2 certificate) =>
        _revoked.TryGetValue(Key(certificate.SerialNumber), out var date) ? date : null;

    /// <inheritdoc/>
    internal override RevocationListProblem? ProblemAgainst(
        X509Certificate2 certificate,
        X509Certificate2 issuer
    )
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
