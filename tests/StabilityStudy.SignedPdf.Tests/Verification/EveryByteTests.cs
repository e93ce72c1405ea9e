using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>
/// No byte of a signed file may be free to change. Of the signatures and of what stands around them one byte in eleven is
/// tried, and each one when the variable BYTE_STEP is 1.
/// </summary>
[Trait("lane", "slow")]
public static class EveryByteTests
{
    // Of long runs of like bytes (the zeros of a gap, the font) a few stand for all.
    private const int Sampled = 97;

    // No divisor of 8 or 4, so that every bit of a byte and of a digit has its turn.
    private static readonly int Step = LongProof.Setting("BYTE_STEP", 11);

    [Fact]
    public static void A_changed_bit_in_any_byte_is_found()
    {
        var file = SignedDocument.Sign(
            SignedDocument.Sign(SignedDocument.Small, Plain(SignedDocument.Author, Signers.Author)),
            Plain(SignedDocument.Approver, Signers.Approver)
        );
        Assert.True(SignedDocument.Verify(file).Holds);
        (int Start, int End)[] gaps = [Used(file, "author"), Used(file, "approver")];
        var unnoticed = new List<int>();
        for (var place = 0; place < file.Length; place++)
        {
            if (place % (IsOfSignature(file, place, gaps) ? Step : Sampled) != 0)
            {
                continue;
            }

            var verification = SignatureVerifier.Verify(
                Changed(file, place),
                VerificationOptions.WithoutTrust
            );
            if (verification.Holds)
            {
                unnoticed.Add(place);
            }
        }

        Assert.Empty(unnoticed);
    }

    // A hexadecimal digit becomes another one, so that the signatures can still be read; of other bytes one bit turns.
    private static byte[] Changed(byte[] file, int place)
    {
        const string digits = "0123456789ABCDEF";
        var digit = digits.IndexOf((char)file[place], StringComparison.Ordinal);
        var changed = Tampering.Flipped(file, place, place % 8);
        if (digit >= 0)
        {
            changed[place] = (byte)digits[digit ^ (1 << (place % 4))];
        }

        return changed;
    }

    // The digits of the two signatures, which are not covered by themselves, and what stands around them.
    private static bool IsOfSignature(byte[] file, int place, (int Start, int End)[] gaps) =>
        place >= file.Length - 900 || gaps.Any(gap => place >= gap.Start - 60 && place <= gap.End);

    private static (int Start, int End) Used(byte[] file, string field)
    {
        var (start, _) = Forgery.Gap(file, field);
        return (start, start + (2 * Forgery.Container(file, field).Length) + 1);
    }

    // One certificate in each: others beside the signer's are not signed, and are checked by the chain alone.
    private static SignatureRequest Plain(SignatureRequest request, Signer signer) =>
        request with
        {
            Key = signer.SigningKey(),
        };
}
