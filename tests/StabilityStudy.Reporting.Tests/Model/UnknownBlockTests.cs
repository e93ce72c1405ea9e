using System.Diagnostics;
using StabilityStudy.Reporting.Html;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Reporting.Tests.Model;

/// <summary>A block or a layer that a drawing does not know is an error, never left out of a report.</summary>
public class UnknownBlockTests
{
    [Fact]
    public void No_drawing_leaves_out_a_block_that_it_does_not_know()
    {
        var unknown = With(new UnknownBlock());

        foreach (var draw in Drawings(unknown).Append(() => TextDrawing.Draw(unknown)))
        {
            Assert.Contains(
                nameof(UnknownBlock),
                Assert.Throws<InvalidOperationException>(draw).Message,
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public void No_drawing_leaves_out_a_layer_that_it_does_not_know()
    {
        var axis = new Axis("x", 0, 1, []);
        var unknown = With(
            new ChartBlock(new Chart("Chart", axis, axis, [new UnknownLayer()]), 40, "Chart.", "")
        );

        foreach (var draw in Drawings(unknown))
        {
            Assert.Contains(
                nameof(UnknownLayer),
                Assert.Throws<UnreachableException>(draw).Message,
                StringComparison.Ordinal
            );
        }
    }

    /// <summary>The report that every drawing is tried on leaves no kind out.</summary>
    [Theory]
    [InlineData(typeof(Block))]
    [InlineData(typeof(ChartLayer))]
    public void The_report_of_the_tests_has_every_kind(Type kind)
    {
        var blocks = DemoReport
            .Create()
            .Sections.SelectMany(section => section.Blocks.Concat(section.Foot))
            .SelectMany(Inside)
            .ToList();
        var there = blocks
            .Concat<object>(blocks.OfType<ChartBlock>().SelectMany(block => block.Chart.Layers))
            .Select(item => item.GetType())
            .ToHashSet();

        var missing = kind
            .Assembly.GetTypes()
            .Where(type => type.IsSubclassOf(kind) && !type.IsAbstract && !there.Contains(type))
            .Select(type => type.Name);

        Assert.Empty(missing);
    }

    private static IEnumerable<Block> Inside(Block block) =>
        block switch
        {
            KeepTogether kept => [block, .. kept.Blocks.SelectMany(Inside)],
            Floating floating => [block, floating.Figure],
            ChartRow row => [block, .. row.Charts],
            _ => [block],
        };

    private static ReportModel With(Block block)
    {
        var model = DemoReport.Create();
        return model with { Sections = [model.Sections[0] with { Blocks = [block] }] };
    }

    private static IEnumerable<Func<object>> Drawings(ReportModel model) =>
        [() => HtmlDrawing.Draw(model), () => PdfDrawing.Draw(model)];

    private sealed record UnknownBlock : Block;

    private sealed record UnknownLayer() : ChartLayer(Legend: null)
    {
        internal override LayerName? Name => null;

        internal override IEnumerable<Position> Coordinates() => [];
    }
}
