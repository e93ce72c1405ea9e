using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>A decision is data: on each row a window, never longer than supported, with its conditions and days.</summary>
public sealed class DecisionTests
{
    private static readonly StudyAnalysis s_analysis = ExampleStudy
        .Analyze(EvidenceExample.StudyFiles)
        .Analysis;

    private static readonly ConcludedWindow s_row = Assert.Single(ConcludedWindow.Of(s_analysis));

    private static readonly Signatory s_approver = s_analysis.Protocol.Signatories[^1];

    private static readonly DateOnly s_today = DateOnly.FromDateTime(EvidenceExample.Now.DateTime);

    private static readonly string s_name = $"{s_row.Analyte}/{s_row.Group}";

    private static ApproverDecision Made(DecisionRequest request, RecordedDecision? earlier = null)
    {
        var (decision, why) = DecisionMaking.Of(s_analysis, request, earlier);
        Assert.Null(why);
        return decision!;
    }

    private static string Why(DecisionRequest request, RecordedDecision? earlier = null) =>
        DecisionMaking.Of(s_analysis, request, earlier).Why ?? "";

    private static DecisionFault Fault(ApproverDecision decision) =>
        DecisionFaults.Of(s_analysis, s_approver, decision, SignedStatement.CurrentFormat, s_today);

    private static DecisionRequest Window(string window, string? reason = "the drift") =>
        new(true, reason) { Windows = [new(s_name, window)] };

    [Fact]
    public void An_approval_puts_every_supported_window_into_force()
    {
        var decision = Made(DecisionRequest.Approval);

        Assert.Equal(DecisionKind.Approve, decision.Kind);
        Assert.Equal(s_row.Supported, Assert.Single(decision.Windows).Approved);
        Assert.NotNull(s_row.Supported);
        Assert.Equal(DecisionFault.None, Fault(decision));
    }

    [Fact]
    public void A_shorter_window_is_told_with_its_reason_and_a_longer_one_is_refused()
    {
        var shorter = Made(Window("90 min"));

        Assert.Equal(DecisionKind.Conditions, shorter.Kind);
        Assert.Equal(TimeSpan.FromMinutes(90), Assert.Single(shorter.Windows).Approved);
        Assert.Equal(DecisionFault.None, Fault(shorter));
        Assert.Equal(DecisionFault.WithoutReason, Fault(Made(Window("90 min", reason: null))));
        Assert.Equal(DecisionFault.TooLong, Fault(Made(Window("40 h"))));
        Assert.Equal(DecisionFault.Contradictory, Fault(Made(Window("0 min"))));
    }

    [Fact]
    public void An_interim_rule_is_shorter_than_todays_and_stands_alone()
    {
        var none = Window("none");
        DecisionRequest Interim(string time) => none with { Interim = [new(s_name, time)] };

        Assert.Equal(DecisionFault.None, Fault(Made(Interim("10 min"))));
        Assert.Equal(
            DecisionFault.InterimNotShorter,
            Fault(Made(Interim(DurationText.FormatWindow(s_row.Today))))
        );
        Assert.Equal(
            DecisionFault.InterimNotShorter,
            Fault(Made(DecisionRequest.Approval with { Interim = [new(s_name, "10 min")] }))
        );
    }

    [Fact]
    public void Conditions_stand_once_and_rows_name_them()
    {
        var decision = Made(
            DecisionRequest.Approval with
            {
                Conditions = ["tubes closed", "tubes closed"],
                RowConditions = [new(s_name, "not on ice")],
            }
        );

        Assert.Equal(["tubes closed", "not on ice"], decision.Conditions);
        Assert.Equal([1, 2], Assert.Single(decision.Windows).Conditions);
        Assert.Equal(DecisionKind.Conditions, decision.Kind);
        Assert.Equal(DecisionFault.None, Fault(decision));
        Assert.Equal(
            DecisionFault.Contradictory,
            Fault(decision with { Conditions = ["tubes closed"] })
        );
    }

    [Fact]
    public void Days_are_in_order()
    {
        ApproverDecision Days(int effective, int review) =>
            Made(
                DecisionRequest.Approval with
                {
                    Effective = s_today.AddDays(effective),
                    Review = s_today.AddDays(review),
                }
            );

        Assert.Equal(DecisionFault.None, Fault(Days(0, 365)));
        Assert.Equal(DecisionFault.DatesOutOfOrder, Fault(Days(-1, 365)));
        Assert.Equal(DecisionFault.DatesOutOfOrder, Fault(Days(10, 10)));
    }

    [Fact]
    public void A_refusal_says_why_and_approves_nothing()
    {
        var declined = Made(DecisionRequest.Declined("the runs are too few"));

        Assert.Equal(DecisionKind.Decline, declined.Kind);
        Assert.Null(Assert.Single(declined.Windows).Approved);
        Assert.Equal(DecisionFault.None, Fault(declined));
        Assert.Equal(
            DecisionFault.Contradictory,
            Fault(declined with { Windows = Made(DecisionRequest.Approval).Windows })
        );
        Assert.Contains(
            "What is declined",
            Why(DecisionRequest.Declined("x") with { Conditions = ["y"] }),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("INR/nobody", "4 h", "names no row")]
    [InlineData(null, "4 hours", "is no window")]
    [InlineData(null, "", "is no window")]
    public void A_window_that_cannot_be_read_is_answered(
        string? row,
        string text,
        string expected
    ) =>
        Assert.Contains(
            expected,
            Why(new(true, "x") { Windows = [new(row ?? s_name, text)] }),
            StringComparison.Ordinal
        );

    [Fact]
    public void Deciding_again_names_the_earlier_decision_and_its_reason()
    {
        var earlier = new RecordedDecision(
            EvidenceExample.Now.AddDays(-3),
            "Medical Director Two (approver)",
            "declined: too few days"
        );

        Assert.Contains(
            "declined: too few days",
            Why(DecisionRequest.Approval, earlier),
            StringComparison.Ordinal
        );
        var again = Made(
            DecisionRequest.Approval with
            {
                Again = "the days were counted",
            },
            earlier
        );
        Assert.Equal("the days were counted", again.Earlier!.Reason);
        Assert.Contains(
            DecisionWords.Terms(again),
            term =>
                term.Contains("Medical Director Two", StringComparison.Ordinal)
                && term.Contains("the days were counted", StringComparison.Ordinal)
                && term.Contains("declined: too few days", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Rows_of_other_figures_are_not_those_of_the_report()
    {
        var decision = Made(DecisionRequest.Approval);
        var row = decision.Windows[0].Row;
        foreach (
            var other in new[]
            {
                row with
                {
                    Supported = TimeSpan.FromHours(40),
                },
                row with
                {
                    Today = TimeSpan.FromHours(40),
                },
                row with
                {
                    Group = "other",
                },
                row with
                {
                    Reagents = ["another lot"],
                },
                row with
                {
                    Instruments = [],
                },
                row with
                {
                    Sites = ["elsewhere"],
                },
            }
        )
        {
            Assert.Equal(
                DecisionFault.OtherRows,
                Fault(decision with { Windows = [decision.Windows[0] with { Row = other }] })
            );
        }

        Assert.Equal(DecisionFault.OtherRows, Fault(decision with { Windows = [] }));
    }

    [Fact]
    public void What_does_not_fit_into_the_place_on_page_1_is_refused()
    {
        var attempt = EvidenceExample.Sign(
            EvidenceExample.SignedOnce,
            "approver",
            EvidenceExample.Director,
            DecisionRequest.Approval with
            {
                Conditions = [string.Join(' ', Enumerable.Repeat("condition", 150))],
            }
        );

        Assert.Contains(
            "shorten reason and conditions by about",
            Assert.IsType<SigningAttempt.Refused>(attempt).Why,
            StringComparison.Ordinal
        );
    }
}
