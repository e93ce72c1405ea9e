using System.Text.Json;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

[Trait("lane", "slow")]
public sealed class AnalyzeTests
{
    [Fact]
    public async Task The_example_gives_both_decisions_and_writes_no_file_but_its_record()
    {
        using var copy = StudyCopy.Create();
        var before = copy.Files().Append("study/record.jsonl").Order(StringComparer.Ordinal);

        var run = await Run.Of("analyze", copy.Study);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal("", run.Error);
        Assert.Contains(
            "[+] No anticoagulant: Supported to 6 h, with 6 reservations",
            run.Out,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "[?] Unfractionated heparin: Inconclusive at 2 h",
            run.Out,
            StringComparison.Ordinal
        );
        Assert.Equal(before, copy.Files());
    }

    [Theory]
    [InlineData("check")]
    [InlineData("analyze")]
    public async Task Lines_fit_80_columns_and_carry_no_escape_character(string command)
    {
        using var copy = StudyCopy.Create();
        var run = await Run.Of(command, copy.Study);

        Assert.True(run.Out.Length > 500);
        Assert.All(
            run.Out.ReplaceLineEndings("\n").Split('\n'),
            line => Assert.True(line.Length <= 80, line)
        );
        Assert.DoesNotContain('\e', run.Out);
    }

    [Fact]
    public async Task A_missing_window_gives_code_3_only_when_asked()
    {
        using var copy = StudyCopy.Create();
        var asked = await Run.Of("analyze", copy.Study, "--require-supported");
        var unasked = await Run.Of("analyze", copy.Study);

        Assert.Equal(ExitCode.NotSupported, asked.Code);
        Assert.Equal(ExitCode.Done, unasked.Code);
        Assert.Equal(unasked.Out, asked.Out);
    }

    [Fact]
    public async Task A_required_window_of_a_study_in_which_every_group_has_one_gives_code_0()
    {
        using var copy = StudyCopy.Create();
        copy.Edit(ExampleStudy.Protocol, "\npercent = 7.5", "\npercent = 40");
        File.WriteAllText(
            copy.At("study", ExampleStudy.Protocol),
            (
                await File.ReadAllTextAsync(
                    copy.At("study", ExampleStudy.Protocol),
                    TestContext.Current.CancellationToken
                )
            ).Replace("\npercent = 15", "\npercent = 60", StringComparison.Ordinal)
        );

        var run = await Run.Of("analyze", copy.Study, "--require-supported");

        Assert.Equal(ExitCode.Done, run.Code);
    }

    [Fact]
    public async Task Json_is_the_content_of_analysis_json_and_nothing_else()
    {
        using var copy = StudyCopy.Create();

        var printed = await Run.Of("analyze", copy.Study, "--json");
        await Run.Of("report", copy.Study, "--format", "text");

        Assert.Equal("", printed.Error);
        using var document = JsonDocument.Parse(printed.Out);
        Assert.Equal(3, document.RootElement.GetProperty("format").GetInt32());
        Assert.Equal(
            (
                await File.ReadAllTextAsync(
                    copy.At("study", "out", "analysis.json"),
                    TestContext.Current.CancellationToken
                )
            ).TrimEnd(),
            printed.Out.TrimEnd()
        );
    }

    [Fact]
    public async Task Simulated_studies_are_shown_only_when_asked_for_and_in_80_columns()
    {
        using var copy = StudyCopy.Create();
        var unasked = await Run.Of("analyze", copy.Study);
        var asked = await Run.Of("analyze", copy.Study, "--simulate", "20");

        Assert.Equal(ExitCode.Done, asked.Code);
        Assert.StartsWith(unasked.Out.TrimEnd(), asked.Out, StringComparison.Ordinal);
        var added = asked.Out[unasked.Out.TrimEnd().Length..];
        Assert.Contains("Simulated: 20 studies for each line", added, StringComparison.Ordinal);
        Assert.Matches(@"8 h +\+7\.50 +5\.0 +\d+\.\d \([^)]+\) +\d+\.\d \(\d", added);
        Assert.Matches(@"6 h +5, 5, 5, 4, ", added);
        Assert.Contains(
            "Each time point is simulated on its own.",
            added,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("With fewer than 40 specimens", added, StringComparison.Ordinal);
        Assert.All(
            added.ReplaceLineEndings("\n").Split('\n'),
            line => Assert.True(line.Length <= 80, line)
        );
    }

    [Fact]
    public async Task Simulated_studies_are_in_the_json_when_asked_for()
    {
        using var copy = StudyCopy.Create();
        var run = await Run.Of("analyze", copy.Study, "--json", "--simulate", "10");

        using var document = JsonDocument.Parse(run.Out);
        var power = document.RootElement.GetProperty("power");
        Assert.Equal(10, power.GetProperty("studies").GetInt32());
        Assert.Equal(6, power.GetProperty("timePoints").GetArrayLength());
        var first = power.GetProperty("timePoints")[0].GetProperty("power").GetProperty("value");
        Assert.True(
            first.GetProperty("supposed").GetProperty("runSdPercent").GetDouble()
                < first.GetProperty("supposedAtSpreadBound").GetProperty("runSdPercent").GetDouble()
        );
        Assert.Equal(
            10,
            first
                .GetProperty("points")[0]
                .GetProperty("atSpreadBound")
                .GetProperty("studies")
                .GetInt32()
        );
    }

    [Theory]
    [InlineData("0")]
    [InlineData("100001")]
    [InlineData("many")]
    public async Task A_number_of_studies_that_cannot_be_simulated_is_wrong_usage(string studies)
    {
        using var copy = StudyCopy.Create();
        var run = await Run.Of("analyze", copy.Study, "--simulate", studies);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("--simulate", run.Error, StringComparison.Ordinal);
    }
}
