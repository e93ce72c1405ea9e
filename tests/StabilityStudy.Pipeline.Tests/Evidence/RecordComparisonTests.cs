using System.Text;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>A signature states the last line of the study's record: with the record, verify shows what was taken away since.</summary>
[Trait("lane", "slow")]
public sealed class RecordComparisonTests
{
    private static readonly StudyBytes s_files = EvidenceExample.StudyFiles;
    private static readonly Lazy<ReadOnlyMemory<byte>> s_signed = new(() => Signed(Record));

    private static ReadOnlyMemory<byte> Record => s_files.Files[StudyRecord.Name];

    [Fact]
    public void Without_the_record_the_line_is_named()
    {
        var part = Part(s_signed.Value, null);

        Assert.Equal(PartOutcome.Holds, part.Outcome);
        Has(part, $"ended with the line {StudyRecord.NewestSha256(Record)} (SHA-256)");
        Has(part, "--record");
    }

    [Fact]
    public void A_record_that_only_grew_holds()
    {
        var part = Part(s_signed.Value, Then(Then(Record)));

        Assert.Equal(PartOutcome.Holds, part.Outcome);
        Has(part, "line 1 of the study's record was its last one when this was signed");
        Has(part, "Lines added since: 2");
    }

    [Fact]
    public void A_lock_made_after_the_signature_is_not_held_against_it()
    {
        var amended = Amended().Files[StudyRecord.Name];

        Assert.Equal(PartOutcome.Holds, Part(s_signed.Value, amended).Outcome);
    }

    [Fact]
    public void Lines_cut_from_the_end_show()
    {
        var part = Part(Signed(Then(Record)), Record);

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Has(part, "Lines were cut off or changed since");
    }

    [Fact]
    public void An_emptied_record_shows()
    {
        var part = Part(s_signed.Value, ReadOnlyMemory<byte>.Empty);

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Has(part, "Lines were cut off or changed since");
    }

    [Fact]
    public void A_line_changed_inside_shows_although_the_last_is_there()
    {
        var record = Then(Record);
        var changed = Encoding.UTF8.GetBytes(
            Encoding
                .UTF8.GetString(record.Span)
                .Replace(
                    "\"by\":\"LS1\",\"action\":\"lock\"",
                    "\"by\":\"LS2\",\"action\":\"lock\"",
                    StringComparison.Ordinal
                )
        );
        var part = Part(Signed(record), changed);

        Assert.NotEqual(record.ToArray(), changed);
        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Has(part, "compared with the report: record.jsonl");
    }

    [Fact]
    public void A_lock_that_the_report_leaves_out_shows()
    {
        var record = Amended().Files[StudyRecord.Name];
        var part = Part(Signed(record), record);

        Assert.Equal(PartOutcome.Fails, part.Outcome);
        Has(part, "compared with the report: protocol.lock");
    }

    private static StudyBytes Amended() =>
        EvidenceExample.Locked(
            s_files.Edited("protocol.toml", "percent = 8.0", "percent = 7.0"),
            EvidenceExample.LockedAt.AddHours(1),
            EvidenceExample.Author,
            "a second thought"
        );

    private static ReadOnlyMemory<byte> Then(ReadOnlyMemory<byte> record) =>
        (byte[])
            [
                .. record.Span,
                .. StudyRecord
                    .Next(
                        record,
                        new RecordEntry(
                            RecordAction.Report,
                            EvidenceExample.Now,
                            "LS1",
                            ToolVersion.Named,
                            [],
                            []
                        )
                    )
                    .Span,
            ];

    private static ReadOnlyMemory<byte> Signed(ReadOnlyMemory<byte> record)
    {
        using var key = EvidenceExample.Author.Key();
        return Assert
            .IsType<SigningAttempt.Done>(
                ReportSigning.Sign(
                    EvidenceExample.Unsigned,
                    key,
                    new SigningOrder("author", EvidenceExample.Now, null, "MLS", null)
                    {
                        RecordSha256 = StudyRecord.NewestSha256(record),
                    },
                    null
                )
            )
            .Report;
    }

    private static VerifiedPart Part(ReadOnlyMemory<byte> report, ReadOnlyMemory<byte>? record) =>
        ReportVerifier.Verify(report, EvidenceExample.Trusting, record).Parts[3];

    private static void Has(VerifiedPart part, string words) =>
        Assert.Contains(words, string.Join('\n', part.Sentences), StringComparison.Ordinal);
}
