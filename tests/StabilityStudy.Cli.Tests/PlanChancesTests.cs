using System.Text.Json;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

/// <summary>What a study takes and can show, before there are data; and the lock that asks what it can show.</summary>
[Trait("lane", "slow")]
public sealed class PlanChancesTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static StudyCopy Ready(string name)
    {
        var copy = StudyCopy.CreateOf(
            Path.Combine(RepositoryFile.Root, "protocols"),
            name + ".toml"
        );
        File.Move(copy.At("study", name + ".toml"), copy.At("study", "protocol.toml"));
        return copy;
    }

    [Fact]
    public async Task A_plan_needs_a_protocol_alone_and_says_what_the_golden_file_says()
    {
        using var copy = Ready("aptt-whole-blood-room-temperature");
        var files = copy.Files();

        var run = await Run.Of("plan", copy.Study, "--studies", "250");

        Assert.Equal(ExitCode.Done, run.Code);
        RepositoryFile.RequireSame(
            "tests/StabilityStudy.Cli.Tests/Golden/plan-aptt.txt",
            run.Out.ReplaceLineEndings("\n")
        );
        Assert.All(run.Out.Split('\n'), line => Assert.True(line.TrimEnd().Length <= 80, line));
        Assert.EndsWith(
            $"next: stability-study plan {copy.Study} --document {Path.Combine(copy.Study, "out", "protocol.pdf")}",
            run.Error.TrimEnd(),
            Comparison
        );
        Assert.Equal(files, copy.Files());
    }

    [Fact]
    public async Task Json_has_every_figure_and_the_paragraph()
    {
        using var copy = Ready("aptt-whole-blood-room-temperature");

        var run = await Run.Of(
            "plan",
            copy.Study,
            "--studies",
            "250",
            "--seed",
            "7",
            "--joint",
            "--json"
        );

        Assert.Equal(("", ExitCode.Done), (run.Error, run.Code));
        using var json = JsonDocument.Parse(run.Out);
        var root = json.RootElement;
        Assert.Equal(
            (250, 7),
            (root.GetProperty("studies").GetInt32(), root.GetProperty("seed").GetInt32())
        );
        Assert.Equal(
            13.5m,
            decimal.Parse(
                root.GetProperty("material")[0].GetProperty("millilitersOfSpecimen").GetString()!,
                System.Globalization.CultureInfo.InvariantCulture
            )
        );
        var row = root.GetProperty("rows")[0];
        Assert.Equal(3, row.GetProperty("timePoints").GetArrayLength());
        Assert.Equal(3, row.GetProperty("shares")[0].GetProperty("allowed").GetInt32());
        Assert.Equal(9, row.GetProperty("joint").GetArrayLength());
        var paragraph = await Run.Of(
            "plan",
            copy.Study,
            "--studies",
            "250",
            "--seed",
            "7",
            "--paragraph"
        );
        Assert.Equal(root.GetProperty("paragraph").GetString(), paragraph.Out.TrimEnd());
        Assert.Contains(
            "50 specimens, 200 tubes and 50 spares, 10 days",
            paragraph.Out,
            Comparison
        );
    }

    [Fact]
    public async Task A_pilot_gives_the_spread_and_one_with_faults_is_asked_about()
    {
        using var copy = Ready("aptt-whole-blood-room-temperature");
        var pilot = copy.At("pilot.csv");
        await File.WriteAllTextAsync(
            pilot,
            "baseline,delayed,time_point\n"
                + string.Concat(
                    Enumerable.Range(0, 12).Select(i => $"{30 + i},{30 + i + (i % 3)},8 h\n")
                ),
            TestContext.Current.CancellationToken
        );
        var run = await Run.Of("plan", copy.Study, "--studies", "20", "--pilot", pilot);
        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("(12 pairs of the pilot)", run.Out.ReplaceLineEndings(" "), Comparison);

        await File.WriteAllTextAsync(
            pilot,
            "baseline,delayed,group\n30,x,none\n31,32,absent\n-1,2,none\n",
            TestContext.Current.CancellationToken
        );
        var stopped = await Run.Of("plan", copy.Study, "--pilot", pilot);
        Assert.Equal(ExitCode.StopQueries, stopped.Code);
        foreach (var said in new[] { "line 2", "line 3", "line 4", "not-a-number", "absent" })
        {
            Assert.Contains(said, stopped.Out, Comparison);
        }
    }

    [Fact]
    public async Task A_figure_is_written_for_every_row()
    {
        using var copy = Ready("aptt-whole-blood-room-temperature");
        var run = await Run.Of(
            "plan",
            copy.Study,
            "--studies",
            "20",
            "--figure",
            copy.At("chance.svg")
        );
        Assert.Equal(ExitCode.Done, run.Code);
        Assert.StartsWith(
            "<svg",
            await File.ReadAllTextAsync(
                copy.At("chance.svg"),
                TestContext.Current.CancellationToken
            ),
            Comparison
        );

        using var several = Ready("doac-level-whole-blood");
        await Run.Of("plan", several.Study, "--studies", "5", "--figure", several.At("chance.svg"));
        Assert.Equal(4, Directory.GetFiles(several.Root, "chance-*.svg").Length);
    }

    [Fact]
    public async Task One_analyte_and_group_can_be_asked_about_and_wrong_ones_are_named()
    {
        using var copy = Ready("routine-coagulation-room-temperature");

        var only = await Run.Of("plan", copy.Study, "--studies", "5", "--analyte", "INR");
        var absent = await Run.Of("plan", copy.Study, "--analyte", "FX");
        var apart = await Run.Of("plan", copy.Study, "--analyte", "INR", "--group", "none");

        Assert.Contains(
            "INR, Vitamin K antagonist, 8 h",
            only.Out.ReplaceLineEndings(" "),
            Comparison
        );
        Assert.DoesNotContain("FBG", only.Out, Comparison);
        Assert.Equal(ExitCode.WrongUsage, absent.Code);
        Assert.Contains("Write one of PT, INR", absent.Error, Comparison);
        Assert.Equal(ExitCode.WrongUsage, apart.Code);
    }

    [Theory]
    [InlineData("--studies", "0")]
    [InlineData("--studies", "100001")]
    [InlineData("--studies", "many")]
    [InlineData("--seed", "-1")]
    [InlineData("--days", "0")]
    [InlineData("--tube-ml", "0.1")]
    [InlineData("--tube-ml", "2,7")]
    [InlineData("--figure", "chance.png")]
    public async Task What_is_no_number_or_name_is_refused(string option, string value)
    {
        var run = await Run.Of("plan", ExampleStudy.SmallFolder, option, value);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains(option == "--figure" ? "SVG" : option, run.Error, Comparison);
    }

    [Fact]
    public async Task The_document_takes_no_supposition_from_the_command_line()
    {
        using var copy = StudyCopy.CreateSmall();

        var run = await Run.Of("plan", copy.Study, "--document", copy.At("p.pdf"), "--days", "8");

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("--days has no effect on the document", run.Error, Comparison);
        Assert.False(File.Exists(copy.At("p.pdf")));
    }

    [Fact]
    public async Task A_protocol_out_of_reach_is_locked_only_with_a_reason_that_stays_on_record()
    {
        using var copy = Ready("aptt-whole-blood-room-temperature");
        var files = copy.Files();

        var refused = await Run.Of("lock", copy.Study, "--by", "LS1");

        Assert.Equal(ExitCode.StopQueries, refused.Code);
        Assert.Equal(files, copy.Files());
        Assert.Contains("Out of reach if specimens change as published", refused.Error, Comparison);
        Assert.Contains("24 h (below 1 %)", refused.Error.ReplaceLineEndings(" "), Comparison);
        Assert.Contains("--accept-low-chance \"REASON\"", refused.Error, Comparison);

        var accepted = await Run.Of(
            "lock",
            copy.Study,
            "--by",
            "LS1",
            "--accept-low-chance",
            "shows how far today's rule may be exceeded"
        );

        Assert.Equal(ExitCode.Done, accepted.Code);
        Assert.Contains("Low chance accepted: shows how far", accepted.Out, Comparison);
        Assert.Contains(
            "low_chance_accepted = \"shows how far today's rule may be exceeded\"",
            await File.ReadAllTextAsync(
                copy.At("study", "protocol.lock"),
                TestContext.Current.CancellationToken
            ),
            Comparison
        );
    }

    [Fact]
    public async Task A_reason_that_was_not_needed_stays_out_of_the_lock()
    {
        using var copy = StudyCopy.CreateSmall();

        var run = await Run.Of(
            "lock",
            copy.Study,
            "--by",
            "LS1",
            "--accept-low-chance",
            "to be sure"
        );

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.DoesNotContain(
            "low_chance_accepted",
            await File.ReadAllTextAsync(
                copy.At("study", "protocol.lock"),
                TestContext.Current.CancellationToken
            ),
            Comparison
        );
    }
}
