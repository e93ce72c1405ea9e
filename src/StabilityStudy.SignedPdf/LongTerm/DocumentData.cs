using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.LongTerm;

/// <summary>The validation data of a document, read.</summary>
/// <param name="Certificates">Certificates that may lie on the way to somebody trusted.</param>
/// <param name="RevocationLists">Lists of revoked certificates.</param>
/// <param name="IsWhole">Whether everything that is there could be read.</param>
internal sealed record DocumentData(
    ImmutableArray<X509Certificate2> Certificates,
    ImmutableArray<RevocationList> RevocationLists,
    bool IsWhole
)
{
    public static DocumentData None { get; } = new([], [], true);

    public static DocumentData Of(ValidationData data)
    {
        var certificates = data.Certificates.Select(Certificate).ToList();
        var lists = data
            .RevocationLists.Select(static list =>
                RevocationList.Read(list).TryGet(out var read, out _)
                && read.Encoded.Span.SequenceEqual(list.Span)
                    ? read
                    : null
            )
            .ToList();
        return new(
            [.. certificates.OfType<X509Certificate2>()],
            [.. lists.OfType<RevocationList>()],
            !certificates.Contains(null) && !lists.Contains(null)
        );
    }

    private static X509Certificate2? Certificate(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            var read = X509CertificateLoader.LoadCertificate(bytes.Span);
            return read.RawDataMemory.Span.SequenceEqual(bytes.Span) ? read : null;
        }
        catch (CryptographicException)
        {
            // The library's way to say that this is no certificate.
            return null;
        }
    }
}
