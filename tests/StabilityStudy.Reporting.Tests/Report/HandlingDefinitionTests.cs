using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report.Conduct;
using StabilityStudy.Reporting.Report.Plan;
using StabilityStudy.Reporting.Report.Protocol;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>What the report and the protocol document say of how specimens are handled.</summary>
public sealed class HandlingDefinitionTests
{
    private static readonly StudyAnalysis s_silent = OddStudies.All["40 pairs"];

    private static Dictionary<string, string> Said(IEnumerable<Block> blocks) =>
        blocks
            .OfType<DefinitionList>()
            .SelectMany(list => list.Items)
            .ToDictionary(item => item.Term, item => item.Explanation);

    private static Dictionary<string, string> InDocument(StudyProtocol protocol) =>
        Said(
            ProtocolDocument
                .Build(
                    protocol,
                    Core.Planning.StudyPlanner.Of(protocol, new(1, 1)),
                    new string('0', 64),
                    PaperSize.A4,
                    null
                )
                .Sections.SelectMany(section => section.Blocks)
        );

    [Fact]
    public void Without_the_keys_nothing_is_said()
    {
        Assert.Empty(HandlingDefinitions.Planned(s_silent.Protocol));
        Assert.Empty(HandlingDefinitions.Done(s_silent.Facts));
    }

    /// <summary>What is common practice is told as that, and as nothing that the protocol says.</summary>
    [Fact]
    public void The_protocol_document_tells_common_practice_where_the_protocol_does_not_say_how_to_draw() =>
        Assert.Equal(
            "Draw: the protocol does not say how. Common practice: one volume of 3.2 % citrate to nine of blood; citrate tubes first or after a blood culture; a discard tube, of citrate or plain, before a winged set; 3 to 5 complete gentle inversions; at room temperature, never on ice; plasma, never serum.",
            InDocument(s_silent.Protocol)["Handling"]
        );

    [Fact]
    public void The_protocol_document_says_what_is_planned_with_its_source()
    {
        var said = InDocument(
            HandledStudy.Planned(s_silent.Protocol) with
            {
                Freezing = new(
                    TimeSpan.FromHours(4),
                    new(37, 37),
                    TimeSpan.FromMinutes(5),
                    "common practice"
                )
                {
                    TestWithin = TimeSpan.FromHours(1),
                },
            }
        );

        Assert.Equal(
            "Draw: 2.7 mL, plastic, 3.2 % citrate; plasma, never serum; straight needle or winged set; a discard tube, of citrate or plain, before a winged set; citrate tubes first, or after a blood culture; 3 to 5 complete gentle inversions; brought at 15 to 25 °C, never on ice (common practice)."
                + " Spinning: spun twice at 1500 × g for 15 min at 18 to 25 °C; fewer than 10\u00A0×\u00A010⁹/L platelets left in the plasma (processing guidance of 2021)."
                + " Freezing: within 4 h of collection; thawed at 37 °C for 5 min and mixed gently, tested within 1 h of it; never frozen again (common practice).",
            said["Handling"]
        );
        Assert.Contains("(2 may be outside)", said["Group none"], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(DiscardTubeRule.Always, "a discard tube first, of citrate or plain;")]
    [InlineData(DiscardTubeRule.Never, "no discard tube;")]
    public void The_choice_of_discard_tubes_is_said(DiscardTubeRule rule, string says)
    {
        var planned = HandledStudy.Planned(s_silent.Protocol);

        Assert.Contains(
            says,
            InDocument(planned with { Draw = planned.Draw! with { DiscardTube = rule } })[
                "Handling"
            ],
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_report_says_what_was_done()
    {
        var said = Said(ConductSection.Of(HandledStudy.Of(s_silent)).Blocks);

        Assert.Equal("patients of the hospital; in order; decision 14", said["Specimens"]);
        Assert.Equal(
            "drawn into 2.7 mL, plastic, 3.2 % citrate; spun once at 1500 × g for 15 min in C-2, at most 6 × 10⁹/L platelets left; wb-rt at 19.2 to 23.8 °C (logger L-7)",
            said["As done"]
        );
        Assert.Equal("paid by the laboratory; interests: none", said["Funding"]);
    }

    [Fact]
    public void A_thaw_is_said_too() =>
        Assert.Contains(
            "thawed at 36.6 to 37.3 °C for 5 min in WB-1",
            Assert
                .Single(
                    HandlingDefinitions.Done(
                        s_silent.Facts with
                        {
                            Thawing = new(new(36.6m, 37.3m), TimeSpan.FromMinutes(5), "WB-1"),
                        }
                    )
                )
                .Explanation,
            StringComparison.Ordinal
        );
}
