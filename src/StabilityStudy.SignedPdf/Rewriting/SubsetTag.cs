using System.Security.Cryptography;

namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>The six capitals and the plus sign before the name of a font of which only a part is embedded (ISO 32000-1:2008, 9.6.4).</summary>
internal static class SubsetTag
{
    private const int Length = 6;

    /// <summary>Six capitals that follow from the font program, so that different parts of a font have different tags.</summary>
    public static string Of(ReadOnlySpan<byte> fontProgram)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(fontProgram, hash);
        Span<char> letters = stackalloc char[Length];
        for (var i = 0; i < Length; i++)
        {
            // Two bytes a letter make every letter all but equally likely.
            letters[i] = (char)('A' + (((hash[2 * i] << 8) | hash[(2 * i) + 1]) % 26));
        }

        return new string(letters);
    }

    /// <summary>The dictionary with the tag in the font name under <paramref name="key"/> replaced; unchanged when the name has no tag.</summary>
    public static PdfDictionary Replace(PdfDictionary dictionary, string key, string tag) =>
        dictionary.Find(key) is PdfName name && HasTag(name.Value)
            ? dictionary.With(key, new PdfName(tag + name.Value[Length..]))
            : dictionary;

    private static bool HasTag(string name) =>
        name.Length > Length
        && name[Length] == '+'
        && !name.AsSpan(0, Length).ContainsAnyExceptInRange('A', 'Z');
}
