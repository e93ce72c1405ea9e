using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Stamps;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>An empty signature field of a document, and the revision that fills it.</summary>
/// <param name="Document">The document.</param>
/// <param name="Field">The field.</param>
/// <param name="Reference">Its object.</param>
/// <param name="Rectangle">Its place on the page.</param>
/// <param name="IsFirst">Whether no field is signed yet.</param>
internal sealed record FieldToFill(
    PdfDocument Document,
    SignatureField Field,
    PdfReference Reference,
    PageRectangle Rectangle,
    bool IsFirst
)
{
    /// <summary>The field of a name, or why it cannot be filled.</summary>
    public static SigningResult<FieldToFill> Of(PdfDocument document, string name)
    {
        if (SignatureForm.Fields(document) is not { } fields)
        {
            return new(
                SigningRefusalReason.DocumentNotPrepared,
                "The document was not made with fields for signatures."
            );
        }

        var named = fields
            .Where(field => string.Equals(field.Name, name, StringComparison.Ordinal))
            .ToList();
        if (named is not [{ Reference: { } reference } field])
        {
            return new(
                SigningRefusalReason.FieldUnknown,
                $"There is no field, or more than one, named {name}."
            );
        }

        if (field.Dictionary.Find("V") is not null)
        {
            return new(
                SigningRefusalReason.FieldAlreadySigned,
                $"The field {name} is signed already."
            );
        }

        return FieldRectangle.Of(document, field.Dictionary) is { } rectangle
            ? new(
                new FieldToFill(
                    document,
                    field,
                    reference,
                    rectangle,
                    fields.All(static other => other.Dictionary.Find("V") is null)
                )
            )
            : new(SigningRefusalReason.DocumentNotPrepared, "The field has no place on a page.");
    }

    /// <summary>The document followed by the revision, with zeros in place of the signature and nines in place of its offsets.</summary>
    /// <param name="content">What the signature and its stamp say.</param>
    /// <param name="number">Number of the object with the signature.</param>
    public byte[] Append(SignatureContent content, out int number)
    {
        var objects = new NewObjects(Document);
        var appearance = StampAppearance.Add(objects, content.Stamp, Rectangle);
        var value = objects.Add(SignatureDictionary.Unsigned(content, IsFirst));
        var changed = new List<PdfIndirectObject>
        {
            new(
                Reference,
                Field
                    .Dictionary.With("V", value)
                    .With("AP", PdfDictionary.Of(new PdfEntry("N", appearance)))
            ),
        };
        if (IsFirst && Document.Trailer.Find("Root") is PdfReference root)
        {
            var permissions = PdfDictionary.Of(new PdfEntry("DocMDP", value));
            changed.Add(new(root, Document.Catalog.With("Perms", permissions)));
        }

        number = value.Number;
        return PdfFileWriter.Append(
            Document,
            [.. changed.Concat(objects.Added).OrderBy(static entry => entry.Reference.Number)]
        );
    }
}
