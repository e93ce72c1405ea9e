using StabilityStudy.Core.Notices;
using StabilityStudy.Pipeline.Notices;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>Notices about the signed report of the smallest example study.</summary>
internal static class NoticeExample
{
    /// <summary>When notices are signed: a month after the report.</summary>
    public static DateTimeOffset SignedAt { get; } = EvidenceExample.Now.AddDays(30);

    public static DateOnly From { get; } = DateOnly.FromDateTime(SignedAt.DateTime).AddDays(5);

    public static NoticeRequest Withdrawal { get; } =
        new(
            NoticeKind.Withdrawn,
            "Medical Director One",
            "a shift in external quality control",
            PaperSize.A4
        )
        {
            Today = DateOnly.FromDateTime(SignedAt.DateTime),
            From = From,
            LooksBack = true,
        };

    public static NoticeRequest Review { get; } =
        Withdrawal with
        {
            Kind = NoticeKind.Reviewed,
            From = null,
            Review = From.AddYears(2),
        };

    private static readonly Lazy<ReadOnlyMemory<byte>> s_withdrawal = new(() =>
        Signed(Drawn(Withdrawal).Pdf)
    );

    /// <summary>The withdrawal, signed.</summary>
    public static ReadOnlyMemory<byte> SignedWithdrawal => s_withdrawal.Value;

    public static NoticeAttempt Make(NoticeRequest request, ReadOnlyMemory<byte>? report = null) =>
        NoticeMaking.Of(
            [new SignedReportFile("report.pdf", report ?? EvidenceExample.SignedTwice)],
            request,
            EvidenceExample.WithoutTrust
        );

    public static NoticeAttempt.Drawn Drawn(NoticeRequest request) =>
        Assert.IsType<NoticeAttempt.Drawn>(Make(request));

    public static SigningAttempt Sign(
        ReadOnlyMemory<byte> notice,
        Signer? signer = null,
        string? name = null,
        DateTimeOffset? at = null
    )
    {
        using var key = (signer ?? EvidenceExample.Director).Key();
        return ReportSigning.Sign(
            notice,
            key,
            new SigningOrder("approver", at ?? SignedAt, name, null, null),
            null
        );
    }

    public static ReadOnlyMemory<byte> Signed(ReadOnlyMemory<byte> notice) =>
        Assert.IsType<SigningAttempt.Done>(Sign(notice)).Report;
}
