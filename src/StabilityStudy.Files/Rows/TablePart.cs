namespace StabilityStudy.Files.Rows;

/// <summary>A file, or a part of one that is read by itself.</summary>
/// <param name="Bytes">The file, or rows of it.</param>
/// <param name="Header">Its header line, where <paramref name="Bytes"/> has rows alone; else empty.</param>
/// <param name="LinesBefore">What is added to the number of a line.</param>
internal sealed record TablePart(
    ReadOnlyMemory<byte> Bytes,
    ReadOnlyMemory<byte> Header,
    int LinesBefore
)
{
    /// <summary>The lines below the header line, empty ones too.</summary>
    public int Rows =>
        Bytes.Span.Count((byte)'\n')
        + (Bytes.Span is [.., not (byte)'\n'] ? 1 : 0)
        - (Header.IsEmpty && !Bytes.IsEmpty ? 1 : 0);

    /// <summary>A file as a whole.</summary>
    public static TablePart Of(ReadOnlyMemory<byte> bytes, int linesBefore) =>
        new(bytes, default, linesBefore);
}
