using System.Collections.Frozen;

namespace StabilityStudy.SignedPdf.Reading;

/// <summary>A file that was read without any fault in its structure.</summary>
public sealed class PdfDocument
{
    private readonly FrozenDictionary<int, PdfIndirectObject> _objects;

    internal PdfDocument(
        ReadOnlyMemory<byte> bytes,
        PdfDictionary trailer,
        ImmutableArray<PdfRevision> revisions,
        FrozenDictionary<int, PdfIndirectObject> objects
    )
    {
        Bytes = bytes;
        Trailer = trailer;
        Revisions = revisions;
        _objects = objects;
    }

    /// <summary>The bytes of the file. Streams refer to them: they must not be changed.</summary>
    public ReadOnlyMemory<byte> Bytes { get; }

    /// <summary>The trailer dictionary of the newest revision (or the dictionary of its cross-reference stream).</summary>
    public PdfDictionary Trailer { get; }

    /// <summary>The revisions, oldest first; a file never updated has one.</summary>
    public ImmutableArray<PdfRevision> Revisions { get; }

    /// <summary>All objects of the newest state, by ascending number.</summary>
    public ImmutableArray<PdfIndirectObject> Objects =>
        [.. _objects.Values.OrderBy(static found => found.Reference.Number)];

    /// <summary>The document catalog.</summary>
    public PdfDictionary Catalog => ResolveDictionary(Trailer.Find("Root")) ?? PdfDictionary.Empty;

    /// <summary>The object with this number and generation; null when there is none.</summary>
    public PdfObject? Find(PdfReference reference)
    {
        ArgumentNullException.ThrowIfNull(reference);
        return
            _objects.GetValueOrDefault(reference.Number) is { } found
            && found.Reference == reference
            ? found.Value
            : null;
    }

    /// <summary>
    /// The object meant: the value itself, or what a reference leads to, also through several. Null (the .NET one) for no value,
    /// the null object, a reference to nothing and references in a circle.
    /// </summary>
    public PdfObject? Resolve(PdfObject? value)
    {
        for (var hop = 0; value is PdfReference reference; hop++)
        {
            value = hop < ReadingLimits.ReferenceHops ? Find(reference) : null;
        }

        return value is PdfNull ? null : value;
    }

    /// <summary>Like <see cref="Resolve"/>, for a dictionary; null for an object of another kind.</summary>
    public PdfDictionary? ResolveDictionary(PdfObject? value) => Resolve(value) as PdfDictionary;
}
