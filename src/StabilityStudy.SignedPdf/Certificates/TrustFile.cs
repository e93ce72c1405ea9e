using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>What one file says about whom to trust: certificates, lists of revoked ones, or both. Its content tells which, not its name.</summary>
public sealed class TrustFile
{
    private TrustFile(
        ImmutableArray<X509Certificate2> certificates,
        ImmutableArray<RevocationStatement> lists
    )
    {
        Certificates = certificates;
        RevocationLists = lists;
    }

    /// <summary>The lists of revoked certificates in the file, and the answers about single ones.</summary>
    public ImmutableArray<RevocationStatement> RevocationLists { get; }

    /// <summary>Whether there is a certificate in the file.</summary>
    public bool HoldsCertificate => !Certificates.IsEmpty;

    internal ImmutableArray<X509Certificate2> Certificates { get; }

    /// <summary>Reads a file; or why it cannot be used.</summary>
    /// <param name="file">PEM with any number of certificates and lists, or one of them, or an OCSP response, in DER.</param>
    public static PdfResult<TrustFile> Read(ReadOnlyMemory<byte> file)
    {
        var certificates = ImmutableArray.CreateBuilder<X509Certificate2>();
        var lists = ImmutableArray.CreateBuilder<RevocationStatement>();
        try
        {
            if (
                (
                    PemKeyFile.Looks(file.Span)
                        ? AddPem(certificates, lists, file)
                        : AddDer(certificates, lists, file)
                ) is
                { } failure
            )
            {
                return new(failure);
            }
        }
        catch (Exception exception)
            when (exception is CryptographicException or AsnContentException)
        {
            // The library's only ways to say that bytes have another form.
            return new(Neither);
        }

        return certificates.Count + lists.Count == 0
            ? new(Neither)
            : new(new TrustFile(certificates.DrainToImmutable(), lists.DrainToImmutable()));
    }

    private static PdfFailure Neither { get; } =
        new(null, "This is neither a certificate nor a list of revoked certificates.");

    private static PdfFailure? AddPem(
        ImmutableArray<X509Certificate2>.Builder certificates,
        ImmutableArray<RevocationStatement>.Builder lists,
        ReadOnlyMemory<byte> file
    )
    {
        var rest = Encoding.Latin1.GetString(file.Span).AsSpan();
        while (PemEncoding.TryFind(rest, out var fields))
        {
            var bytes = Convert.FromBase64String(rest[fields.Base64Data].ToString());
            switch (rest[fields.Label])
            {
                case "CERTIFICATE":
                    certificates.Add(X509CertificateLoader.LoadCertificate(bytes));
                    break;
                case "X509 CRL":
                    if (AddList(lists, bytes) is { } failure)
                    {
                        return failure;
                    }

                    break;
                default:
                    break;
            }

            rest = rest[fields.Location.End..];
        }

        return null;
    }

    private static PdfFailure? AddDer(
        ImmutableArray<X509Certificate2>.Builder certificates,
        ImmutableArray<RevocationStatement>.Builder lists,
        ReadOnlyMemory<byte> file
    )
    {
        try
        {
            certificates.Add(X509CertificateLoader.LoadCertificate(file.Span));
            return null;
        }
        catch (CryptographicException)
        {
            // The library's only way to say that this is no certificate.
            return IsAnswer(file) ? AddAnswers(lists, file) : AddList(lists, file);
        }
    }

    /// <summary>An answer begins with its status (RFC 6960, 4.2.1), a list with what is signed.</summary>
    private static bool IsAnswer(ReadOnlyMemory<byte> file)
    {
        var whole = new AsnReader(file, AsnEncodingRules.DER).ReadSequence();
        return whole.HasData && whole.PeekTag().HasSameClassAndValue(Asn1Tag.Enumerated);
    }

    private static PdfFailure? AddAnswers(
        ImmutableArray<RevocationStatement>.Builder lists,
        ReadOnlyMemory<byte> file
    )
    {
        if (!RevocationAnswerParser.Parse(file).TryGet(out var answers, out var failure))
        {
            return failure;
        }

        lists.AddRange(answers);
        return null;
    }

    private static PdfFailure? AddList(
        ImmutableArray<RevocationStatement>.Builder lists,
        ReadOnlyMemory<byte> bytes
    )
    {
        if (!RevocationListParser.Parse(bytes).TryGet(out var list, out var failure))
        {
            return failure;
        }

        lists.Add(list);
        return null;
    }
}
