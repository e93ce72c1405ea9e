using System.Text.RegularExpressions;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

/// <summary>The example study as if every second specimen had been tested on a second instrument, with wider limits and fewer specimens asked for on each.</summary>
[Trait("lane", "slow")]
public sealed class ScopeTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static readonly TimeSpan s_longest = TimeSpan.FromMinutes(1);

    [Fact]
    public async Task Each_instrument_is_concluded_by_itself_and_the_report_verifies()
    {
        using var copy = OnTwo();

        var run = await Run.Of("report", copy.Study);
        var pdf = copy.At("study", "out", "report.pdf");
        var text = await Run.Of("report", copy.Study, "--format", "text", "-o", copy.At("r.txt"));
        var verify = await Run.Of("verify", pdf);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal(ExitCode.Done, text.Code);
        var report = Regex.Replace(
            await File.ReadAllTextAsync(copy.At("r.txt"), TestContext.Current.CancellationToken),
            @"\s+",
            " ",
            RegexOptions.None,
            s_longest
        );
        Assert.Contains("Testing on instrument AN1 is supported up to", report, Comparison);
        Assert.Contains("Each instrument on its own specimens", report, Comparison);
        Assert.Contains("25 specimens planned on each of AN1 and AN2", report, Comparison);
        Assert.DoesNotContain("planned number holds for the group", report, Comparison);
        Assert.Matches("3[.] [^\n]*\n +HOLDS", verify.Out);
    }

    private static StudyCopy OnTwo()
    {
        var copy = StudyCopy.Create();
        Replace(
            copy,
            "protocol.toml",
            "version = \"1\"",
            "version = \"1\"\ninstruments = [\"AN1\", \"AN2\"]"
        );
        Replace(copy, "protocol.toml", @"(?<=\bspecimens = )\d+", "25");
        Replace(copy, "protocol.toml", @"(?m)^percent = 7\.5", "percent = 12");
        Replace(copy, "protocol.toml", @"(?m)^percent = 15", "percent = 25");
        Replace(copy, "protocol.toml", @"(?m)(?<=^share_percent_min = )\d+", "70");
        Replace(
            copy,
            "study.toml",
            @"(?s)(\[\[instrument\]\]\nid = ""AN1""\nname = ""[^""]*"")",
            "$1\n\n[[instrument]]\nid = \"AN2\"\nname = \"Second analyzer (invented)\""
        );
        // A run is on one instrument, so the second has runs and controls of its own.
        Replace(copy, ExampleStudy.Results, @"(?m)^([A-Z]+-\d*[02468],.*),AN1,", "$1-2,AN2,");
        Replace(copy, "controls.csv", @"(?m)^([^,]+,aPTT,)([^,]+)(,.*)$", "$1$2$3\n$1$2-2$3");
        return copy;
    }

    private static void Replace(StudyCopy copy, string name, string pattern, string by)
    {
        var path = Path.Combine(copy.Study, name);
        var text = File.ReadAllText(path);
        Assert.Matches(pattern, text);
        File.WriteAllText(path, Regex.Replace(text, pattern, by, RegexOptions.None, s_longest));
    }
}
