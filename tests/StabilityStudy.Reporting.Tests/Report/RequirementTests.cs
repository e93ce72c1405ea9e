using StabilityStudy.Core.Locking;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Report.Record;
using StabilityStudy.Reporting.Report.TimePoints;
using StabilityStudy.Reporting.Report.Wording;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class RequirementTests
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
            var pages = PdfDrawing.PagesOf(ReportBuilder.Build(analysis, paper));
            var model = ReportBuilder.Build(analysis, paper, pages);
            var named = PdfDrawing.PagesOf(model);
            var places = Places(
                model.Sections.Single(section => section.Title == RequirementSection.Title)
            );

            Assert.Equal(pages.Pages, named.Pages);
            Assert.Equal(32, places.Length);
            Assert.Equal(
                Answers(analysis).Select(section => NumberText.Count(named.Pages[section])),
                places
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
        Assert.All(told, text => Assert.Contains(text, open));
        Assert.DoesNotContain(told[0], whole);

        const string approval = "a protocol document that was signed before the first collection";
        Assert.Contains(whole, text => text.Contains(approval, StringComparison.Ordinal));
        Assert.DoesNotContain(
            Missing(
                analysis with
                {
                    Lock = Locked(LockStanding.BeforeFirstCollection, LockLevel.ByApprover),
                }
            ),
            text => text.Contains(approval, StringComparison.Ordinal)
        );

        LockEvidence Locked(
            LockStanding standing,
            LockLevel level = LockLevel.ThisComputersClock
        ) => analysis.Lock with { Standing = standing, Level = level };
    }

    /// <summary>The section that answers each line.</summary>
    private static IEnumerable<string> Answers(Core.Analysis.StudyAnalysis analysis) =>
        Places(RequirementSection.Of(analysis, SectionPages.None))
            .Select(section =>
                section == Requirement.EachTimePoint ? GroupSections.FirstTitle(analysis) : section
            );

    /// <summary>Where each line is answered: in the tables of what is missing in a column, in that of what is not every second cell.</summary>
    private static string[] Places(Section section)
    {
        var tables = section.Blocks.OfType<Table>().ToArray();
        return
        [
            .. tables[..2].SelectMany(table => table.Rows).Select(row => row.Cells[2].Text),
            .. tables[2..]
                .SelectMany(table => table.Rows)
                .SelectMany(row => row.Cells.Where((_, i) => i % 2 == 1))
                .Select(cell => cell.Text)
                .Where(text => text.Length > 0),
        ];
    }

    private static string[] Missing(Core.Analysis.StudyAnalysis analysis) =>
        [
            .. RequirementSection
                .Of(analysis, SectionPages.Unknown)
                .Blocks.OfType<Table>()
                .Take(2)
                .SelectMany(table => table.Rows)
                .Select(row => row.Cells[3].Text),
        ];
}
