using System.Text;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>Bytes changed in a document that two people have signed.</summary>
public static class AlteredBytesTests
{
    private static byte[] Signed => SignedDocument.SignedTwice;

    [Theory]
    [InlineData("EmbeddedFile")]
    [InlineData("Metadata")]
    [InlineData("XObject")]
    public static void A_bit_in_a_stream_breaks_every_signature(string type)
    {
        var document = Rewritten.Read(SignedDocument.Unsigned);
        var stream = (PdfStream)document.Find(Tampering.Typed(document, type))!;
        var place = Signed.AsSpan().IndexOf(stream.Encoded.Span) + (stream.Encoded.Length / 2);

        AssertDigests(Tampering.Flipped(Signed, place), "author", "approver");
    }

    [Fact]
    public static void A_bit_in_what_a_page_shows_breaks_every_signature()
    {
        var document = Rewritten.Read(SignedDocument.Unsigned);
        var page = (PdfDictionary)document.Find(Tampering.Page(document))!;
        var contents = page.Find("Contents") is PdfArray array
            ? array.Items[0]
            : page.Find("Contents");
        var stream = Assert.IsType<PdfStream>(document.Resolve(contents));
        var place = Signed.AsSpan().IndexOf(stream.Encoded.Span) + (stream.Encoded.Length / 2);

        AssertDigests(Tampering.Flipped(Signed, place), "author", "approver");
    }

    [Theory]
    [InlineData("(Ada Author)", "(Eve Author)")]
    [InlineData("(I have carried out the study)", "(I have never seen this study.)")]
    [InlineData("(D:20260304093000-05'00)", "(D:20260303093000-05'00)")]
    [InlineData("(Trial laboratory)", "(Other laboratory)")]
    public static void What_the_author_signed_along_breaks_both_signatures(string old, string other)
    {
        var padded = other.PadRight(old.Length)[..old.Length];
        AssertDigests(
            Tampering.Replaced(Signed, old, padded[..^1] + ")", SignedDocument.Unsigned.Length),
            "author",
            "approver"
        );
    }

    [Fact]
    public static void The_decision_breaks_only_the_signature_with_it() =>
        AssertDigests(
            Tampering.Replaced(Signed, "\"decision\":\"approve\"", "\"decision\":\"decline\""),
            "approver"
        );

    [Fact]
    public static void A_bit_of_a_stamp_breaks_the_signatures_on_it()
    {
        var document = Rewritten.Read(Signed);
        var field = (PdfDictionary)document.Find(Tampering.Field(document, "approver"))!;
        var stamp = (PdfStream)
            document.Resolve(document.ResolveDictionary(field.Find("AP"))!.Find("N"))!;
        var place = Signed.AsSpan().LastIndexOf(stream(stamp)) + (stamp.Encoded.Length / 2);

        AssertDigests(Tampering.Flipped(Signed, place), "approver");

        static ReadOnlySpan<byte> stream(PdfStream value) => value.Encoded.Span;
    }

    [Fact]
    public static void A_place_of_a_field_breaks_every_signature() =>
        AssertDigests(
            Tampering.Replaced(Signed, "/Rect [50 500 250 560]", "/Rect [50 500 250 565]"),
            "author",
            "approver"
        );

    [Fact]
    public static void Bytes_in_the_padding_are_found()
    {
        var (_, end) = Forgery.Gap(Signed, "approver");
        var verification = SignedDocument.Verify(Tampering.Flipped(Signed, end - 20));

        Assert.Equal([SignatureProblem.PaddingNotZero], verification.Signatures[1].Problems);
        Assert.False(verification.Holds);
    }

    [Fact]
    public static void The_last_digit_of_the_padding_is_found()
    {
        var (_, end) = Forgery.Gap(Signed, "approver");

        Assert.Contains(
            SignatureProblem.PaddingNotZero,
            SignedDocument.Verify(Tampering.Flipped(Signed, end - 2)).Signatures[1].Problems
        );
    }

    [Fact]
    public static void Small_letters_among_capital_digits_are_found()
    {
        var (start, _) = Forgery.Gap(Signed, "approver");
        var letter = start + Encoding.ASCII.GetString(Signed[start..]).IndexOfAny(['A', 'B', 'C']);

        Assert.Equal(
            [SignatureProblem.ByteRangeGap],
            SignedDocument.Verify(Tampering.Flipped(Signed, letter, bit: 5)).Signatures[1].Problems
        );
    }

    [Fact]
    public static void A_signature_value_of_other_bits_is_found()
    {
        var file = SignedDocument.SignedOnce;
        var (start, _) = Forgery.Gap(file, "author");
        var last = start + (2 * Forgery.Container(file, "author").Length);

        // The last byte of an RSA signature without a time stamp is the last of the container.
        var flipped = Tampering.Replaced(
            file,
            Encoding.ASCII.GetString(file[last..(last + 1)]),
            file[last] == (byte)'0' ? "1" : "0",
            last
        );
        Assert.Equal(
            [SignatureProblem.SignatureMismatch],
            SignedDocument.Verify(flipped).Signatures[0].Problems
        );
    }

    [Fact]
    public static void A_signature_of_zeros_is_found()
    {
        var (start, end) = Forgery.Gap(Signed, "approver");
        var changed = Signed.ToArray();
        changed.AsSpan((start + 1)..(end - 1)).Fill((byte)'0');

        Assert.Equal(
            [SignatureProblem.NotSignedYet],
            SignedDocument.Verify(changed).Signatures[1].Problems
        );
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("%")]
    [InlineData("7 0 obj\n<<>>\nendobj\n")]
    public static void Bytes_after_the_end_are_found(string tail)
    {
        var verification = SignedDocument.Verify([.. Signed, .. HandMadePdf.Bytes(tail)]);

        Assert.Equal([DocumentProblem.BytesAfterEnd], verification.Problems);
        Assert.False(verification.Holds);
        Assert.All(verification.Signatures, static signature => Assert.True(signature.Holds));
    }

    [Fact]
    public static void A_second_end_of_file_makes_it_unreadable() =>
        Assert.Equal(
            [DocumentProblem.Unreadable],
            SignedDocument.Verify([.. Signed, .. "x%%EOF\n"u8]).Problems
        );

    [Fact]
    public static void Bytes_put_in_make_it_unreadable() =>
        Assert.Equal(
            [DocumentProblem.Unreadable],
            SignedDocument.Verify([.. Signed[..100], .. " "u8, .. Signed[100..]]).Problems
        );

    [Fact]
    public static void A_file_cut_in_the_middle_of_a_revision_is_found()
    {
        var verification = SignedDocument.Verify(Signed[..^300]);

        Assert.Equal([DocumentProblem.BytesAfterEnd], verification.Problems);
        Assert.Equal(["approver"], verification.EmptyFields, StringComparer.Ordinal);
        Assert.False(verification.Holds);
    }

    [Fact]
    public static void Another_kind_of_signature_is_not_taken() =>
        Assert.Equal(
            [SignatureProblem.DictionaryNotSupported],
            SignedDocument
                .Verify(
                    Tampering.Replaced(
                        SignedDocument.SignedOnce,
                        "/ETSI.CAdES.detached",
                        "/adbe.pkcs7.detached"
                    )
                )
                .Signatures[0]
                .Problems
        );

    [Fact]
    public static void A_signature_replayed_from_another_report_is_found()
    {
        var other = SignedDocument.Sign(
            SignedDocument.Reserved(DrawnDocument.Draw(pages: 1)),
            SignedDocument.Author
        );

        AssertReplayed(Forgery.Container(other, "author"), "author");
    }

    [Fact]
    public static void A_signature_replayed_in_another_field_is_found() =>
        AssertReplayed(Forgery.Container(SignedDocument.SignedTwice, "approver"), "author");

    [Fact]
    public static void Attachments_swapped_between_two_reports_are_found()
    {
        var document = Rewritten.Read(SignedDocument.Unsigned);
        var streams = document
            .Objects.Select(static found => found.Value)
            .OfType<PdfStream>()
            .Where(static stream =>
                stream.Dictionary.Find("Type") is PdfName { Value: "EmbeddedFile" }
            )
            .OrderByDescending(static stream => stream.Encoded.Length)
            .First();
        var other = Signed.ToArray();
        var place = Signed.AsSpan().IndexOf(streams.Encoded.Span);
        other.AsSpan(place, streams.Encoded.Length).Reverse();

        AssertDigests(other, "author", "approver");
    }

    private static void AssertReplayed(byte[] container, string field)
    {
        var file = SignedDocument.SignedOnce.ToArray();
        var (start, end) = Forgery.Gap(file, field);
        file.AsSpan((start + 1)..(end - 1)).Fill((byte)'0');
        var verification = SignedDocument.Verify(Forgery.WithSignature(file, start, container));

        Assert.Contains(SignatureProblem.DigestMismatch, verification.Signatures[0].Problems);
        Assert.False(verification.Holds);
    }

    private static void AssertDigests(byte[] file, params string[] broken)
    {
        var verification = SignedDocument.Verify(file);

        Assert.Equal(2, verification.Signatures.Length);
        Assert.All(
            verification.Signatures,
            signature =>
            {
                if (broken.Contains(signature.FieldName, StringComparer.Ordinal))
                {
                    Assert.Equal([SignatureProblem.DigestMismatch], signature.Problems);
                }
                else
                {
                    Assert.Empty(signature.Problems);
                }
            }
        );
        Assert.False(verification.Holds);
    }
}
