namespace StabilityStudy.SignedPdf.Objects;

/// <summary>A sequence of objects of any kinds (ISO 32000-1:2008, 7.3.6).</summary>
internal sealed record PdfArray(ImmutableArray<PdfObject> Items) : PdfObject
{
    /// <summary>The array with each item changed; itself where nothing changes.</summary>
    public PdfArray MapItems(Func<PdfObject, PdfObject> change)
    {
        var items = ImmutableArray.CreateRange(Items, change);
        return items.AsSpan().SequenceEqual(Items.AsSpan(), ReferenceEqualityComparer.Instance)
            ? this
            : new(items);
    }
}
