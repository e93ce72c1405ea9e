namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>Names for a content, made from its SHA-256: the file identifier from its first half, the document's UUID from its second.</summary>
internal static class ContentIdentity
{
    public const int FileIdentifierLength = 16;

    /// <summary>A UUID of version 8, whose bits are the maker's to choose (RFC 9562, section 5.8).</summary>
    public static Guid Uuid(ReadOnlySpan<byte> hash)
    {
        Span<byte> bytes = stackalloc byte[16];
        hash.Slice(FileIdentifierLength, 16).CopyTo(bytes);
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }
}
