using StabilityStudy.Reporting.Html;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Reporting.Tests.Model;

/// <summary>A block that a drawing does not know is an error, never left out of a report.</summary>
public class UnknownBlockTests
{
    [Fact]
    public void No_drawing_leaves_out_a_block_that_it_does_not_know()
    {
        var model = DemoReport.Create();
        var unknown = model with
        {
            Sections = [model.Sections[0] with { Blocks = [new UnknownBlock()] }],
        };

        Assert.Contains(
            nameof(UnknownBlock),
            Refusal(() => TextDrawing.Draw(unknown)),
            StringComparison.Ordinal
        );
        Assert.Contains(
            nameof(UnknownBlock),
            Refusal(() => HtmlDrawing.Draw(unknown)),
            StringComparison.Ordinal
        );
        Assert.Contains(
            nameof(UnknownBlock),
            Refusal(() => PdfDrawing.Draw(unknown)),
            StringComparison.Ordinal
        );
    }

    private static string Refusal(Func<object> draw) =>
        Assert.Throws<InvalidOperationException>(draw).Message;

    private sealed record UnknownBlock : Block;
}
