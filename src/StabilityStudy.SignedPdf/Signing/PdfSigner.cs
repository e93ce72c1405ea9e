using StabilityStudy.SignedPdf.Stamps;
using StabilityStudy.SignedPdf.Verification;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>
/// Signs a document by appending a revision that fills one reserved field (ISO 32000-1:2008, 12.8; ETSI EN 319 142-1, level B-B, with
/// a time stamp B-T). The bytes before stay as they are. The first signature certifies: afterwards only signing is allowed.
/// </summary>
public static class PdfSigner
{
    /// <summary>The document with the signature, or why it was not made. What comes out has passed <see cref="SignatureVerifier"/>.</summary>
    /// <param name="document">The bytes of the whole document.</param>
    /// <param name="request">What to sign, who, when and how it looks.</param>
    /// <exception cref="ArgumentException">The stamp has no lines, or a line's size is not above 0.</exception>
    public static SigningResult Sign(ReadOnlyMemory<byte> document, SignatureRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        RequestCheck.CheckStamp(request.Stamp);
        if (RequestCheck.KeyRefusal(request) is { } keyRefusal)
        {
            return keyRefusal;
        }

        if (RequestCheck.MissingCharacter(request.Stamp) is { } missing)
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

        if (!FieldToFill.Of(read, request.FieldName).TryGet(out var place, out var refusal))
        {
            return refusal;
        }

        return EarlierFault(document, place.IsFirst, read) is { } fault
            ? new(SigningRefusalReason.EarlierSignatureBroken, fault)
            : Fill(place.Append(request.Content, out var number), number, request);
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
        return SignaturePlaceholder.Find(expected, number) is { } gap
            && gap.IsSameOutside(expected, document.Span[..(int)whole.Revisions[revision - 1].End]);
    }

    private static SigningResult Fill(byte[] bytes, int number, SignatureRequest request)
    {
        if (SignaturePlaceholder.Find(bytes, number) is not { } place)
        {
            return new(
                SigningRefusalReason.ResultDoesNotVerify,
                "The place of the signature was not found."
            );
        }

        place.WriteRange(bytes);
        var container = SignatureContainer.Sign(place.Covered(bytes), request.Key);
        if (
            request.TimeStamp is { } source
            && SignatureContainer.AddTimeStamp(container, source) is { } refused
        )
        {
            return refused;
        }

        var signature = container.Encode();
        if (signature.Length > SignatureDictionary.ContentsLength)
        {
            return new(
                SigningRefusalReason.SignatureTooLarge,
                "The signature with its certificates is larger than the room for it."
            );
        }

        place.WriteSignature(bytes, signature);
        var verification = SignatureVerifier.Verify(bytes, VerificationOptions.WithoutTrust);
        return verification.Holds
            ? new SigningResult(bytes)
            : new(
                SigningRefusalReason.ResultDoesNotVerify,
                VerificationText.FirstFault(verification)
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
