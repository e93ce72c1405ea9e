using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.LongTerm;

/// <summary>Signatures are judged at the time that an archive time stamp proves, with what the document itself keeps.</summary>
public static class RenewalTests
{
    private static readonly DateTimeOffset s_afterCertificates = Year(2030);

    [Fact]
    public static void A_renewed_document_holds_with_one_revision_of_data_and_one_time_stamp()
    {
        var found = Verify(RenewedDocument.Renewed, RenewedDocument.FirstRenewal);

        Assert.True(found.Holds);
        Assert.Equal(
            [false, false, true, false],
            found.Revisions.Select(r => r.BringsValidationData)
        );
        var stamp = Assert.Single(found.ArchiveTimeStamps);
        Assert.Equal(RenewedDocument.FirstRenewal.ToUniversalTime(), stamp.TimeStamp?.Time);
        Assert.Equal(4, stamp.Revision);
        Assert.Equal(["approver"], found.EmptyFields);
    }

    [Fact]
    public static void The_document_keeps_certificates_and_lists()
    {
        var kept = ValidationStore.Read(Rewritten.Read(RenewedDocument.Renewed));

        Assert.Equal(
            [RenewedDocument.Author.Certificate.RawData, Signers.Authority.Certificate.RawData],
            kept.Certificates.Select(item => item.ToArray())
        );
        Assert.Equal([RenewedDocument.List], kept.RevocationLists.Select(item => item.ToArray()));
    }

    [Fact]
    public static void Without_renewal_nothing_proves_the_time()
    {
        var signature = Assert.Single(
            Verify(RenewedDocument.Signed, s_afterCertificates).Signatures
        );

        Assert.Null(signature.ProvenTime);
    }

    [Fact]
    public static void The_time_is_proven_after_the_certificate_has_ended()
    {
        var signature = Assert.Single(
            Verify(RenewedDocument.Renewed, s_afterCertificates).Signatures
        );

        Assert.Equal(RenewedDocument.FirstRenewal, signature.ProvenTime);
        Assert.Equal(ChainOutcome.Trusted, signature.Chain.Outcome);
    }

    [Fact]
    public static void An_authority_that_is_not_trusted_proves_nothing()
    {
        var signature = Assert.Single(
            SignatureVerifier
                .Verify(RenewedDocument.Renewed, new VerificationOptions(Signers.Trust, []))
                .Signatures
        );

        Assert.Null(signature.ProvenTime);
    }

    [Theory]
    [InlineData(-1, RevocationOutcome.Revoked)]
    [InlineData(1, RevocationOutcome.NotRevoked)]
    public static void A_revocation_counts_up_to_the_archive_time_stamp(
        int days,
        RevocationOutcome expected
    )
    {
        var list = Signers.RevocationListOf(
            RenewedDocument.FirstRenewal.AddDays(3),
            RenewedDocument.FirstRenewal.AddDays(days),
            RenewedDocument.Author
        );
        var signature = Assert.Single(
            SignatureVerifier
                .Verify(
                    RenewedDocument.Renewed,
                    RenewedDocument.Trusting(RenewedDocument.FirstRenewal.AddDays(4), list)
                )
                .Signatures
        );

        Assert.Equal(expected, signature.Chain.Revocation);
    }

    [Fact]
    public static void A_second_renewal_keeps_the_list_that_was_made_after_the_first()
    {
        var time = Year(2027);
        var twice = RenewedDocument.Renew(
            RenewedDocument.Renewed,
            RenewedDocument.Trusting(time, Signers.RevocationListOf(time.AddDays(-1), time)),
            new HandMadeStamp(time) { Authority = RenewedDocument.SecondAuthority }.Source
        );
        var found = Verify(twice, Year(2040));

        Assert.True(found.Holds);
        Assert.Equal(RevocationOutcome.NotRevoked, found.Signatures[0].Chain.Revocation);
        Assert.Equal(RenewedDocument.FirstRenewal, found.Signatures[0].ProvenTime);
        Assert.Equal(
            [time, null],
            found.ArchiveTimeStamps.Select(stamp => stamp.TimeStamp?.ExistedAt)
        );
        Assert.Equal(
            RevocationOutcome.NotRevoked,
            found.ArchiveTimeStamps[0].TimeStamp?.Chain.Revocation
        );
    }

    [Fact]
    public static void Somebody_may_sign_after_a_renewal()
    {
        var signed = SignedDocument.Sign(
            RenewedDocument.Renewed,
            SignedDocument.Approver with
            {
                SigningTime = RenewedDocument.FirstRenewal.AddDays(1),
            }
        );
        var found = Verify(signed, RenewedDocument.FirstRenewal.AddDays(2));

        Assert.True(found.Holds);
        Assert.Equal(
            [RenewedDocument.FirstRenewal, null],
            found.Signatures.Select(signature => signature.ProvenTime)
        );
    }

    [Fact]
    public static void Data_may_stand_without_a_time_stamp_at_the_end_but_no_more_may_follow()
    {
        var data = RenewedDocument.Renew(
            RenewedDocument.Signed,
            RenewedDocument.Trusting(RenewedDocument.FirstRenewal),
            null
        );
        Assert.True(Verify(data, RenewedDocument.FirstRenewal).Holds);

        Assert.Equal(RenewalRefusal.DataNotStamped, Refusal(data, [RenewedDocument.List], null));
        Assert.Equal(RenewalRefusal.NothingToAdd, Refusal(data, [], null));
        var twice = ValidationStore.Append(
            Rewritten.Read(data),
            new ValidationData([], [RenewedDocument.List], [])
        );
        Assert.Contains(
            DocumentProblem.RevisionNotSigned,
            Verify(twice, RenewedDocument.FirstRenewal).Problems
        );
    }

    [Fact]
    public static void Four_archive_time_stamps_find_room_and_no_fifth()
    {
        var document = RenewedDocument.Renewed;
        var source = new HandMadeStamp(Year(2027)) { Authority = RenewedDocument.SecondAuthority };
        for (var i = 1; i < ArchiveFields.Count; i++)
        {
            document = RenewedDocument.Renew(
                document,
                RenewedDocument.Trusting(Year(2027)),
                source.Source
            );
        }

        Assert.Equal(ArchiveFields.Count, Verify(document, Year(2028)).ArchiveTimeStamps.Length);
        Assert.Equal(RenewalRefusal.NoRoom, Refusal(document, [], source.Source));
    }

    [Fact]
    public static void What_cannot_be_renewed_is_refused()
    {
        var source = new HandMadeStamp(RenewedDocument.FirstRenewal).Source;

        Assert.Equal(RenewalRefusal.DoesNotVerify, Refusal(RenewedDocument.Unsigned, [], source));
        Assert.Equal(
            RenewalRefusal.TimeStampUnavailable,
            Refusal(RenewedDocument.Signed, [], source with { Ask = _ => null })
        );
        Assert.Equal(
            RenewalRefusal.TimeStampInvalid,
            Refusal(RenewedDocument.Signed, [], source with { Ask = _ => new byte[] { 0x30, 0 } })
        );
        Assert.False(
            PdfRenewal
                .Renew(RenewedDocument.Signed, VerificationOptions.WithoutTrust, source)
                .TryGet(out _, out var refusal)
        );
        Assert.Equal(RenewalRefusal.NotTrusted, refusal);
    }

    internal static DocumentVerification Verify(byte[] document, DateTimeOffset now) =>
        SignatureVerifier.Verify(document, RenewedDocument.Trusting(now));

    private static RenewalRefusal? Refusal(
        byte[] document,
        byte[][] lists,
        StabilityStudy.SignedPdf.Signing.TimeStampSource? source
    )
    {
        Assert.False(
            PdfRenewal
                .Renew(document, RenewedDocument.Trusting(Year(2027), lists), source)
                .TryGet(out _, out var refusal)
        );
        return refusal;
    }

    private static DateTimeOffset Year(int year) => new(year, 6, 1, 12, 0, 0, TimeSpan.Zero);
}
