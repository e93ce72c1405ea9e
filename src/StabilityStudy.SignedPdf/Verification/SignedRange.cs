namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Which bytes a signature covers (ISO 32000-1:2008, 12.8.1, entry /ByteRange), and whether these are the ones it must cover.</summary>
/// <param name="Problems">What is wrong with the range.</param>
/// <param name="GapStart">First byte left out.</param>
/// <param name="GapEnd">First byte covered again.</param>
/// <param name="End">End of the range; 0 when it is malformed.</param>
/// <param name="Revision">Index of the revision that ends where the range ends; null when none does.</param>
internal sealed record SignedRange(
    List<SignatureProblem> Problems,
    int GapStart,
    int GapEnd,
    int End,
    int? Revision
)
{
    private const string Key = "/Contents";

    public static SignedRange Of(PdfDocument document, PdfDictionary signature)
    {
        var bytes = document.Bytes.Span;
        if (
            signature.Find("ByteRange")
                is not PdfArray
                {
                    Items: [
                        PdfInteger start,
                        PdfInteger firstLength,
                        PdfInteger second,
                        PdfInteger secondLength,
                    ],
                }
            || start.Value < 0
            || start.Value > bytes.Length
            || firstLength.Value < 0
            || firstLength.Value > bytes.Length - start.Value
            || second.Value < start.Value + firstLength.Value
            || second.Value > bytes.Length
            || secondLength.Value < 0
            || secondLength.Value > bytes.Length - second.Value
        )
        {
            return new SignedRange([SignatureProblem.ByteRangeMalformed], 0, 0, 0, null);
        }

        var gapStart = (int)(start.Value + firstLength.Value);
        var end = (int)(second.Value + secondLength.Value);
        var problems = new List<SignatureProblem>();
        if (start.Value != 0)
        {
            problems.Add(SignatureProblem.ByteRangeStart);
        }

        int? revision = null;
        for (var i = 0; i < document.Revisions.Length; i++)
        {
            revision = document.Revisions[i].End == end ? i : revision;
        }

        if (revision is null)
        {
            problems.Add(SignatureProblem.ByteRangeEnd);
        }

        var earliest = revision is null or 0 ? 0 : document.Revisions[revision.Value - 1].End;
        if (
            gapStart < earliest
            || signature.Find("Contents") is not PdfString contents
            || !IsString(bytes[gapStart..(int)second.Value], contents.Bytes.AsSpan())
            || !FollowsKey(bytes[..gapStart])
        )
        {
            problems.Add(SignatureProblem.ByteRangeGap);
        }

        return new SignedRange(problems, gapStart, (int)second.Value, end, revision);
    }

    /// <summary>The bytes covered.</summary>
    public byte[] Covered(ReadOnlySpan<byte> document) =>
        [.. document[..GapStart], .. document[GapEnd..End]];

    // Digits of one case only: otherwise a bit of the gap could change without any effect.
    private static bool IsString(ReadOnlySpan<byte> gap, ReadOnlySpan<byte> contents)
    {
        if (gap.Length != (2 * contents.Length) + 2 || gap[0] != '<' || gap[^1] != '>')
        {
            return false;
        }

        var digits = gap[1..^1];
        var isUpper = !digits.ContainsAnyInRange((byte)'a', (byte)'z');
        var isLower = !digits.ContainsAnyInRange((byte)'A', (byte)'Z');
        if (!isUpper && !isLower)
        {
            return false;
        }

        for (var i = 0; i < contents.Length; i++)
        {
            if (
                PdfCharacter.HexadecimalValue(digits[2 * i]) is not { } high
                || PdfCharacter.HexadecimalValue(digits[(2 * i) + 1]) is not { } low
                || (high * 16) + low != contents[i]
            )
            {
                return false;
            }
        }

        return true;
    }

    private static bool FollowsKey(ReadOnlySpan<byte> before)
    {
        while (before.Length > 0 && PdfCharacter.IsWhitespace(before[^1]))
        {
            before = before[..^1];
        }

        return before.EndsWith(System.Text.Encoding.ASCII.GetBytes(Key));
    }
}
