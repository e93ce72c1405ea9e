using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Tests.Model;

namespace StabilityStudy.Reporting.Tests.Pdf;

public class DemoReportTests
{
    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Signatures_of_the_demo_report_stand_on_page_1(PaperSize paper)
    {
        var drawn = PdfDrawing.Draw(DemoReport.Create(paper));
        KeptDrawings.Keep(drawn, "demo-" + paper);

        Assert.Equal(
            "Author, Approver",
            string.Join(", ", drawn.SignatureRectangles.Select(r => r.Role))
        );
        Assert.All(drawn.SignatureRectangles, r => Assert.Equal(1, r.Page));
    }
}
