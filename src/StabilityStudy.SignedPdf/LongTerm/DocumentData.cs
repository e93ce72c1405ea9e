using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using StabilityStudy.SignedPdf.Certificates;

namespace StabilityStudy.SignedPdf.LongTerm;

/// <summary>The validation data of a document, read.</summary>
/// <param name="Certificates">Certificates that may lie on the way to somebody trusted.</param>
/// <param name="RevocationLists">Lists of revoked certificates, and answers about single ones.</param>
/// <param name="IsWhole">Whether everything that is there could be read.</param>
internal sealed record DocumentData(
    ImmutableArray<X509Certificate2> Certificates,
    ImmutableArray<RevocationStatement> RevocationLists,
    bool IsWhole
)
{
    public static DocumentData None { get; } = new([], [], true);

    public static DocumentData Of(ValidationData data)
    {
        var certificates = data.Certificates.Select(Certificate).ToList();
        var lists = data.RevocationLists.Select(List).ToList();
        var answers = data.Answers.Select(Answers).ToList();
        return new(
            [.. certificates.OfType<X509Certificate2>()],
            [.. lists.OfType<RevocationStatement>(), .. answers.SelectMany(static found => found)],
            !certificates.Contains(null)
                && !lists.Contains(null)
                && answers.TrueForAll(static found => !found.IsEmpty)
        );
    }

    private static RevocationList? List(ReadOnlyMemory<byte> bytes) =>
        RevocationList.Read(bytes).TryGet(out var read, out _)
        && read.Encoded.Span.SequenceEqual(bytes.Span)
            ? read
            : null;

    private static ImmutableArray<RevocationAnswer> Answers(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            return RevocationAnswerParser.Parse(bytes).TryGet(out var answers, out _)
                ? answers
                : [];
        }
        catch (Exception error) when (error is CryptographicException or AsnContentException)
        {
            // The library's only ways to say that bytes have another form.
            return [];
        }
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
