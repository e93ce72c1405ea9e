using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Layouts;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Finds how the characters of a file are stored.</summary>
internal static class Encodings
{
    private const int SniffedBytes = 4096;
    private const int MostNamed = 3;

    // Bytes that Windows-1252 leaves without a character.
    private static ReadOnlySpan<byte> Undefined => [0x81, 0x8D, 0x8F, 0x90, 0x9D];

    /// <summary>The encoding, its name in study.toml (null for the usual one), and why; null where none is read here.</summary>
    public static (FileEncoding Encoding, string? Name, SuggestedSetting Setting)? Of(
        ReadOnlySpan<byte> bytes,
        string? stated
    )
    {
        if (stated is not null)
        {
            return SectionKeys.Encodings.TryRead(stated, out var encoding)
                ? Found(encoding.Value, stated, stated, HowSure.Sure, "stated in study.toml")
                : null;
        }

        var head = bytes[..Math.Min(bytes.Length, SniffedBytes)];
        var zeros = head.Count((byte)0);
        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
        {
            return Found(
                FileEncoding.Utf16,
                "utf-16",
                "UTF-16",
                HowSure.Sure,
                "the mark at its beginning says so"
            );
        }

        if (zeros > head.Length / 4)
        {
            // Without a mark the other order of bytes is not read.
            return IsLittleEndian(head)
                ? Found(
                    FileEncoding.Utf16,
                    "utf-16",
                    "UTF-16",
                    HowSure.Sure,
                    "every other byte is zero"
                )
                : null;
        }

        if (zeros > 0)
        {
            return null;
        }

        if (Utf8Text.IsValid(bytes))
        {
            return Found(
                FileEncoding.Utf8,
                null,
                "UTF-8",
                HowSure.Sure,
                bytes.IndexOfAnyInRange((byte)0x80, (byte)0xFF) < 0
                    ? "letters without accents only"
                    : "all signs beyond ASCII are UTF-8"
            );
        }

        var high = new SortedSet<byte>();
        foreach (var code in bytes)
        {
            if (code >= 0x80)
            {
                high.Add(code);
            }
        }

        if (high.Any(code => Undefined.Contains(code)))
        {
            return null;
        }

        var text = System
            .Text.CodePagesEncodingProvider.Instance.GetEncoding(1252)!
            .GetString([.. high]);
        var isUsual = text.All(c =>
            char.IsLetter(c) || "°µ±²³€–—’‘“”„…§½·".Contains(c, StringComparison.Ordinal)
        );
        var named = high.Take(MostNamed).Select((code, i) => (Code: code, Sign: text[i])).ToArray();
        return Found(
            FileEncoding.Windows1252,
            "windows-1252",
            "Windows-1252",
            isUsual ? HowSure.Sure : HowSure.Likely,
            $"{(named.Length == 1 ? "byte" : "bytes")} {InWords(named.Select(item => item.Code.ToString("X2", CultureInfo.InvariantCulture)))} {(named.Length == 1 ? "is" : "are")} {InWords(named.Select(item => item.Sign.ToString()))}"
                + (isUsual ? "" : "; another code page is possible")
        );
    }

    private static bool IsLittleEndian(ReadOnlySpan<byte> head)
    {
        var odd = 0;
        for (var i = 1; i < head.Length; i += 2)
        {
            odd += head[i] == 0 ? 1 : 0;
        }

        return odd > head.Length / 4;
    }

    private static (FileEncoding, string?, SuggestedSetting) Found(
        FileEncoding encoding,
        string? name,
        string value,
        HowSure sure,
        string why
    ) => (encoding, name, new("encoding", value, sure, why));

    internal static string InWords(IEnumerable<string> words) =>
        words.ToArray() switch
        {
            [] => "none",
            [var only] => only,
            [.. var first, var last] => $"{string.Join(", ", first)} and {last}",
        };
}
