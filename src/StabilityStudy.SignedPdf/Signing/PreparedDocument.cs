namespace StabilityStudy.SignedPdf.Signing;

/// <summary>A document with a revision for one signature whose place is still empty. Whoever holds the key signs <see cref="ToSign"/>.</summary>
public sealed class PreparedDocument
{
    internal PreparedDocument(ReadOnlyMemory<byte> bytes, SignaturePlaceholder place)
    {
        Bytes = bytes;
        Place = place;
        ToSign = place.Covered(bytes.Span);
    }

    /// <summary>The bytes of the file, with zeros in place of the signature.</summary>
    public ReadOnlyMemory<byte> Bytes { get; }

    /// <summary>Exactly the bytes that the signature must cover.</summary>
    public ReadOnlyMemory<byte> ToSign { get; }

    internal SignaturePlaceholder Place { get; }
}
