using System.Globalization;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Model;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>
/// How many pages the reports of the examples have, and how much of each stays blank. Both are printed; the numbers here are those of today, so that
/// a change that makes a report longer is seen.
/// </summary>
public sealed class PageCountTests(ITestOutputHelper output)
{
    /// <summary>Height of the running lines at the head and the foot of a page, in points.</summary>
    private const double RunningLines = 48;

    [Theory]
    [InlineData("small-paired-sheet", 7, 8)]
    [InlineData("aptt-room-temperature", 14, 15)]
    [InlineData("frozen-plasma", 14, 14)]
    [InlineData("routine-room-temperature", 36, 38)]
    public void An_example_has_no_more_pages_than_before_and_no_page_mostly_blank(
        string example,
        int mostOnA4,
        int mostOnLetter
    )
    {
        var study = ExampleStudy.Analyze(ExampleStudy.OfFolder(example));
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            using var document = PdfDocument.Open(StudyPipeline.Render(study, paper).Pdf.ToArray());
            var blank = document.GetPages().Select(Blank).ToArray();
            output.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{example} on {paper}: {blank.Length} pages; blank {string.Join(", ", blank.Select(share => share.ToString("0 %", CultureInfo.InvariantCulture)))}"
                )
            );

            Assert.InRange(blank.Length, 1, paper == PaperSize.A4 ? mostOnA4 : mostOnLetter);
            Assert.All(
                blank[..^1],
                share => Assert.InRange(share, 0, paper == PaperSize.A4 ? 0.5 : 0.55)
            );
        }
    }

    /// <summary>Share of the page between its lowest text and its foot.</summary>
    private static double Blank(Page page)
    {
        var lowest = page
            .Letters.Select(letter => letter.BoundingBox.Bottom)
            .Where(bottom => bottom > RunningLines)
            .DefaultIfEmpty(page.Height)
            .Min();
        return (lowest - RunningLines) / (page.Height - (2 * RunningLines));
    }
}
