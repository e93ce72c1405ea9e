using PdfSharp.Drawing;
using StabilityStudy.Reporting.Charts;
using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Tests;

/// <summary>WCAG 2.2, success criteria 1.4.3 (text at least 4.5) and 1.4.11 (marks that carry a meaning at least 3).</summary>
public sealed class ContrastTests
{
    /// <summary>The third, from memory, is the usual example of a gray that just fails.</summary>
    [Theory]
    [InlineData("#000000", 21)]
    [InlineData("#ffffff", 1)]
    [InlineData("#777777", 4.48)]
    public void Known_ratios(string color, double ratio) =>
        Assert.Equal(ratio, Contrast.WithPaper(color), 0.005);

    [Fact]
    public void Every_text_of_the_pages_stands_out_from_the_paper()
    {
        TextStyle[] styles =
        [
            TextStyle.Title,
            TextStyle.SectionTitle,
            TextStyle.Heading,
            TextStyle.Body,
            TextStyle.Lead,
            TextStyle.Small,
            TextStyle.Caption,
            TextStyle.VerdictWord,
            TextStyle.Mono,
            TextStyle.Running,
        ];

        Assert.All(styles, style => Assert.True(Contrast.WithPaper(Hex(style.Color)) >= 4.5));

        static string Hex(XColor color) => $"#{color.R:x2}{color.G:x2}{color.B:x2}";
    }

    /// <summary>The gray lines of single specimens are a background to the fit; names and markers say which is which.</summary>
    [Fact]
    public void Every_mark_that_carries_a_meaning_stands_out_from_the_paper() =>
        Assert.All(
            new[] { ChartStyle.Ink, ChartStyle.Accent, ChartStyle.HatchGray },
            color =>
                Assert.True(
                    Contrast.WithPaper($"#{color.R:x2}{color.G:x2}{color.B:x2}") >= 3,
                    color.ToString()
                )
        );
}
