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

        if (SignatureForm.Fields(read) is not { } fields)
        {
            return new(
                SigningRefusalReason.DocumentNotPrepared,
                "The document was not made with fields for signatures."
            );
        }

        var named = fields
            .Where(field => string.Equals(field.Name, request.FieldName, StringComparison.Ordinal))
            .ToList();
        if (named is not [{ Reference: { } reference } field])
        {
            return new(
                SigningRefusalReason.FieldUnknown,
                $"There is no field, or more than one, named {request.FieldName}."
            );
        }

        if (field.Dictionary.Find("V") is not null)
        {
            return new(
                SigningRefusalReason.FieldAlreadySigned,
                $"The field {request.FieldName} is signed already."
            );
        }

        var isFirst = fields.All(static other => other.Dictionary.Find("V") is null);
        if (EarlierFault(document, isFirst, read) is { } fault)
        {
            return new(SigningRefusalReason.EarlierSignatureBroken, fault);
        }

        return Append(read, field, reference, request, isFirst);
    }

    private static SigningResult Append(
        PdfDocument document,
        SignatureField field,
        PdfReference reference,
        SignatureRequest request,
        bool isFirst
    )
    {
        if (FieldRectangle.Of(document, field.Dictionary) is not { } rectangle)
        {
            return new(
                SigningRefusalReason.DocumentNotPrepared,
                "The field has no place on a page."
            );
        }

        var objects = new NewObjects(document);
        var appearance = StampAppearance.Add(
            objects,
            request.Stamp,
            rectangle.Width,
            rectangle.Height
        );
        var value = objects.Add(SignatureDictionary.Unsigned(request, isFirst));
        var changed = new List<PdfIndirectObject>
        {
            new(
                reference,
                field
                    .Dictionary.With("V", value)
                    .With("AP", PdfDictionary.Of(new PdfEntry("N", appearance)))
            ),
        };
        if (isFirst && document.Trailer.Find("Root") is PdfReference root)
        {
            var permissions = PdfDictionary.Of(new PdfEntry("DocMDP", value));
            changed.Add(new(root, document.Catalog.With("Perms", permissions)));
        }

        ImmutableArray<PdfIndirectObject> revision =
        [
            .. changed.Concat(objects.Added).OrderBy(static entry => entry.Reference.Number),
        ];
        return Fill(PdfFileWriter.Append(document, revision), value.Number, request);
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
