using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
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
                    texts,
                    text =>
                        text.Contains(item.cell.Key.TimePoint.ToString(), Comparison)
                        && text.Contains(
                            WordsOf(item.line.Question),
                            StringComparison.OrdinalIgnoreCase
                        )
                )
        );
    }

    private static string WordsOf(RobustnessQuestion question) =>
        question.Kind == RobustnessKind.OneSubjectLeftOut
            ? $" of the {question.Count} subjects, "
            : RobustnessWords.Of(question)[1..];

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
        Assert.Contains(
            "If one more specimen had been outside the limit, 6 h and 8 h would be inconclusive.",
            Texts(analysis)
        );
    }

    private static string[] Texts(StudyAnalysis analysis) =>
        [
            .. FirstPageParts
                .Decisions(analysis)
                .Rows.SelectMany(row => row.Reservations)
                .Where(item => item.Contradicts)
                .Select(item => item.Text),
        ];
}
