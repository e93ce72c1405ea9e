using System.Security.Cryptography.X509Certificates;
using System.Text;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Stamps;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Signing;

public static class SigningRefusalTests
{
    [Fact]
    public static void A_file_that_is_none_is_refused() =>
        Assert.Equal(
            SigningRefusalReason.DocumentUnreadable,
            SignedDocument.Refusal("no PDF"u8.ToArray(), SignedDocument.Author)
        );

    [Fact]
    public static void An_unknown_field_is_refused() =>
        Assert.Equal(
            SigningRefusalReason.FieldUnknown,
            SignedDocument.Refusal(
                SignedDocument.Unsigned,
                SignedDocument.Author with
                {
                    FieldName = "reviewer",
                }
            )
        );

    [Fact]
    public static void A_document_without_fields_is_refused() =>
        Assert.Equal(
            SigningRefusalReason.FieldUnknown,
            SignedDocument.Refusal(
                Rewritten.Of(DrawnDocument.Draw(pages: 1)),
                SignedDocument.Author
            )
        );

    [Fact]
    public static void A_signed_field_is_refused() =>
        Assert.Equal(
            SigningRefusalReason.FieldAlreadySigned,
            SignedDocument.Refusal(SignedDocument.SignedOnce, SignedDocument.Author)
        );

    [Fact]
    public static void A_broken_earlier_signature_is_refused()
    {
        var broken = SignedDocument.SignedOnce.ToArray();
        var place = Encoding
            .Latin1.GetString(broken)
            .LastIndexOf("(Ada Author)", StringComparison.Ordinal);
        broken[place + 1] = (byte)'E';

        Assert.Equal(
            SigningRefusalReason.EarlierSignatureBroken,
            SignedDocument.Refusal(broken, SignedDocument.Approver)
        );
    }

    [Fact]
    public static void A_revision_after_the_last_signature_is_refused() =>
        Assert.Equal(
            SigningRefusalReason.EarlierSignatureBroken,
            SignedDocument.Refusal(
                Verification.Tampering.WithPaintedPage(SignedDocument.SignedOnce),
                SignedDocument.Approver
            )
        );

    [Fact]
    public static void A_revision_before_the_first_signature_is_refused() =>
        Assert.Equal(
            SigningRefusalReason.EarlierSignatureBroken,
            SignedDocument.Refusal(
                Verification.Tampering.WithPaintedPage(SignedDocument.Unsigned),
                SignedDocument.Author
            )
        );

    [Theory]
    [InlineData(-1000, SigningRefusalReason.CertificateNotYetValid)]
    [InlineData(15000, SigningRefusalReason.CertificateExpired)]
    public static void A_certificate_not_valid_then_is_refused(
        int days,
        SigningRefusalReason reason
    ) =>
        Assert.Equal(
            reason,
            SignedDocument.Refusal(
                SignedDocument.Unsigned,
                SignedDocument.Author with
                {
                    SigningTime = Signers.Time.AddDays(days),
                }
            )
        );

    [Fact]
    public static void A_certificate_for_other_uses_is_refused() =>
        Assert.Equal(
            SigningRefusalReason.KeyUsageLacksSigning,
            SignedDocument.Refusal(
                SignedDocument.Unsigned,
                SignedDocument.Author with
                {
                    Key = Signers
                        .Issue("Ed Encrypter", rsa: true, usage: X509KeyUsageFlags.KeyEncipherment)
                        .SigningKey(),
                }
            )
        );

    [Fact]
    public static void A_character_that_the_font_lacks_is_refused() =>
        Assert.Equal(
            SigningRefusalReason.CharacterNotInFont,
            SignedDocument.Refusal(
                SignedDocument.Unsigned,
                SignedDocument.Author with
                {
                    Stamp = new SignatureStamp(SignedDocument.Font, [new StampLine("Жанна", 9)]),
                }
            )
        );

    [Fact]
    public static void A_time_stamp_authority_that_does_not_answer_is_refused() =>
        Assert.Equal(
            SigningRefusalReason.TimeStampUnavailable,
            SignedDocument.Refusal(SignedDocument.Unsigned, WithTimeStamp(null))
        );

    [Fact]
    public static void An_answer_that_is_no_time_stamp_is_refused() =>
        Assert.Equal(
            SigningRefusalReason.TimeStampInvalid,
            SignedDocument.Refusal(SignedDocument.Unsigned, WithTimeStamp("nothing"u8.ToArray()))
        );

    [Fact]
    public static void Certificates_that_need_more_room_than_there_is_are_refused() =>
        Assert.Equal(
            SigningRefusalReason.SignatureTooLarge,
            SignedDocument.Refusal(
                SignedDocument.Unsigned,
                SignedDocument.Author with
                {
                    Key = Signers.Author.SigningKey([
                        .. Enumerable
                            .Range(0, 60)
                            .Select(static i => Signers.Issue(new string('x', 60) + i, rsa: false)),
                    ]),
                }
            )
        );

    private static SignatureRequest WithTimeStamp(byte[]? answer) =>
        SignedDocument.Author with
        {
            TimeStamp = new TimeStampSource(
                _ => answer is null ? null : (ReadOnlyMemory<byte>?)answer,
                new byte[] { 1, 2, 3, 4, 5, 6, 7, 8 }
            ),
        };
}
