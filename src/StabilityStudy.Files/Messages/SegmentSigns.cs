namespace StabilityStudy.Files.Messages;

/// <summary>
/// The signs that part a message, as its header states them (HL7 Version 2.5.1, chapter 2, message delimiters; MSH-1 and MSH-2).
/// </summary>
internal sealed record SegmentSigns(
    byte Field,
    byte Component,
    byte Repetition,
    byte Escape,
    byte Subcomponent
)
{
    private const int NameLength = 3;
    private const int Fewest = 4;

    // A fifth sign, which marks a cut-off text, came with version 2.7.
    private const int Most = 5;

    /// <summary>Reads them from the header of a message, file or batch; null when they are none.</summary>
    public static SegmentSigns? Of(ReadOnlySpan<byte> header)
    {
        if (header.Length <= NameLength + Fewest)
        {
            return null;
        }

        var field = header[NameLength];
        var rest = header[(NameLength + 1)..];
        var end = rest.IndexOf(field);
        var stated = end < 0 ? rest : rest[..end];
        if (stated.Length is < Fewest or > Most)
        {
            return null;
        }

        ReadOnlySpan<byte> all = [field, .. stated];
        for (var i = 0; i < all.Length; i++)
        {
            if (!IsSign(all[i]) || all[(i + 1)..].Contains(all[i]))
            {
                return null;
            }
        }

        return new(field, stated[0], stated[1], stated[2], stated[3]);
    }

    private static bool IsSign(byte sign) =>
        sign is > 0x20 and < 0x7F && !char.IsAsciiLetterOrDigit((char)sign);
}
