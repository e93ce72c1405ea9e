using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Study;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class QuerySectionTests
{
    private const string Refers = "The deviation of 2026-03-09 by LS1 names it too.";

    [Theory]
    [InlineData("S001 was spun late.", "S001: rack left out.", true)]
    [InlineData("S001 at 6 h was tested late.", "S001, 6 h tube: analyzer stopped.", true)]
    [InlineData("S001 at 6 h was tested late.", "S001, 8 h tube: analyzer stopped.", false)]
    [InlineData("S001 at 6 h was tested late.", "S001, 16 h tube: analyzer stopped.", false)]
    [InlineData("No hematocrit: S001, S002.", "S001: short fill.", false)]
    [InlineData("S001 was spun late.", "S0011: rack left out.", false)]
    [InlineData("S001 was spun late.", "XS001-A: rack left out.", false)]
    public void A_deviation_answers_only_a_query_of_the_same_specimen_and_time(
        string message,
        string deviation,
        bool refers
    )
    {
        var analysis = With(message, deviation);
        var table = QuerySection.Of(analysis).Blocks.OfType<Table>().Last();

        Assert.Equal(
            refers,
            table.Rows[0].Cells[2].Text.Contains(Refers, StringComparison.Ordinal)
        );
    }

    private static StudyAnalysis With(string message, string deviation)
    {
        var analysis = OddStudies.All["40 pairs"];
        return analysis with
        {
            Queries = [FirstPageParts.Query("invented") with { Message = message }],
            Facts = analysis.Facts with
            {
                Deviations = [new Deviation(deviation, "LS1", new DateOnly(2026, 3, 9))],
            },
        };
    }
}
