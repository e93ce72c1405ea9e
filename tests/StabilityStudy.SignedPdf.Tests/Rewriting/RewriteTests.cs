using StabilityStudy.SignedPdf.Rewriting;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Rewriting;

public static class RewriteTests
{
    [Fact]
    public static void Probe()
    {
        var a = DrawnDocument.Draw();
        File.WriteAllBytes("/tmp/probe-signedpdf/a.pdf", a);
        File.WriteAllBytes("/tmp/probe-signedpdf/b.pdf", DrawnDocument.Draw());
        var r = DeterministicRewrite.Rewrite(
            a,
            new RewriteOptions("T", null, "tool", null, null, [])
        );
        Assert.True(r.TryGet(out var bytes, out var f), f?.ToString());
        File.WriteAllBytes("/tmp/probe-signedpdf/ra.pdf", bytes.ToArray());
    }
}
