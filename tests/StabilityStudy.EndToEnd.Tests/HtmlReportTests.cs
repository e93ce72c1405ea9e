using System.Net;
using StabilityStudy.Cli.Tests;
using StabilityStudy.Pipeline;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Tests.Shared;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>The report as a page for a browser, read by one.</summary>
[Trait("lane", "slow")]
public sealed class HtmlReportTests
{
    private const string Rules = "AXE_CORE";

    /// <summary>
    /// The page is opened in Chromium, in a wide and in a narrow window, and held against the rules of axe-core (Mozilla Public License 2.0), which follow WCAG: no violation. The rules are the only script, put in by the test.
    /// </summary>
    [Theory]
    [InlineData("1000,800")]
    [InlineData("500,800")]
    public async Task A_browser_finds_nothing_that_bars_a_reader(string window)
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
            $"--window-size={window}",
            "--virtual-time-budget=60000",
            "--dump-dom",
            new Uri(watched).AbsoluteUri
        );

        Assert.Contains("violations: []; passes: ", read.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("passes: 0.", read.Out, StringComparison.Ordinal);
    }

    /// <summary>A phone is 390 pixels wide, and the smallest that WCAG 2.2 (1.4.10, reflow) asks for 320.</summary>
    [Theory]
    [InlineData("small-paired-sheet")]
    [InlineData("aptt-room-temperature")]
    [InlineData("frozen-plasma")]
    [InlineData("routine-room-temperature")]
    public async Task No_page_is_wider_than_a_phone(string example)
    {
        var study = ExampleStudy.Analyze(ExampleStudy.OfFolder(example));
        var html = StudyPipeline.RenderHtml(study);
        using var copy = StudyCopy.Create();
        var framed = copy.At("framed.html");
        // A browser's own window cannot be so narrow, a frame can.
        var frames = new[] { 390, 320 }.Select(width =>
            $"<iframe style=\"width:{width}px;height:800px;border:0\" srcdoc=\"{WebUtility.HtmlEncode(html)}\"></iframe>"
        );
        await File.WriteAllTextAsync(
            framed,
            $"<!DOCTYPE html><title>0</title>{string.Concat(frames)}<script>window.onload = () => document.body.innerHTML = '<pre>wider by: ' + [...document.querySelectorAll('iframe')].map(f => f.contentDocument.documentElement).map(d => d.querySelectorAll('section').length > 5 && d.clientWidth > 0 ? d.scrollWidth - d.clientWidth : 'not shown').join(', ') + '.</pre>';</script>",
            TestContext.Current.CancellationToken
        );
        var read = await OutsideTool.Run(
            "chromium",
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--virtual-time-budget=60000",
            "--dump-dom",
            new Uri(framed).AbsoluteUri
        );

        Assert.Contains("wider by: 0, 0.", read.Out, StringComparison.Ordinal);
    }
}
