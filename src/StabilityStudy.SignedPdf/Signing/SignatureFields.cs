using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Puts empty signature fields into a drawn document (ISO 32000-1:2008, 12.7.4.5), so that signing later only fills one.</summary>
internal static class SignatureFields
{
    // Print and Locked (12.5.3): on paper too, and not to be moved.
    private const int AnnotationFlags = 4 + 128;

    // SignaturesExist and AppendOnly (12.7.2): set from the start, so that signing leaves the form's dictionary as it is.
    private const int SignatureFlags = 1 + 2;

    /// <summary>
    /// The document with the fields; or why that cannot be: it has a form already, or no such page. In a tagged document each field gets a tag.
    /// </summary>
    /// <param name="graph">The document, which must not be signed.</param>
    /// <param name="fields">The fields in the order of signing.</param>
    /// <exception cref="ArgumentException">A name is empty, has a point or occurs twice, or a rectangle has width or height alone.</exception>
    public static PdfResult<ObjectGraph> Reserve(
        ObjectGraph graph,
        ImmutableArray<ReservedField> fields
    )
    {
        CheckFields(fields);
        if (graph.Resolve(graph.Catalog.Find("AcroForm")) is not null)
        {
            return new(new PdfFailure(null, "The document has a form already."));
        }

        var pages = PageTree.Pages(graph.Catalog.Find("Pages"), graph.Resolve);
        graph = graph.Add(EmptyAppearance, out var appearance);
        var references = new List<PdfObject>();
        foreach (var field in fields)
        {
            if (field.PageNumber < 1 || field.PageNumber > pages.Length)
            {
                return new(new PdfFailure(null, $"There is no page for the field {field.Name}."));
            }

            var page = pages[field.PageNumber - 1];
            graph = graph.Add(FieldDictionary(field, page, appearance), out var reference);
            if (
                !FieldTags
                    .Apply(graph, reference, page, field)
                    .TryGet(out var tagged, out var failure)
            )
            {
                return new(failure);
            }

            graph = WithAnnotation(tagged, page, reference);
            references.Add(reference);
        }

        graph = graph.Add(
            PdfDictionary.Of(
                new("Fields", new PdfArray([.. references])),
                new("SigFlags", new PdfInteger(SignatureFlags))
            ),
            out var form
        );
        return new(graph.WithCatalog(graph.Catalog.With("AcroForm", form)));
    }

    private static PdfStream EmptyAppearance { get; } =
        new(
            PdfDictionary.Of(
                new("Type", new PdfName("XObject")),
                new("Subtype", new PdfName("Form")),
                new("BBox", new PdfArray([.. new long[] { 0, 0, 1, 1 }.Select(Integer)])),
                new("Resources", PdfDictionary.Empty)
            ),
            ReadOnlyMemory<byte>.Empty
        );

    private static PdfObject Integer(long value) => new PdfInteger(value);

    private static PdfDictionary FieldDictionary(
        ReservedField field,
        PdfReference page,
        PdfReference appearance
    ) =>
        PdfDictionary.Of([
            new("Type", new PdfName("Annot")),
            new("Subtype", new PdfName("Widget")),
            new("FT", new PdfName("Sig")),
            new("T", PdfString.OfText(field.Name)),
            new("TU", PdfString.OfText(field.Description)),
            new("Contents", PdfString.OfText(field.Description)),
            new("F", new PdfInteger(AnnotationFlags)),
            new("P", page),
            new("AP", PdfDictionary.Of(new PdfEntry("N", appearance))),
            new("Rect", PdfNumbers.Rectangle(field.Rectangle)),
            .. field.Areas.IsEmpty
                ? []
                : new[]
                {
                    new PdfEntry(
                        FieldRectangle.AreasKey,
                        new PdfArray([.. field.Areas.Select(PdfNumbers.Rectangle)])
                    ),
                },
        ]);

    private static ObjectGraph WithAnnotation(
        ObjectGraph graph,
        PdfReference page,
        PdfReference annotation
    )
    {
        var dictionary = graph.Resolve(page) as PdfDictionary ?? PdfDictionary.Empty;
        var present = graph.Resolve(dictionary.Find("Annots")) is PdfArray array ? array.Items : [];
        return graph with
        {
            Objects = graph.Objects.SetItem(
                page.Number - 1,
                dictionary.With("Annots", new PdfArray([.. present, annotation]))
            ),
        };
    }

    private static void CheckFields(ImmutableArray<ReservedField> fields)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var field in fields)
        {
            if (
                field.Name.Length == 0
                || field.Name.Contains('.', StringComparison.Ordinal)
                || !names.Add(field.Name)
            )
            {
                throw new ArgumentException(
                    "A field's name is empty, has a point or occurs twice.",
                    nameof(fields)
                );
            }

            // One without any extent is not visible (12.7.4.5); anything between is a mistake.
            if (field.Rectangle is not ({ Width: > 0, Height: > 0 } or { Width: 0, Height: 0 }))
            {
                throw new ArgumentException("A field has no area.", nameof(fields));
            }
        }
    }
}
