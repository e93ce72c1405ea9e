namespace StabilityStudy.SignedPdf.Stamps;

/// <summary>Collects the objects of a revision, numbered after those of the document.</summary>
internal sealed class NewObjects
{
    private readonly PdfDocument _document;
    private readonly ImmutableArray<PdfIndirectObject>.Builder _added =
        ImmutableArray.CreateBuilder<PdfIndirectObject>();
    private int _next;

    public NewObjects(PdfDocument document)
    {
        _document = document;
        var size = (document.Trailer.Find("Size") as PdfInteger)?.Value ?? 1;
        _next = (int)Math.Clamp(size, 1, ReadingLimits.ObjectNumber);
    }

    public ImmutableArray<PdfIndirectObject> Added => _added.ToImmutable();

    public PdfReference Add(PdfObject value)
    {
        var reference = new PdfReference(_next++, 0);
        _added.Add(new PdfIndirectObject(reference, value));
        return reference;
    }

    /// <summary>The reference to an equal object of the document if there is one; otherwise the object is added.</summary>
    public PdfReference FindOrAdd(PdfObject value) =>
        _document
            .Objects.FirstOrDefault(present => ObjectEquality.AreEqual(present.Value, value))
            ?.Reference
        ?? Add(value);
}
