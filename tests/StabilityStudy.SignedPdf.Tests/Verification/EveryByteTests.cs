using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>No byte of a signed file may be free to change.</summary>
public static class EveryByteTests
{
    // A gap takes 32 KB of zeros, of which a few stand for all.
    private const int SampledZeros = 97;

    [Fact]
    public static void A_changed_bit_in_any_byte_is_found()
    {
        var file = SignedDocument.Sign(
            SignedDocument.Sign(SignedDocument.Small, Plain(SignedDocument.Author, Signers.Author)),
            Plain(SignedDocument.Approver, Signers.Approver)
        );
        Assert.True(SignedDocument.Verify(file).Holds);
        var unnoticed = new List<int>();
        for (var place = 0; place < file.Length; place++)
        {
            if (file[place] == (byte)'0' && place % SampledZeros != 0)
            {
                continue;
            }

            var verification = SignatureVerifier.Verify(
                Tampering.Flipped(file, place, place % 8),
                VerificationOptions.WithoutTrust
            );
            if (verification.Holds)
            {
                unnoticed.Add(place);
            }
        }

        Assert.Empty(unnoticed);
    }

    // One certificate in each: others beside the signer's are not signed, and are checked by the chain alone.
    private static SignedPdf.Signing.SignatureRequest Plain(
        SignedPdf.Signing.SignatureRequest request,
        Signer signer
    ) => request with { Key = signer.SigningKey() };
}
