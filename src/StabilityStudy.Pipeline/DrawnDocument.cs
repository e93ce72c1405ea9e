using StabilityStudy.Reporting.Pdf;
using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.Pipeline;

/// <summary>A drawn document that nobody signs and that carries no files.</summary>
internal static class DrawnDocument
{
    /// <summary>Writes it so that the same pages give the same bytes.</summary>
    public static RenderedReport Finish(DrawnReport drawn, string title)
    {
        var rewritten = DeterministicRewrite.Rewrite(
            drawn.Pdf,
            new RewriteOptions(
                title,
                Author: null,
                "stability-study " + ToolVersion.Current,
                "en-US",
                Date: null,
                Attachments: []
            )
            {
                ClaimsArchive = true,
            }
        );
        return rewritten.TryGet(out var pdf, out var failure)
            ? new RenderedReport(pdf, drawn.PageCount)
            : throw new InvalidOperationException(
                "The drawn document could not be rewritten: " + failure.What
            );
    }
}
