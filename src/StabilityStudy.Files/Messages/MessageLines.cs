namespace StabilityStudy.Files.Messages;

/// <summary>A line of a file of messages.</summary>
/// <param name="Number">Its number, counted from 1.</param>
/// <param name="Bytes">What stands in it, without framing bytes.</param>
/// <param name="HasEnd">Whether it ends with an end of line.</param>
/// <param name="Begins">Whether a framed block begins with it.</param>
/// <param name="Ends">Whether a framed block ends with it.</param>
internal readonly record struct MessageLine(
    int Number,
    ReadOnlyMemory<byte> Bytes,
    bool HasEnd,
    bool Begins,
    bool Ends
);

/// <summary>
/// Parts a file of messages into lines: segments end with CR, and files also have LF or both; a block of the minimal lower layer protocol
/// begins with a VT and ends with FS and CR.
/// </summary>
internal static class MessageLines
{
    private const byte BlockBegin = 0x0B;
    private const byte BlockEnd = 0x1C;

    /// <summary>Whether framing bytes stand inside a line, where no block begins or ends.</summary>
    public static bool HasFraming(ReadOnlySpan<byte> line) =>
        line.IndexOfAny(BlockBegin, BlockEnd) >= 0;

    /// <summary>The lines.</summary>
    public static IEnumerable<MessageLine> Of(ReadOnlyMemory<byte> text)
    {
        for (var number = 1; !text.IsEmpty; number++)
        {
            var end = text.Span.IndexOfAny((byte)'\r', (byte)'\n');
            var line = end < 0 ? text : text[..end];
            text = end < 0 ? default : text[(end + EndLength(text.Span[end..]))..];
            var begins = line.Span is [BlockBegin, ..];
            line = begins ? line[1..] : line;
            var ends = line.Span is [.., BlockEnd];
            line = ends ? line[..^1] : line;
            yield return new(number, line, end >= 0, begins, ends);
        }
    }

    private static int EndLength(ReadOnlySpan<byte> end) =>
        end is [(byte)'\r', (byte)'\n', ..] ? 2 : 1;
}
