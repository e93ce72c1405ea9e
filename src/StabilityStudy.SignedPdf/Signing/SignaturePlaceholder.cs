using System.Text;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Where in a new revision the signature and its byte range are to be filled in.</summary>
/// <param name="RangeStart">First byte of the array of the byte range.</param>
/// <param name="RangeLength">Length of that array as written.</param>
/// <param name="GapStart">The opening bracket of the string of the signature.</param>
/// <param name="GapEnd">The byte after its closing bracket.</param>
internal sealed record SignaturePlaceholder(
    int RangeStart,
    int RangeLength,
    int GapStart,
    int GapEnd
)
{
    private const string Range = "[0 9999999999 9999999999 9999999999]";

    /// <summary>Finds the place. The signature is the last object of its revision, so that no text of a caller can be taken for it.</summary>
    public static SignaturePlaceholder? Find(ReadOnlySpan<byte> document, int objectNumber)
    {
        var before = string.Create(
            CultureInfo.InvariantCulture,
            $"\n{objectNumber} 0 obj\n<</ByteRange "
        );
        var start = document.LastIndexOf(Encoding.ASCII.GetBytes(before + Range + "/Contents <"));
        if (start < 0)
        {
            return null;
        }

        var range = start + before.Length;
        var gap = range + Range.Length + "/Contents ".Length;
        var end = gap + (2 * SignatureDictionary.ContentsLength) + 2;
        return end <= document.Length && document[end - 1] == '>'
            ? new SignaturePlaceholder(range, Range.Length, gap, end)
            : null;
    }

    /// <summary>Whether a file is one with an empty place, and the same but for the byte range and the signature that were filled in.</summary>
    /// <param name="expected">The file with the empty place.</param>
    /// <param name="objectNumber">Number of the object with the signature.</param>
    /// <param name="filled">The other file.</param>
    public static bool IsFilledIn(
        ReadOnlySpan<byte> expected,
        int objectNumber,
        ReadOnlySpan<byte> filled
    ) => Find(expected, objectNumber)?.IsSameOutside(expected, filled) == true;

    private bool IsSameOutside(ReadOnlySpan<byte> one, ReadOnlySpan<byte> other) =>
        one.Length == other.Length
        && one[..RangeStart].SequenceEqual(other[..RangeStart])
        && one[(RangeStart + RangeLength)..GapStart]
            .SequenceEqual(other[(RangeStart + RangeLength)..GapStart])
        && one[GapEnd..].SequenceEqual(other[GapEnd..]);

    /// <summary>Writes the true byte range over the nines.</summary>
    public void WriteRange(Span<byte> document)
    {
        var text = string.Create(
            CultureInfo.InvariantCulture,
            $"[0 {GapStart} {GapEnd} {document.Length - GapEnd}]"
        );
        Encoding.ASCII.GetBytes(text.PadRight(RangeLength), document[RangeStart..]);
    }

    /// <summary>The bytes that are signed: all but the gap.</summary>
    public byte[] Covered(ReadOnlySpan<byte> document) =>
        [.. document[..GapStart], .. document[GapEnd..]];

    /// <summary>Writes the signature over the first zeros.</summary>
    public void WriteSignature(Span<byte> document, ReadOnlySpan<byte> signature) =>
        Encoding.ASCII.GetBytes(Convert.ToHexString(signature), document[(GapStart + 1)..]);
}
