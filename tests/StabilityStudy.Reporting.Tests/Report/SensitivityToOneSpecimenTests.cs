using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Report.Wording;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>Page 1 says how little would have changed the decision.</summary>
public sealed class SensitivityToOneSpecimenTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    public static TheoryData<string> Names => OddStudies.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_choice_that_takes_away_a_supported_time_point_is_on_page_1(string name)
    {
        var analysis = OddStudies.All[name];
        var texts = Texts(analysis);

        Assert.All(
            from sequence in analysis.Sequences
            from cell in sequence.Cells
            where cell.Conclusion == Conclusion.Supported
            from line in cell.Robustness
            where line.Changes && (!line.Question.IsOfFurtherSpecimens || IsWeakest(sequence, line))
            select (cell, line),
            item =>
                Assert.Contains(
                    item.line.Question.IsOfFurtherSpecimens
                        ? $"One more specimen that had {RobustnessWords.WouldHave(item.line.Question)} would end support there: "
                        : $" {RobustnessWords.Of(item.line.Question)}: ",
                    texts.Single(text =>
                        text.Contains(item.cell.Key.TimePoint.ToString(), Comparison)
                    ),
                    Comparison
                )
        );
    }

    /// <summary>One specimen more is enough: then the conclusion hangs on it, and with it every later one.</summary>
    private static bool IsWeakest(Sequence sequence, RobustnessLine line) =>
        line.Question.Count == 1
        && sequence
            .Cells.Where(cell => cell.Conclusion == Conclusion.Supported)
            .Any(cell => cell.Robustness.Contains(line));

    [Fact]
    public void An_earlier_time_point_that_one_more_failure_would_undo_is_named()
    {
        // All of 25 show 85 % (exact bound 0.887), 24 of 25 do not.
        var analysis = StudyRows.Analyze(StudyRows.Protocol(), OddStudies.Specimens(25, "none"));
        var cells = analysis.Sequences[0].Cells;

        Assert.All(cells, cell => Assert.Equal(Conclusion.Supported, cell.Conclusion));
        Assert.Contains(cells[0].Robustness, line => line.Changes);
        Assert.Matches(
            "One more specimen that had been outside the limit would end support there: No anticoagulant at 6 h, 8 h[.]",
            Assert.Single(Texts(analysis))
        );
    }

    private static string[] Texts(StudyAnalysis analysis) =>
        [
            .. ReportBuilder
                .Build(analysis, PaperSize.A4)
                .Sections[0]
                .Blocks.OfType<Attentions>()
                .SelectMany(block => block.Lines)
                .Where(line => line.Severity == "Rests on")
                .Select(line => line.Text),
        ];
}
