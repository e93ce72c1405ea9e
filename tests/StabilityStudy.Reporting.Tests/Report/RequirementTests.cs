using System.Text.RegularExpressions;
using StabilityStudy.Core.Locking;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Report.Record;
using StabilityStudy.Reporting.Report.TimePoints;
using StabilityStudy.Reporting.Report.Wording;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed partial class RequirementTests
{
    public static TheoryData<string> Names => OddStudies.Names;

    /// <summary>Naming the pages must not move them, or the numbers would be wrong.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Every_section_named_exists_and_its_page_is_right(string name)
    {
        foreach (var paper in Enum.GetValues<PaperSize>())
        {
            var analysis = OddStudies.All[name];
            var (model, drawn) = PdfDrawing.DrawSettled(known =>
                ReportBuilder.Build(analysis, paper, known)
            );
            var named = PdfDrawing.PagesOf(model);
            string[] places =
            [
                .. model
                    .Sections.Where(section =>
                        section.Title is RequirementSection.Title or RequirementSection.ClausesTitle
                    )
                    .SelectMany(Named),
            ];

            Assert.Equal(drawn.Pages.Pages, named.Pages);
            Assert.Equal(32, places.Length);
            Assert.Equal(
                Answers(analysis).Select(section => named.Pages[section]).Order(),
                places.Select(page => int.Parse(page, CultureInfo.InvariantCulture)).Order()
            );
        }
    }

    [Fact]
    public void What_is_missing_is_shown_as_missing()
    {
        var analysis = OddStudies.All["40 pairs"];
        var whole = Missing(analysis with { Lock = Locked(LockStanding.BeforeFirstCollection) });
        var open = Missing(
            analysis with
            {
                Lock = Locked(LockStanding.NotLocked),
                Facts = analysis.Facts with { People = [], Instruments = [] },
                Protocol = analysis.Protocol with
                {
                    Analytes =
                    [
                        .. analysis.Protocol.Analytes.Select(analyte =>
                            analyte with
                            {
                                ManufacturerLimit = null,
                                Method = null,
                                BetweenRunCvPercent = null,
                            }
                        ),
                    ],
                    Controls = Core.Protocol.ControlRule.EveryRun,
                },
            }
        );

        string[] told =
        [
            "no proof that the criteria came before the data",
            "no person is named in the files",
            "instruments or lots are not named",
            "the manufacturer's limit of aPTT",
            "the method of aPTT",
            "the between-run CV of aPTT",
        ];
        Assert.All(told, text => Assert.True(Tells(open, text), text));
        Assert.False(Tells(whole, told[0]));

        const string approval = "a protocol document that was signed before the first collection";
        Assert.True(Tells(whole, approval));
        Assert.False(
            Tells(
                Missing(
                    analysis with
                    {
                        Lock = Locked(LockStanding.BeforeFirstCollection, LockLevel.ByApprover),
                    }
                ),
                approval
            )
        );

        LockEvidence Locked(
            LockStanding standing,
            LockLevel level = LockLevel.ThisComputersClock
        ) => analysis.Lock with { Standing = standing, Level = level };
    }

    [Fact]
    public void Words_that_only_the_laboratory_has_are_missing_until_it_states_them()
    {
        var analysis = OddStudies.All["40 pairs"];
        var protocol = analysis.Protocol;
        var silent = Missing(analysis);
        var half = Missing(
            analysis with
            {
                Protocol = protocol with
                {
                    Analytes =
                    [
                        protocol.Analytes[0] with
                        {
                            LevelMeanings = [new(60m, null, "x", null)],
                        },
                    ],
                    Limits =
                    [
                        protocol.Limits[0] with
                        {
                            Rationale = new("MD1", null),
                        },
                        protocol.Limits[1] with
                        {
                            Rationale = new(null, "y"),
                        },
                    ],
                },
            }
        );
        var stated = Missing(analysis with { Protocol = Stated(protocol) });
        var withoutLevels = Missing(
            analysis with
            {
                Protocol = protocol with
                {
                    Analytes = [protocol.Analytes[0] with { DecisionLevels = [] }],
                },
            }
        );

        const string meaning = "what the wrong side of a decision level means for a patient";
        Assert.True(Tells(silent, meaning + ": aPTT 40 s, 60 s"));
        Assert.True(
            Tells(silent, "who chose limit bias, limit each and the share of each, and why")
        );
        Assert.True(Tells(half, meaning + ": aPTT 40 s, above 60 s"));
        Assert.True(
            Tells(
                half,
                "who chose the share of each, and why; who chose limit each; the reason for limit bias"
            )
        );
        Assert.False(Tells(stated, meaning));
        Assert.False(Tells(stated, "who chose"));
        Assert.False(Tells(withoutLevels, meaning));
    }

    /// <summary>Each item of the checklist that facts of handling answer, and what it lacks without them.</summary>
    [Fact]
    public void Items_of_handling_are_complete_where_the_facts_are_stated()
    {
        var silent = OddStudies.All["40 pairs"];
        var stated = HandledStudy.Of(silent);
        string[] told =
        [
            "source of specimens, how they were chosen, consent or ethics: not in the files",
            "why so many",
            "tube type and additive",
            "order of draw",
            "speed and duration of spinning",
            "a temperature record",
            "funding, interests: not in the files",
            "what items 5 to 9 of the checklist lack",
            "labeling and transport",
        ];

        Assert.All(told, text => Assert.True(Tells(Missing(silent), text), text));
        Assert.All(told, text => Assert.False(Tells(Missing(stated), text), text));
        Assert.False(Tells(Missing(stated), "checklist"));
        var note = Both(stated, SectionPages.Unknown)[1].Blocks.OfType<Table>().Single().Note;
        Assert.All(
            ["5 Subjects", "6 Number", "7 Collection", "8 Processing", "9 Storage", "13 Runs"],
            item => Assert.Contains(item, note, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void What_is_stated_in_part_leaves_the_rest_open()
    {
        var stated = HandledStudy.Of(OddStudies.All["40 pairs"]);
        var facts = stated.Facts;
        var half = Missing(
            stated with
            {
                Facts = facts with
                {
                    SpecimenSource = new("patients", null, null),
                    Interests = null,
                    Temperatures = [],
                    Spinning = null,
                },
                Protocol = stated.Protocol with
                {
                    Freezing = new(
                        TimeSpan.FromHours(4),
                        new(36, 38),
                        TimeSpan.FromMinutes(5),
                        "common practice"
                    ),
                },
                Queries =
                [
                    new(
                        Core.Analysis.DrawQueries.DrawNotRecorded,
                        new("specimens.csv", 2, "device"),
                        "",
                        "x"
                    ),
                ],
            }
        );

        string[] told =
        [
            "how they were chosen, consent or ethics: not in the files",
            "interests: not in the files",
            "a temperature record: none was seen",
            "how portions were thawed is not in the files",
            "what specimens.csv does not record of the draw",
            "what items 5, 7, 8 and 9 of the checklist lack",
            "what items 7 to 9 of the checklist lack",
        ];
        Assert.All(told, text => Assert.True(Tells(half, text), text));
        Assert.False(Tells(half, "source of specimens"));
        Assert.False(Tells(half, "funding"));
    }

    /// <summary>The protocol with every word that only the laboratory has.</summary>
    private static Core.Protocol.StudyProtocol Stated(Core.Protocol.StudyProtocol protocol) =>
        protocol with
        {
            Analytes =
            [
                protocol.Analytes[0] with
                {
                    LevelMeanings = [new(40m, null, "a", "b"), new(60.0m, null, "c", "d")],
                },
            ],
            Limits =
            [
                .. protocol.Limits.Select(limit => limit with { Rationale = new("MD1", "e") }),
            ],
            Criteria =
            [
                .. protocol.Criteria.Select(criterion =>
                    criterion with
                    {
                        Rationale = new("MD1", "f"),
                    }
                ),
            ],
        };

    private static bool Tells(string[] missing, string text) =>
        missing.Any(item => item.Contains(text, StringComparison.Ordinal));

    /// <summary>The section that answers each line.</summary>
    private static IEnumerable<string> Answers(Core.Analysis.StudyAnalysis analysis) =>
        Both(analysis, SectionPages.None)
            .SelectMany(Places)
            .Select(section =>
                section == Requirement.EachTimePoint ? GroupSections.FirstTitle(analysis) : section
            );

    /// <summary>The pages named in a report: in the column, in the note, or behind the name of a clause.</summary>
    private static IEnumerable<string> Named(Section section) =>
        section
            .Blocks.OfType<Table>()
            .SelectMany(table => table.Rows)
            .Select(row => row.Cells[1].Text)
            .Concat(
                PageNamed()
                    .Matches(
                        string.Join(
                            " ",
                            section
                                .Blocks.OfType<Table>()
                                .Select(table => table.Note)
                                .Concat(
                                    section
                                        .Blocks.OfType<DefinitionList>()
                                        .SelectMany(list => list.Items)
                                        .Select(item => item.Term)
                                )
                        )
                    )
                    .Select(match => match.Groups["page"].Value)
            );

    [GeneratedRegex(
        @"\(page (?<page>\d+)\)",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex PageNamed();

    private static Section[] Both(Core.Analysis.StudyAnalysis analysis, SectionPages pages) =>
        [
            RequirementSection.Clauses(analysis, pages, full: true),
            RequirementSection.Of(analysis, pages, full: true),
        ];

    /// <summary>Where each line is answered: of what is missing in a column, of the rest in parentheses in the note.</summary>
    private static IEnumerable<string> Places(Section section)
    {
        var table = section.Blocks.OfType<Table>().Single();
        return table
            .Rows.Select(row => row.Cells[2].Text)
            .Concat(
                (table.Note ?? "")
                    .Split('(', ')')
                    .Where((_, i) => i % 2 == 1)
                    .Where(text => !int.TryParse(text, CultureInfo.InvariantCulture, out _))
            );
    }

    private static string[] Missing(Core.Analysis.StudyAnalysis analysis) =>
        [
            .. Both(analysis, SectionPages.Unknown)
                .SelectMany(section => section.Blocks.OfType<Table>())
                .SelectMany(table => table.Rows)
                .Select(row => row.Cells[3].Text),
        ];
}
