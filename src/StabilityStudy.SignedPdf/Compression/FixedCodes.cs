namespace StabilityStudy.SignedPdf.Compression;

/// <summary>The two codes every reader knows (RFC 1951, section 3.2.6).</summary>
internal static class FixedCodes
{
    public static HuffmanCode Literals { get; } =
        new([
            .. Enumerable.Repeat((byte)8, 144),
            .. Enumerable.Repeat((byte)9, 112),
            .. Enumerable.Repeat((byte)7, 24),
            .. Enumerable.Repeat((byte)8, 8),
        ]);

    public static HuffmanCode Distances { get; } = new([.. Enumerable.Repeat((byte)5, 30)]);
}
