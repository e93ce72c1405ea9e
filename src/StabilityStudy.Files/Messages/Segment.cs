using System.Text;

namespace StabilityStudy.Files.Messages;

/// <summary>A segment of a message. Its fields are found only where they are asked for, so that others are never made into text.</summary>
/// <param name="Line">Line of the file, counted from 1.</param>
/// <param name="Bytes">The segment, without its end.</param>
/// <param name="Signs">The signs that part it.</param>
internal sealed record Segment(int Line, ReadOnlyMemory<byte> Bytes, SegmentSigns Signs)
{
    /// <summary>Characters of the name of a segment.</summary>
    public const int NameLength = 3;

    /// <summary>The name of the segment that a line begins with; null when it begins with none.</summary>
    public static string? NameOf(ReadOnlySpan<byte> line) =>
        line.Length >= NameLength
        && char.IsAsciiLetterUpper((char)line[0])
        && IsOfName(line[1])
        && IsOfName(line[2])
            ? Encoding.ASCII.GetString(line[..NameLength])
            : null;

    /// <summary>A field, counted from 1 as the standard does; empty when the segment is shorter.</summary>
    public ReadOnlySpan<byte> Field(int number) => Part(Bytes.Span, Signs.Field, number + 1);

    /// <summary>A field of a header, of which the first is the sign between the fields.</summary>
    public ReadOnlySpan<byte> HeaderField(int number) => Part(Bytes.Span, Signs.Field, number);

    /// <summary>The n-th of the parts between signs; empty when there are fewer.</summary>
    public static ReadOnlySpan<byte> Part(ReadOnlySpan<byte> text, byte sign, int number)
    {
        for (; number > 1; number--)
        {
            var end = text.IndexOf(sign);
            if (end < 0)
            {
                return [];
            }

            text = text[(end + 1)..];
        }

        var last = text.IndexOf(sign);
        return last < 0 ? text : text[..last];
    }

    private static bool IsOfName(byte sign) =>
        char.IsAsciiLetterUpper((char)sign) || char.IsAsciiDigit((char)sign);
}
