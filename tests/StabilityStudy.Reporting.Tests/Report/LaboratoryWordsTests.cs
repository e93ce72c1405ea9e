using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Study;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Decision;
using StabilityStudy.Reporting.Report.Plan;
using StabilityStudy.Reporting.Report.Protocol;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>Who chose a limit or a share and why, and what the wrong side of a level means: in the words of the protocol, or that it states none.</summary>
public sealed class LaboratoryWordsTests
{
    private static StudyAnalysis Study => OddStudies.All["40 pairs"];

    [Theory]
    [InlineData("MD1", "why so.", "The medical director (MD1) chose this share: why so.")]
    [InlineData("the board", "why so", "The board chose this share: why so.")]
    [InlineData(
        "MD1",
        null,
        "The medical director (MD1) chose this share; the protocol gives no reason."
    )]
    [InlineData(
        null,
        "why so",
        "The protocol does not state who chose this share; its reason: why so."
    )]
    [InlineData(null, null, "The protocol does not state who chose this share, or why.")]
    public void Page_1_names_who_chose_the_share_and_why_or_that_nobody_states_it(
        string? by,
        string? reason,
        string sentence
    ) =>
        Assert.EndsWith(
            "at least 85 of 100 patients. " + sentence,
            WithinLimit.Of(WithShares(new Rationale(by, reason))),
            StringComparison.Ordinal
        );

    [Fact]
    public void Shares_that_one_person_chose_for_two_reasons_are_one_sentence() =>
        Assert.EndsWith(
            " The medical director (MD1) chose 85 of 100 (no dose depends on it) and 90 of 100 (a dose depends on it).",
            WithinLimit.Of(
                WithShares(
                    new Rationale("MD1", "no dose depends on it"),
                    new Rationale("MD1", "a dose depends on it")
                )
            ),
            StringComparison.Ordinal
        );

    [Fact]
    public void Shares_of_two_persons_or_of_none_have_a_sentence_each() =>
        Assert.EndsWith(
            " The medical director (MD1) chose the share of 85 of 100: why so. The protocol does not state who chose the share of 90 of 100, or why.",
            WithinLimit.Of(WithShares(new Rationale("MD1", "why so"), Rationale.NotStated)),
            StringComparison.Ordinal
        );

    [Fact]
    public void The_same_share_chosen_for_two_reasons_names_its_criteria()
    {
        var study = WithShares(new Rationale("MD1", "a"), new Rationale("MD1", "b"));
        var same = study with
        {
            Protocol = study.Protocol with
            {
                Criteria =
                [
                    .. study.Protocol.Criteria.Select(criterion =>
                        criterion is IndividualCriterion each
                            ? each with
                            {
                                SharePercentMinimum = 85,
                            }
                            : criterion
                    ),
                ],
            },
        };

        Assert.EndsWith(
            " chose 85 of 100 of criterion each-0 (a) and 85 of 100 of criterion each-1 (b).",
            WithinLimit.Of(same),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Shares_chosen_alike_are_named_once() =>
        Assert.EndsWith(
            " The protocol does not state who chose these shares, or why.",
            WithinLimit.Of(WithShares(Rationale.NotStated, Rationale.NotStated)),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_crossing_names_the_harm_of_the_sides_to_which_results_moved()
    {
        var fell = Crossing(
            [new(40, null, "a clot could be missed.", "imaging could be needless")],
            down: ["S1", "S2"],
            up: []
        );
        var both = Crossing(
            [new(40, null, "a clot could be missed", "imaging could be needless")],
            down: ["S1", "S2"],
            up: ["S3"]
        );

        Assert.EndsWith(". Below it, a clot could be missed.", fell, StringComparison.Ordinal);
        Assert.EndsWith(
            ". Below it, a clot could be missed. Above it, imaging could be needless.",
            both,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_harm_that_the_protocol_does_not_state_is_not_guessed()
    {
        Assert.DoesNotContain(
            "elow it,",
            Crossing([], down: ["S1", "S2"], up: ["S3"]),
            StringComparison.Ordinal
        );
        Assert.EndsWith(
            ". Below it, a clot could be missed.",
            Crossing(
                [new(40, null, "a clot could be missed", null)],
                down: ["S1", "S2"],
                up: ["S3"]
            ),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(
            "a clot could be missed",
            Crossing([new(60, null, "a clot could be missed", null)], down: ["S1", "S2"], up: []),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_harm_is_told_once_a_row()
    {
        var texts = Crossings(
            [new(40, null, "a clot could be missed", "imaging could be needless")],
            [
                ["S1", "S2"],
                ["S1", "S2"],
            ],
            [
                [],
                ["S3"],
            ]
        );

        Assert.EndsWith("a clot could be missed.", texts[0], StringComparison.Ordinal);
        Assert.DoesNotContain("a clot", texts[1], StringComparison.Ordinal);
        Assert.EndsWith("imaging could be needless.", texts[1], StringComparison.Ordinal);
    }

    [Fact]
    public void The_tables_and_the_protocol_document_show_who_and_why()
    {
        var protocol = WithShares(new Rationale("MD1", "why this share")).Protocol;
        var stated = protocol with
        {
            Limits =
            [
                protocol.Limits[0] with
                {
                    Rationale = new("MD1", "why this limit"),
                },
                protocol.Limits[1],
            ],
            Analytes =
            [
                protocol.Analytes[0] with
                {
                    LevelMeanings = [new(40, null, "a clot could be missed", null)],
                },
            ],
        };
        var document = ProtocolDocument.Build(
            stated,
            StudyPlanner.Of(stated, new(1, 1)),
            new string('a', 64),
            PaperSize.A4,
            null
        );
        var blocks = document.Sections.SelectMany(section => section.Blocks).ToArray();
        var items = blocks.OfType<DefinitionList>().SelectMany(list => list.Items).ToArray();
        var inReport = CriteriaTables.Limits(stated, People);

        Assert.Equal(
            ["invented. The medical director (MD1) chose this limit: why this limit.", "invented"],
            inReport.Rows.Select(row => row.Cells[2].Text)
        );
        Assert.Equal(
            ["Source: invented. MD1 chose this limit: why this limit.", "Source: invented."],
            items.Select(item => item.Aside).Where(aside => aside.Length > 0)
        );
        Assert.Contains(
            "The protocol does not state who chose limit each, and why.",
            blocks.OfType<Paragraph>().Select(paragraph => paragraph.Text)
        );
        Assert.EndsWith(
            " MD1 chose this share: why this share.",
            items.Single(item => item.Term == stated.Criteria[1].Id).Explanation,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(
            "chose",
            items.Single(item => item.Term == stated.Criteria[0].Id).Explanation,
            StringComparison.Ordinal
        );
        Assert.Contains(
            new Definition(
                "Decision levels",
                "aPTT: a result wrongly below 40 s: a clot could be missed; what the wrong side means for a patient is not stated: aPTT above 40 s, 60 s."
            ),
            items
        );
    }

    private static ImmutableArray<Person> People =>
        [new("MD1", "Medical Director One", "Medical director")];

    /// <summary>The study with a criterion on single specimens a rationale, 85 % of the first, 90 % of the second.</summary>
    private static StudyAnalysis WithShares(params Rationale[] rationales)
    {
        var each = Study.Protocol.Criteria.OfType<IndividualCriterion>().Single();
        return Study with
        {
            Facts = Study.Facts with { People = People },
            Protocol = Study.Protocol with
            {
                Criteria =
                [
                    Study.Protocol.Criteria[0],
                    .. rationales.Select(
                        (rationale, i) =>
                            each with
                            {
                                Id = $"each-{i}",
                                SharePercentMinimum = 85 + 5 * i,
                                Rationale = rationale,
                            }
                    ),
                ],
            },
        };
    }

    private static string Crossing(
        ImmutableArray<LevelMeaning> meanings,
        ImmutableArray<string> down,
        ImmutableArray<string> up
    ) => Crossings(meanings, [down], [up])[0];

    /// <summary>The reservations on results that crossed 40 s at each time point, both of them supported.</summary>
    private static string[] Crossings(
        ImmutableArray<LevelMeaning> meanings,
        ImmutableArray<ImmutableArray<string>> down,
        ImmutableArray<ImmutableArray<string>> up
    )
    {
        var sequence = Study.Sequences[0] with
        {
            Cells =
            [
                .. Study
                    .Sequences[0]
                    .Cells.Take(down.Length)
                    .Select(
                        (cell, i) =>
                            cell with
                            {
                                Conclusion = Conclusion.Supported,
                                SideChanges =
                                [
                                    new SideChange(40, 40, up[i], down[i], 0.1)
                                    {
                                        BaselinesBelow = 20,
                                    },
                                ],
                            }
                    ),
            ],
        };
        var analysis = Study with
        {
            Sequences = [sequence],
            Protocol = Study.Protocol with
            {
                Analytes = [Study.Protocol.Analytes[0] with { LevelMeanings = meanings }],
            },
        };
        return
        [
            .. Reservations
                .Of(analysis, sequence)
                .Where(item =>
                    item.Point.StartsWith("Waiting moved results", StringComparison.Ordinal)
                )
                .Select(item => item.Text),
        ];
    }
}
