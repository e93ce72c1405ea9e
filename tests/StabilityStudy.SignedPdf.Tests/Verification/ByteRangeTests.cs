using System.Text;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>Byte ranges that leave out more than the signature, or end elsewhere.</summary>
public static class ByteRangeTests
{
    private static byte[] Signed => SignedDocument.SignedTwice;

    [Fact]
    public static void A_range_that_begins_later_is_found() =>
        AssertRange("[0 ", "[9 ", SignatureProblem.ByteRangeStart);

    [Fact]
    public static void A_range_with_a_wider_gap_is_found()
    {
        var (start, end) = Forgery.Gap(Signed, "approver");
        var length = Signed.Length - end;

        AssertRange(
            FormattableString.Invariant($"{start} {end} {length}]"),
            FormattableString.Invariant($"{start} {end + 1} {length - 1}]"),
            SignatureProblem.ByteRangeGap
        );
    }

    [Fact]
    public static void A_range_that_ends_early_is_found()
    {
        var (_, end) = Forgery.Gap(Signed, "approver");

        AssertRange(
            FormattableString.Invariant($"{end} {Signed.Length - end}]"),
            FormattableString.Invariant($"{end} {Signed.Length - end - 1}]"),
            SignatureProblem.ByteRangeEnd
        );
    }

    [Fact]
    public static void A_range_beyond_the_file_is_found()
    {
        var (_, end) = Forgery.Gap(Signed, "approver");

        AssertRange(
            FormattableString.Invariant($"{end} {Signed.Length - end}]"),
            FormattableString.Invariant($"{end} {Signed.Length - end + 1}]"),
            SignatureProblem.ByteRangeMalformed
        );
    }

    private static void AssertRange(string old, string other, SignatureProblem problem)
    {
        var from = SignedDocument.SignedOnce.Length;
        var start = Tampering.Place(Signed, "/ByteRange ", from);
        var end = Tampering.Place(Signed, "]", start) + 1;
        var array = Encoding.Latin1.GetString(Signed[start..end]);
        Assert.Contains(old, array, StringComparison.Ordinal);
        var changed = array.Replace(old, other, StringComparison.Ordinal);

        // The spaces after the array take what became longer.
        var whole = Encoding.Latin1.GetString(Signed[start..(end + 1)]);
        var verification = SignedDocument.Verify(
            Tampering.Replaced(
                Signed,
                whole[..^1].PadRight(array.Length),
                changed.PadRight(array.Length)[..array.Length],
                start
            )
        );

        Assert.Contains(
            problem,
            verification.Signatures.Single(static s => s.FieldName is "approver").Problems
        );
        Assert.False(verification.Holds);
    }
}
