using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Report;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>The report of every odd study keeps what PDF/A-3a and PDF/UA-1 ask for, which it claims.</summary>
[Trait("lane", "slow")]
public sealed class ArchiveTests
{
    public static TheoryData<string> Names => OddStudies.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public async Task The_report_breaks_no_rule_of_what_it_claims(string name)
    {
        var drawn = PdfDrawing.Draw(ReportBuilder.Build(OddStudies.All[name], PaperSize.A4));
        var rewritten = DeterministicRewrite.Rewrite(
            drawn.Pdf,
            new RewriteOptions(
                "Title",
                "Facility",
                "trial",
                "en-US",
                Date: null,
                [
                    new Attachment(
                        "results.csv",
                        "text/csv",
                        "Results",
                        AttachmentRelationship.Source,
                        "a\n"u8.ToArray()
                    ),
                ]
            )
            {
                ClaimsArchive = true,
            }
        );

        Assert.True(rewritten.TryGet(out var pdf, out _));
        Assert.Empty(await ArchiveRules.BrokenBy(pdf));
    }
}
