using StabilityStudy.Cli.Tests;
using StabilityStudy.Tests.Shared;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>The report as a page for a browser, read by one.</summary>
[Trait("lane", "slow")]
public sealed class HtmlReportTests
{
    private const string Rules = "AXE_CORE";

    /// <summary>
    /// The page is opened in Chromium and held against the rules of axe-core (Mozilla Public License 2.0), which follow WCAG: no violation. The rules are the only script, put in by the test.
    /// </summary>
    [Fact]
    public async Task A_browser_finds_nothing_that_bars_a_reader()
    {
        var rules = Environment.GetEnvironmentVariable(Rules);
        OutsideTool.Require(rules ?? $"file of axe-core: set {Rules} to the path of axe.min.js");
        using var copy = StudyCopy.Create();
        var page = copy.At("report.html");
        var answer = await BuiltProgram.Run(
            "report",
            copy.Study,
            "--format",
            "html",
            "-o",
            page,
            "--figures",
            copy.At("figures")
        );
        Assert.Equal(0, answer.ExitCode);
        Assert.NotEmpty(Directory.GetFiles(copy.At("figures"), "*.svg"));

        var cancellation = TestContext.Current.CancellationToken;
        var html = await File.ReadAllTextAsync(page, cancellation);
        var watched = copy.At("watched.html");
        await File.WriteAllTextAsync(
            watched,
            html.Replace(
                "</body>",
                $"<script>{await File.ReadAllTextAsync(rules!, cancellation)}</script>"
                    + "<script>axe.run().then(r => document.body.innerHTML = '<pre>violations: ' + JSON.stringify(r.violations.map(v => v.id + ' ' + v.nodes[0].html)).replace(/</g, '&lt;') + '; passes: ' + r.passes.length + '.</pre>');</script></body>",
                StringComparison.Ordinal
            ),
            cancellation
        );
        var read = await OutsideTool.Run(
            "chromium",
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--virtual-time-budget=60000",
            "--dump-dom",
            new Uri(watched).AbsoluteUri
        );

        Assert.Contains("violations: []; passes: ", read.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("passes: 0.", read.Out, StringComparison.Ordinal);
    }
}
