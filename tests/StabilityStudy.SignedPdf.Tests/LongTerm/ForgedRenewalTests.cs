using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Tests.Verification;
using StabilityStudy.SignedPdf.Verification;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Tests.LongTerm;

/// <summary>Nothing but data and archive time stamps in their one form may come with a renewal.</summary>
public static class ForgedRenewalTests
{
    private static readonly byte[] s_certificate = Signers.Authority.Certificate.RawData;

    [Fact]
    public static void Data_that_are_no_certificate_are_told() =>
        Assert.Contains(
            DocumentProblem.ValidationDataMalformed,
            Problems(
                ValidationStore.Append(
                    Rewritten.Read(RenewedDocument.Signed),
                    new ValidationData(["hidden text"u8.ToArray()], [], [])
                )
            )
        );

    [Fact]
    public static void Bytes_after_a_certificate_are_told() =>
        Assert.Contains(
            DocumentProblem.ValidationDataMalformed,
            Problems(
                ValidationStore.Append(
                    Rewritten.Read(RenewedDocument.Signed),
                    new ValidationData([(byte[])[.. s_certificate, 0]], [], [])
                )
            )
        );

    [Fact]
    public static void Data_before_any_signature_are_told() =>
        Assert.False(
            Verify(
                ValidationStore.Append(
                    Rewritten.Read(RenewedDocument.Unsigned),
                    new ValidationData([s_certificate], [], [])
                )
            ).Problems.IsEmpty
        );

    [Fact]
    public static void A_time_stamp_before_any_signature_is_told() =>
        Assert.Contains(
            DocumentProblem.RevisionNotSigned,
            Problems(Stamped(RenewedDocument.Unsigned, "archive1"))
        );

    [Fact]
    public static void A_time_stamp_in_the_field_of_a_signatory_is_told()
    {
        var found = Verify(Stamped(RenewedDocument.Signed, "approver"));

        Assert.Equal(
            [SignatureProblem.DictionaryNotSupported],
            Assert.Single(found.ArchiveTimeStamps).Problems
        );
    }

    [Fact]
    public static void Another_object_beside_the_data_is_a_difference() =>
        Assert.Contains(
            Verify(WithData(new PdfIndirectObject(new(9000, 0), new PdfInteger(1)))).Revisions,
            revision => !revision.Differences.IsEmpty
        );

    [Fact]
    public static void A_changed_page_beside_the_data_is_a_difference()
    {
        var before = Rewritten.Read(RenewedDocument.Signed);
        var page = Tampering.Page(before);
        var changed = ((PdfDictionary)before.Find(page)!).With("Rotate", new PdfInteger(180));

        Assert.Contains(
            Verify(WithData(new PdfIndirectObject(page, changed))).Revisions,
            revision => !revision.Differences.IsEmpty
        );
    }

    [Fact]
    public static void Another_entry_in_the_store_has_not_the_form()
    {
        var before = Rewritten.Read(RenewedDocument.Signed);
        var file = ValidationStore.Append(before, new ValidationData([s_certificate], [], []));
        var after = Rewritten.Read(file);
        var store = (PdfReference)after.Catalog.Find("DSS")!;
        var changed = PdfFileWriter.Append(
            before,
            [
                .. after
                    .Revisions[^1]
                    .Numbers.Select(number =>
                        after.Objects.Single(o => o.Reference.Number == number)
                    )
                    .Select(found =>
                        found.Reference.Equals(store)
                            ? found with
                            {
                                Value = ((PdfDictionary)found.Value).With(
                                    "VRI",
                                    PdfDictionary.Empty
                                ),
                            }
                            : found
                    ),
            ]
        );

        Assert.Empty(Verify(file).Problems);
        Assert.Contains(DocumentProblem.RevisionNotInForm, Problems(changed));
    }

    [Fact]
    public static void A_time_stamp_of_other_bytes_is_told()
    {
        var file = RenewedDocument.Renewed.ToArray();
        var (start, end) = Forgery.Gap(file, "archive1");
        file.AsSpan((start + 1)..(end - 1)).Fill((byte)'0');
        var token = new HandMadeStamp(RenewedDocument.FirstRenewal).Over("other"u8.ToArray());

        Assert.Equal(
            [SignatureProblem.TimeStampInvalid],
            Assert
                .Single(Verify(Forgery.WithSignature(file, start, token)).ArchiveTimeStamps)
                .Problems
        );
    }

    [Fact]
    public static void A_time_stamp_earlier_than_what_it_covers_is_told()
    {
        var early = Stamped(
            RenewedDocument.Signed,
            "archive1",
            new HandMadeStamp(Signers.Time.AddHours(-1))
        );
        var late = Stamped(early, "archive2", new HandMadeStamp(Signers.Time.AddHours(-2)));

        Assert.Equal(
            [SignatureProblem.TimeStampBeforeSigning],
            Assert.Single(Verify(early).Signatures).Problems
        );
        Assert.Contains(
            SignatureProblem.TimeStampBeforeSigning,
            Verify(late).ArchiveTimeStamps[0].Problems
        );
    }

    [Fact]
    public static void Any_changed_byte_of_a_renewal_is_told()
    {
        var file = RenewedDocument.Renewed;
        var step = LongProof.Setting("RENEWAL_BYTE_STEP", 401);
        for (var i = RenewedDocument.Signed.Length; i < file.Length; i += step)
        {
            var changed = file.ToArray();
            changed[i] ^= 1;
            Assert.False(Verify(changed).Holds, $"byte {i}");
        }
    }

    private static byte[] WithData(PdfIndirectObject further)
    {
        var before = Rewritten.Read(RenewedDocument.Signed);
        var after = Rewritten.Read(
            ValidationStore.Append(before, new ValidationData([s_certificate], [], []))
        );
        return PdfFileWriter.Append(
            before,
            [
                .. after
                    .Revisions[^1]
                    .Numbers.Select(number =>
                        after.Objects.Single(o => o.Reference.Number == number)
                    )
                    .Append(further)
                    .OrderBy(found => found.Reference.Number),
            ]
        );
    }

    private static byte[] Stamped(byte[] document, string name, HandMadeStamp? stamp = null)
    {
        var before = Rewritten.Read(document);
        var field = SignatureForm.Fields(before)!.Value.Single(one => one.Name == name);
        var file = ArchiveTimeStamp.Append(before, field, out var number);
        var place = SignaturePlaceholder.Find(file, number)!;
        place.WriteRange(file);
        place.WriteSignature(
            file,
            (stamp ?? new HandMadeStamp(RenewedDocument.FirstRenewal)).Over(place.Covered(file))
        );
        return file;
    }

    private static ImmutableArray<DocumentProblem> Problems(byte[] document) =>
        Verify(document).Problems;

    private static DocumentVerification Verify(byte[] document) =>
        RenewalTests.Verify(document, RenewedDocument.FirstRenewal.AddDays(1));
}
