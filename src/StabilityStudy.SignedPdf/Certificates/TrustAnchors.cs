using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>The certificates somebody has decided to trust. Only those that issued themselves end a chain; others help to build one.</summary>
public sealed class TrustAnchors
{
    private TrustAnchors(ImmutableArray<X509Certificate2> certificates) =>
        Certificates = certificates;

    /// <summary>How many certificates there are.</summary>
    public int Count => Certificates.Length;

    internal ImmutableArray<X509Certificate2> Certificates { get; }

    /// <summary>Reads trust files; or why one cannot be used.</summary>
    /// <param name="files">Each PEM with any number of certificates, or one certificate in DER.</param>
    public static PdfResult<TrustAnchors> Read(ImmutableArray<ReadOnlyMemory<byte>> files)
    {
        var certificates = ImmutableArray.CreateBuilder<X509Certificate2>();
        foreach (var file in files)
        {
            var before = certificates.Count;
            try
            {
                AddFile(certificates, file);
            }
            catch (CryptographicException)
            {
                return new(
                    new PdfFailure(null, "A trust file holds something else than certificates.")
                );
            }

            if (certificates.Count == before)
            {
                return new(new PdfFailure(null, "A trust file holds no certificate."));
            }
        }

        return new(new TrustAnchors(certificates.DrainToImmutable()));
    }

    private static void AddFile(
        ImmutableArray<X509Certificate2>.Builder certificates,
        ReadOnlyMemory<byte> file
    )
    {
        if (!PemKeyFile.Looks(file.Span))
        {
            certificates.Add(X509CertificateLoader.LoadCertificate(file.Span));
            return;
        }

        var rest = Encoding.Latin1.GetString(file.Span).AsSpan();
        while (PemEncoding.TryFind(rest, out var fields))
        {
            if (rest[fields.Label] is "CERTIFICATE")
            {
                var bytes = Convert.FromBase64String(rest[fields.Base64Data].ToString());
                certificates.Add(X509CertificateLoader.LoadCertificate(bytes));
            }

            rest = rest[fields.Location.End..];
        }
    }
}
