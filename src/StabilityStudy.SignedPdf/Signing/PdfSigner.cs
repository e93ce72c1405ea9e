using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Verification;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>
/// Signs a document by appending a revision that fills one reserved field (ISO 32000-1:2008, 12.8; ETSI EN 319 142-1, level B-B, with
/// a time stamp B-T). The bytes before stay as they are. The first signature certifies: afterwards only signing is allowed.
/// </summary>
public static class PdfSigner
{
    /// <summary>The document with everything but the signature itself, or why it was not made.</summary>
    /// <param name="document">The bytes of the whole document.</param>
    /// <param name="content">What to sign, when and how it looks.</param>
    /// <param name="certificate">The certificate of whoever will sign.</param>
    /// <exception cref="ArgumentException">The stamp has no lines, or a line's size is not above 0.</exception>
    public static SigningResult<PreparedDocument> Prepare(
        ReadOnlyMemory<byte> document,
        SignatureContent content,
        CertificateFacts certificate
    )
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(certificate);
        RequestCheck.CheckStamp(content.Stamp);
        if (
            RequestCheck.CertificateRefusal(certificate, content.SigningTime) is
            { } certificateRefusal
        )
        {
            return new(certificateRefusal);
        }

        if (RequestCheck.MissingCharacter(content.Stamp) is { } missing)
        {
            return new(
                SigningRefusalReason.CharacterNotInFont,
                $"The font of the stamp has no character {missing}."
            );
        }

        if (!PdfDocumentReader.Read(document).TryGet(out var read, out var failure))
        {
            return new(SigningRefusalReason.DocumentUnreadable, failure.What);
        }

        if (!FieldToFill.Of(read, content.FieldName).TryGet(out var field, out var refusal))
        {
            return new(refusal);
        }

        if (EarlierFault(document, field.IsFirst, read) is { } fault)
        {
            return new(SigningRefusalReason.EarlierSignatureBroken, fault);
        }

        var bytes = field.Append(content, out var number);
        if (SignaturePlaceholder.Find(bytes, number) is not { } place)
        {
            return new(
                SigningRefusalReason.ResultDoesNotVerify,
                "The place of the signature was not found."
            );
        }

        place.WriteRange(bytes);
        return new(new PreparedDocument(bytes, place));
    }

    /// <summary>Puts the signature of a key into a prepared document.</summary>
    /// <param name="prepared">The document.</param>
    /// <param name="key">Who signs.</param>
    /// <param name="timeStamp">Where a time stamp comes from; null for none.</param>
    public static SigningResult<ReadOnlyMemory<byte>> Sign(
        PreparedDocument prepared,
        SigningKey key,
        TimeStampSource? timeStamp
    )
    {
        ArgumentNullException.ThrowIfNull(prepared);
        return Complete(prepared, StatementSigner.Sign(prepared.ToSign, key), timeStamp);
    }

    /// <summary>Puts a signature that was made anywhere into a prepared document. What comes out has passed <see cref="SignatureVerifier"/>.</summary>
    /// <param name="prepared">The document.</param>
    /// <param name="signature">CMS signature over the bytes to sign, detached, DER.</param>
    /// <param name="timeStamp">Where a time stamp comes from; null for none.</param>
    public static SigningResult<ReadOnlyMemory<byte>> Complete(
        PreparedDocument prepared,
        ReadOnlyMemory<byte> signature,
        TimeStampSource? timeStamp
    )
    {
        ArgumentNullException.ThrowIfNull(prepared);
        if (timeStamp is not null)
        {
            if (
                !SignatureContainer
                    .Stamped(signature.Span, timeStamp)
                    .TryGet(out var stamped, out var refusal)
            )
            {
                return new(refusal);
            }

            signature = stamped;
        }

        if (signature.Length > SignatureDictionary.ContentsLength)
        {
            return new(
                SigningRefusalReason.SignatureTooLarge,
                "The signature with its certificates is larger than the room for it."
            );
        }

        var bytes = prepared.Bytes.ToArray();
        prepared.Place.WriteSignature(bytes, signature.Span);
        var verification = SignatureVerifier.Verify(bytes, VerificationOptions.WithoutTrust);
        return verification.Holds
            ? new(bytes)
            : new(
                SigningRefusalReason.ResultDoesNotVerify,
                VerificationText.FirstFault(verification)
            );
    }

    /// <summary>Where a signature field lies on its page; null where there is no such field.</summary>
    /// <param name="document">The bytes of the whole document.</param>
    /// <param name="fieldName">Name of the field, signed or not.</param>
    public static PageRectangle? PlaceOf(ReadOnlyMemory<byte> document, string fieldName) =>
        PdfDocumentReader.Read(document).TryGet(out var read, out _)
        && SignatureForm.Fields(read) is { } fields
        && fields.FirstOrDefault(field =>
            string.Equals(field.Name, fieldName, StringComparison.Ordinal)
        )
            is { } found
            ? FieldRectangle.Of(read, found.Dictionary)
            : null;

    /// <summary>The areas inside a signature field on which parts of a stamp are shown; empty where it has none.</summary>
    /// <param name="document">The bytes of the whole document.</param>
    /// <param name="fieldName">Name of the field, signed or not.</param>
    public static ImmutableArray<PageRectangle> AreasOf(
        ReadOnlyMemory<byte> document,
        string fieldName
    ) =>
        PdfDocumentReader.Read(document).TryGet(out var read, out _)
        && SignatureForm
            .Fields(read)
            ?.FirstOrDefault(field =>
                string.Equals(field.Name, fieldName, StringComparison.Ordinal)
            )
            is { } found
            ? FieldRectangle.AreasOf(read, found.Dictionary)
            : [];

    /// <summary>
    /// Whether a revision of a signed file is, the signature itself aside, the one that signing with this content appends: every entry of field and signature and the stamp on the page. That the signature
    /// is right is for <see cref="SignatureVerifier"/>.
    /// </summary>
    /// <param name="document">The bytes of the whole file.</param>
    /// <param name="revision">Number of the revision, from 2.</param>
    /// <param name="content">What it should say.</param>
    /// <exception cref="ArgumentException">The stamp has no lines, or a line's size is not above 0.</exception>
    public static bool IsAppended(
        ReadOnlyMemory<byte> document,
        int revision,
        SignatureContent content
    )
    {
        ArgumentNullException.ThrowIfNull(content);
        RequestCheck.CheckStamp(content.Stamp);
        if (
            RequestCheck.MissingCharacter(content.Stamp) is not null
            || !PdfDocumentReader.Read(document).TryGet(out var whole, out _)
            || revision < 2
            || revision > whole.Revisions.Length
            || !PdfDocumentReader
                .Read(document[..(int)whole.Revisions[revision - 2].End])
                .TryGet(out var before, out _)
            || !FieldToFill.Of(before, content.FieldName).TryGet(out var place, out _)
        )
        {
            return false;
        }

        var expected = place.Append(content, out var number);
        return SignaturePlaceholder.IsFilledIn(
            expected,
            number,
            document.Span[..(int)whole.Revisions[revision - 1].End]
        );
    }

    private static string? EarlierFault(
        ReadOnlyMemory<byte> bytes,
        bool isFirst,
        PdfDocument document
    )
    {
        var verification = SignatureVerifier.Verify(bytes, VerificationOptions.WithoutTrust);
        if (!isFirst)
        {
            return verification.Holds ? null : VerificationText.FirstFault(verification);
        }

        // Before the first signature there is nothing to verify, but also nothing that may have been appended.
        return
            document.Revisions.Length > 1
            || !verification.Problems.IsEmpty
            || document.Catalog.Find("Perms") is not null
            ? "The document was changed after it was made."
            : null;
    }
}
