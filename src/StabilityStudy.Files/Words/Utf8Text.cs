using System.Text;

namespace StabilityStudy.Files.Words;

/// <summary>UTF-8 with or without a byte order mark.</summary>
internal static class Utf8Text
{
    private static readonly UTF8Encoding Strict = new(false, throwOnInvalidBytes: true);

    /// <summary>The bytes without a leading byte order mark.</summary>
    public static ReadOnlyMemory<byte> WithoutMark(ReadOnlyMemory<byte> bytes) =>
        bytes.Span.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;

    /// <summary>Line of the first byte that is not UTF-8, counted from 1; null when all are.</summary>
    public static int? FirstInvalidLine(ReadOnlySpan<byte> bytes)
    {
        var valid = 0;
        var line = 1;
        while (valid < bytes.Length)
        {
            var rest = bytes[valid..];
            var status = Rune.DecodeFromUtf8(rest, out var rune, out var used);
            if (status != System.Buffers.OperationStatus.Done)
            {
                return line;
            }

            line += rune.Value == '\n' ? 1 : 0;
            valid += used;
        }

        return null;
    }

    /// <summary>Whether all bytes are UTF-8.</summary>
    public static bool IsValid(ReadOnlySpan<byte> bytes) => System.Text.Unicode.Utf8.IsValid(bytes);

    /// <summary>The text of bytes that are known to be UTF-8.</summary>
    public static string Decode(ReadOnlySpan<byte> bytes) => Strict.GetString(bytes);
}
