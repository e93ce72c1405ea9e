using StabilityStudy.Core.Notices;
using StabilityStudy.Core.Register;
using static StabilityStudy.Core.Tests.Register.RegisterExample;

namespace StabilityStudy.Core.Tests.Register;

/// <summary>Until when records are kept: two years after the last use (42 CFR 493.1105, from memory).</summary>
public sealed class RecordRetentionTests
{
    private static KeptRecords First(DateOnly day, params RegisteredReport[] reports) =>
        RecordRetention.Of(new WindowRegister([.. reports]), day, 2)[0];

    [Fact]
    public void What_is_in_use_is_kept_two_years_from_today_at_least()
    {
        var kept = First(Today, Approved);

        Assert.Null(kept.LastUse);
        Assert.Equal(Today.AddYears(2), kept.NotBefore);
    }

    [Fact]
    public void What_was_replaced_is_kept_two_years_after_the_day_before()
    {
        var next = Second(None("4 h", "5 h", "5 h")) with { Replaces = Approved.InputDigest };

        var kept = First(new(2026, 7, 1), Approved, next);

        Assert.Equal(new DateOnly(2026, 4, 21), kept.LastUse);
        Assert.Equal(new DateOnly(2028, 4, 21), kept.NotBefore);
    }

    [Fact]
    public void What_was_declined_is_kept_two_years_after_the_decision()
    {
        var kept = First(
            Today,
            Approved with
            {
                Standing = ReportStanding.Declined,
                Effective = null,
                Windows = [None("4 h", "6 h", null)],
            }
        );

        Assert.Equal(DateOnly.FromDateTime(SignedAt.DateTime), kept.LastUse);
    }

    [Theory]
    [InlineData(ReportStanding.NotTrusted)]
    [InlineData(ReportStanding.NotDecided)]
    public void What_nobody_knows_is_kept_like_what_is_in_use(ReportStanding standing)
    {
        Assert.Null(First(Today, Approved with { Standing = standing, Windows = [] }).LastUse);
        Assert.Null(First(Today, Approved with { Standing = standing }).LastUse);
    }

    [Fact]
    public void What_was_withdrawn_in_part_is_in_use_and_what_was_withdrawn_entirely_is_not()
    {
        var report = Approved with { FileSha256s = ["state"], Windows = [Approved.Windows[0]] };
        var window = new NoticedWindow(
            "aPTT",
            "none",
            "n",
            "wb-rt",
            "w",
            Time("4 h"),
            new(2026, 4, 1)
        )
        {
            Window = Time("6 h"),
            Instruments = ["AN1"],
        };
        KeptRecords After(NoticedWindow noticed) =>
            RecordRetention.Of(
                new WindowRegister([report])
                {
                    Notices =
                    [
                        new RegisteredNotice(
                            "w.pdf",
                            NoticeStanding.Counts,
                            new Notice(
                                NoticeKind.Withdrawn,
                                "Medical Director One",
                                "approver",
                                "r"
                            )
                            {
                                From = new(2026, 5, 1),
                                Reports =
                                [
                                    new("WB-RT-APTT", report.InputDigest!, "state", "d", [noticed]),
                                ],
                            }
                        )
                        {
                            SignedAt = SignedAt.AddDays(30),
                        },
                    ],
                },
                Today,
                2
            )[0];

        Assert.Null(After(window with { Remaining = Time("5 h") }).LastUse);
        Assert.Equal(new DateOnly(2026, 4, 30), After(window).LastUse);
    }
}
