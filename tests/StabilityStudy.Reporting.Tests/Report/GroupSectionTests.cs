using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report;
using StabilityStudy.Reporting.Report.TimePoints;
using StabilityStudy.Reporting.Report.Wording;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>A page for each group, its time points side by side; every estimate in one table; and what a full report shows beside.</summary>
public sealed class GroupSectionTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    [Fact]
    public void Time_points_stand_side_by_side_with_verdicts_and_conclusions()
    {
        var analysis = OddStudies.All["40 pairs"];
        var sequence = analysis.Sequences[0];
        var table = BlocksOf(analysis).OfType<Table>().Single();

        Assert.Equal(
            sequence.Cells.Select(cell => cell.Key.TimePoint.ToString()),
            table.Columns.Skip(1).Select(column => column.Header)
        );
        Assert.Equal(
            sequence.Cells.Select(cell => TradeWords.Of(cell.Conclusion)),
            table.Rows[^1].Cells.Skip(1).Select(cell => cell.Text)
        );
        foreach (var (row, result) in table.Rows.Zip(sequence.Cells[0].Criteria))
        {
            Assert.StartsWith(result.Criterion + ": ", row.Cells[0].Text, Comparison);
            Assert.EndsWith(", " + TradeWords.Of(result.Verdict), row.Cells[1].Text, Comparison);
        }
    }

    [Fact]
    public void The_change_plot_draws_the_allowable_bias_and_the_deciding_interval()
    {
        var analysis = OddStudies.All["40 pairs"];
        var blocks = BlocksOf(analysis);
        var chart = blocks.OfType<ChartRow>().First().Charts[0].Chart;
        var bias = analysis.Sequences[0].Cells[0].Criteria.OfType<BiasResult>().Single();

        Assert.Equal(
            [-7.5, 7.5],
            chart
                .Layers.OfType<ReferenceLine>()
                .Where(line => line is { Dash: DashStyle.Dashed, Weight: LineWeight.Heavy })
                .Select(line => line.Value)
                .Order()
        );
        var band = Assert.Single(chart.Layers.OfType<BandLayer>());
        Assert.Equal(bias.Mean.Value!.Lower, band.Points[0].Lower);
        Assert.Equal(bias.Mean.Value!.Upper, band.Points[0].Upper);
        // The key stands once, before the figures.
        Assert.All(chart.Layers, layer => Assert.Null(layer.Legend));
        Assert.Contains(
            blocks.OfType<KeyMessage>().Where(text => text.IsCaption),
            text => text.Text.Contains("heavy dashes: allowable bias", Comparison)
        );
    }

    [Fact]
    public void What_neither_decides_nor_describes_is_in_a_full_report_alone()
    {
        var analysis = OddStudies.All["40 pairs"];
        var usual = ReportBuilder.Build(analysis, PaperSize.A4);
        var full = ReportBuilder.Build(analysis, PaperSize.A4, full: true);

        foreach (
            var name in new[]
            {
                "Ordinary least squares",
                "Test of no mean change",
                "Correlation r",
            }
        )
        {
            Assert.DoesNotContain(name, Estimates(usual), Comparison);
            Assert.Contains(name, Estimates(full), Comparison);
        }

        Assert.Contains("Weighted Deming", Estimates(usual), Comparison);
        Assert.DoesNotContain(usual.Sections, section => section.Title == FurtherSection.Title);
        Assert.Contains(full.Sections, section => section.Title == FurtherSection.Title);
    }

    private static ImmutableArray<Block> BlocksOf(Core.Analysis.StudyAnalysis analysis) =>
        Assert.IsType<KeepTogether>(Assert.Single(GroupSections.Of(analysis)[0].Blocks)).Blocks;

    private static string Estimates(ReportModel model) =>
        string.Join(
            "\n",
            model
                .Sections.Single(section => section.Title == EstimateSection.Title)
                .Blocks.OfType<Table>()
                .SelectMany(table => table.Rows)
                .Select(row => row.Cells[0].Text)
        );
}
