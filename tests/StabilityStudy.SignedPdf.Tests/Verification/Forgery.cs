using System.Collections.Frozen;
using System.Formats.Asn1;
using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>Signatures as somebody makes them who has a key but does not keep to the rules.</summary>
internal static class Forgery
{
    private const string SigningCertificate = "1.2.840.113549.1.9.16.2.47";

    /// <summary>The file with the signature in this field made anew, over the bytes as they are now.</summary>
    /// <param name="file">A file whose last signature is that of the field.</param>
    /// <param name="field">The field.</param>
    /// <param name="signer">Who signs.</param>
    /// <param name="named">The certificate that the signed attribute names; null for no such attribute.</param>
    /// <param name="adjust">Changes how it is signed.</param>
    /// <param name="detached">False puts the content into the signature.</param>
    /// <param name="after">Changes the signature when it is made.</param>
    /// <param name="identified">How the signature names the certificate of its signer.</param>
    public static byte[] Resigned(
        byte[] file,
        string field,
        Signer signer,
        X509Certificate2? named,
        Action<CmsSigner>? adjust = null,
        bool detached = true,
        Action<SignerInfo>? after = null,
        SubjectIdentifierType identified = SubjectIdentifierType.IssuerAndSerialNumber
    )
    {
        var (start, end) = Gap(file, field);
        var changed = file.ToArray();
        changed.AsSpan((start + 1)..(end - 1)).Fill((byte)'0');
        var content = detached ? Covered(changed, start, end) : "short"u8.ToArray();
        return WithSignature(
            changed,
            start,
            Signature(content, signer, named, adjust, detached, after, identified)
        );
    }

    /// <summary>What is found of the author's signature when somebody makes it anew.</summary>
    /// <param name="signer">Who signs.</param>
    /// <param name="options">Whom to trust; null for those of the tests.</param>
    /// <param name="adjust">Changes how it is signed.</param>
    /// <param name="after">Changes the signature when it is made.</param>
    public static SignatureVerification AsAuthor(
        Signer signer,
        VerificationOptions? options = null,
        Action<CmsSigner>? adjust = null,
        Action<SignerInfo>? after = null
    ) =>
        SignedDocument
            .Verify(
                Resigned(
                    SignedDocument.SignedOnce,
                    "author",
                    signer,
                    signer.Certificate,
                    adjust,
                    after: after
                ),
                options ?? Signers.Trusting
            )
            .Signatures[0];

    /// <summary>A signature over any bytes; the parameters are those of <see cref="Resigned"/>.</summary>
    public static byte[] Signature(
        byte[] content,
        Signer signer,
        X509Certificate2? named,
        Action<CmsSigner>? adjust = null,
        bool detached = true,
        Action<SignerInfo>? after = null,
        SubjectIdentifierType identified = SubjectIdentifierType.IssuerAndSerialNumber
    )
    {
        var container = new SignedCms(new ContentInfo(content), detached);
        var by = new CmsSigner(identified, signer.Certificate, signer.Key)
        {
            DigestAlgorithm = new Oid("2.16.840.1.101.3.4.2.1"),
            IncludeOption = X509IncludeOption.EndCertOnly,
        };
        if (named is not null)
        {
            by.SignedAttributes.Add(SigningCertificateAttribute(named));
        }

        adjust?.Invoke(by);
        container.ComputeSignature(by, silent: true);
        after?.Invoke(container.SignerInfos[0]);
        return container.Encode();
    }

    public static byte[] WithSignature(byte[] file, int gapStart, byte[] signature)
    {
        HandMadePdf.Bytes(Convert.ToHexString(signature)).CopyTo(file, gapStart + 1);
        return file;
    }

    /// <summary>The approver's signature on a revision that also paints over the first page.</summary>
    public static byte[] SignedWithPaintedPage()
    {
        var before = Rewritten.Read(SignedDocument.SignedOnce);
        var page = Tampering.Page(before);
        var paint = Tampering.Next(Rewritten.Read(SignedDocument.SignedTwice));
        return SignedRevision(
            before,
            new PdfIndirectObject(
                page,
                ((PdfDictionary)before.Find(page)!).With("Contents", paint)
            ),
            new PdfIndirectObject(
                paint,
                new PdfStream(PdfDictionary.Empty, "0 0 9 9 re f"u8.ToArray())
            )
        );
    }

    /// <summary>The approver's right signature, and between its revision and the one before bytes that no cross-reference names.</summary>
    public static byte[] SignedAfter(byte[] unnamed)
    {
        var before = Rewritten.Read(SignedDocument.SignedOnce);
        return SignedRevision(
            new PdfDocument(
                (byte[])[.. before.Bytes.Span, .. unnamed],
                before.Trailer,
                before.Revisions,
                before.Objects.ToFrozenDictionary(static found => found.Reference.Number)
            )
        );
    }

    /// <summary>The approver's revision with further objects, signed as it is then.</summary>
    public static byte[] SignedRevision(PdfDocument before, params PdfIndirectObject[] further)
    {
        var after = Rewritten.Read(SignedDocument.SignedTwice);
        var field = Tampering.Field(after, "approver");
        var value = Tampering.Value(after, "approver");
        var objects = after
            .Objects.Where(found =>
                found.Reference == field || before.Find(found.Reference) is null
            )
            .Select(found =>
                found.Reference == value
                    ? new PdfIndirectObject(value, WithPlaceholder((PdfDictionary)found.Value))
                    : found
            )
            .Concat(further)
            .OrderBy(static found => found.Reference.Number);
        var file = PdfFileWriter.Append(before, [.. objects]);
        var place = Tampering.Place(file, Placeholder, SignedDocument.SignedOnce.Length);
        var start = place + Placeholder.Length + "/Contents ".Length;
        var end = Tampering.Place(file, ">", start) + 1;
        var range = string.Create(
            CultureInfo.InvariantCulture,
            $"[0 {start} {end} {file.Length - end}]"
        );
        HandMadePdf.Bytes(range.PadRight(Placeholder.Length)).CopyTo(file, place);
        return Resigned(file, "approver", Signers.Approver, Signers.Approver.Certificate);
    }

    /// <summary>Where the string of a field's signature begins and ends.</summary>
    public static (int Start, int End) Gap(byte[] file, string field)
    {
        var document = Rewritten.Read(file);
        var signature = (PdfDictionary)document.Find(Tampering.Value(document, field))!;
        var range = Assert.IsType<PdfArray>(signature.Find("ByteRange"));
        return ((int)((PdfInteger)range.Items[1]).Value, (int)((PdfInteger)range.Items[2]).Value);
    }

    /// <summary>The bytes that the signature of the last revision covers.</summary>
    public static byte[] Covered(byte[] file, int start, int end) =>
        [.. file[..start], .. file[end..]];

    /// <summary>The container in a field, without the zeros after it.</summary>
    public static byte[] Container(byte[] file, string field)
    {
        var (start, end) = Gap(file, field);
        var all = Convert.FromHexString(Encoding.ASCII.GetString(file[(start + 1)..(end - 1)]));
        return new AsnReader(all, AsnEncodingRules.DER).ReadEncodedValue().ToArray();
    }

    private const string Placeholder = "[0 9999999999 9999999999 9999999999]";

    private static PdfDictionary WithPlaceholder(PdfDictionary signature)
    {
        var number = new PdfInteger(9_999_999_999);
        return signature.With(
            "ByteRange",
            new PdfArray([new PdfInteger(0), number, number, number])
        );
    }

    /// <summary>The signed attribute that names the certificate of the signer.</summary>
    public static AsnEncodedData SigningCertificateAttribute(X509Certificate2 certificate)
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        using (writer.PushSequence())
        using (writer.PushSequence())
        {
            writer.WriteOctetString(SHA256.HashData(certificate.RawData));
        }

        return new AsnEncodedData(new Oid(SigningCertificate), writer.Encode());
    }
}
