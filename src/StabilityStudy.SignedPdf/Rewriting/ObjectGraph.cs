namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>The objects of a document while it is being rewritten: number n, generation 0, lies at index n - 1.</summary>
/// <param name="Objects">The objects; none of them is a reference.</param>
/// <param name="Trailer">Holds /Root and, at the end, /Info.</param>
internal sealed record ObjectGraph(ImmutableArray<PdfObject> Objects, PdfDictionary Trailer)
{
    public PdfReference Root =>
        (PdfReference?)Trailer.Find("Root") ?? throw new InvalidOperationException("No /Root.");

    public PdfDictionary Catalog => Resolve(Root) as PdfDictionary ?? PdfDictionary.Empty;

    /// <summary>The objects with their numbers.</summary>
    public ImmutableArray<PdfIndirectObject> Numbered =>
        [
            .. Objects.Select(
                static (value, index) => new PdfIndirectObject(new(index + 1, 0), value)
            ),
        ];

    /// <summary>The value itself, or the object that a reference means; null for no value, the null object and a reference to nothing.</summary>
    public PdfObject? Resolve(PdfObject? value)
    {
        var target = value is PdfReference reference
            ? Objects.ElementAtOrDefault(reference.Number - 1)
            : value;
        return target is PdfNull ? null : target;
    }

    public ObjectGraph Add(PdfObject value, out PdfReference reference)
    {
        reference = new PdfReference(Objects.Length + 1, 0);
        return this with { Objects = Objects.Add(value) };
    }

    public ObjectGraph WithCatalog(PdfDictionary catalog) =>
        this with
        {
            Objects = Objects.SetItem(Root.Number - 1, catalog),
        };

    /// <summary>Every dictionary changed by the same rule, those inside other objects and those of streams included.</summary>
    public ObjectGraph MapDictionaries(Func<PdfDictionary, PdfDictionary> change) =>
        this with
        {
            Objects = [.. Objects.Select(value => NestedObjects.MapDictionaries(value, change))],
        };
}
