using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Study;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class QuerySectionTests
{
    private const string Refers = "The deviation of 2026-03-09 by LS1 names it too.";

    [Theory]
    [InlineData("S001", null, "S001: rack left out.", true)]
    [InlineData("S001", 6, "S001, 6 h tube: analyzer stopped.", true)]
    [InlineData("S001", 6, "S001, 8 h tube: analyzer stopped.", false)]
    [InlineData("S001", 6, "S001, 16 h tube: analyzer stopped.", false)]
    [InlineData(null, null, "S001: short fill.", false)]
    [InlineData("S001", null, "S0011: rack left out.", false)]
    [InlineData("S001", null, "XS001-A: rack left out.", false)]
    public void A_deviation_answers_only_a_query_of_the_same_specimen_and_time(
        string? specimen,
        int? hours,
        string deviation,
        bool refers
    )
    {
        var analysis = With(SpecimenOf(specimen, hours), deviation);
        var table = QuerySection.Of(analysis, full: true).Blocks.OfType<Table>().Last();

        Assert.Equal(
            refers,
            table.Rows[0].Cells[1].Text.Contains(Refers, StringComparison.Ordinal)
        );
    }

    private static QueriedSpecimen? SpecimenOf(string? code, int? hours) =>
        code is null
            ? null
            : new(code, hours is { } delay ? new TimePoint(TimeSpan.FromHours(delay)) : null);

    private static StudyAnalysis With(QueriedSpecimen? specimen, string deviation)
    {
        var analysis = OddStudies.All["40 pairs"];
        return analysis with
        {
            Queries = [FirstPageParts.Query("invented") with { Specimen = specimen }],
            Facts = analysis.Facts with
            {
                Deviations = [new Deviation(deviation, "LS1", new DateOnly(2026, 3, 9))],
            },
        };
    }
}
