using StabilityStudy.Files.Recording;

namespace StabilityStudy.Cli.Tests;

/// <summary>The pages for the bench, from a study just begun to the run list.</summary>
[Trait("lane", "slow")]
public sealed class WorksheetTests
{
    [Fact]
    public async Task A_study_just_begun_gets_the_pages_of_its_first_day()
    {
        using var copy = StudyCopy.CreateSmall();
        var pairs = copy.At("study", "pairs.csv");
        await File.WriteAllTextAsync(
            pairs,
            File.ReadLines(pairs).First() + "\n",
            TestContext.Current.CancellationToken
        );

        var run = await Run.Of("worksheet", copy.Study);

        Assert.Equal((ExitCode.Done, ""), (run.Code, run.Error));
        var target = copy.At("study", "out", "worksheet-day-1.pdf");
        Assert.Equal(target, run.Out.Trim());
        RequirePdf(target);
    }

    /// <summary>Pages without a run order need no line: nothing random is on them.</summary>
    [Fact]
    public async Task The_seed_of_a_printed_run_order_goes_on_record()
    {
        using var copy = StudyCopy.Create();
        var record = copy.At("study", StudyRecord.Name);
        var before = File.Exists(record) ? File.ReadAllLines(record).Length : 0;

        await Run.Of("worksheet", copy.Study, "--page", "temperature");
        Assert.Equal(before, File.Exists(record) ? File.ReadAllLines(record).Length : 0);
        var run = await Run.Of("worksheet", copy.Study, "--page", "run-list", "--seed", "4711");

        Assert.Equal(ExitCode.Done, run.Code);
        var line = File.ReadAllLines(record)[^1];
        Assert.Contains("\"action\":\"worksheet\"", line, StringComparison.Ordinal);
        Assert.Contains("\"run-list.pdf\":", line, StringComparison.Ordinal);
        Assert.Contains("\"seed\":4711,", line, StringComparison.Ordinal);
        var check = await Run.Of("check", copy.Study);
        Assert.DoesNotContain("record-chain-broken", check.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_run_list_goes_by_the_collection_times_in_the_file()
    {
        using var copy = StudyCopy.Create();

        var run = await Run.Of(
            "worksheet",
            copy.Study,
            "--page",
            "run-list",
            "--date",
            "2026-03-02",
            "--paper",
            "letter"
        );

        Assert.Equal((ExitCode.Done, ""), (run.Code, run.Error));
        RequirePdf(copy.At("study", "out", "run-list-2026-03-02.pdf"));
    }

    [Fact]
    public async Task Rows_of_tubes_that_cannot_be_read_are_counted_so_that_no_tube_is_missed()
    {
        using var copy = StudyCopy.Create();
        copy.Edit(
            "specimens.csv",
            "N-001,N-001-B,S001,none,wb-rt,3,2026-03-02T07:05",
            "N-001,N-001-B,S001,none,wb-rt,3,2026-03-02T27:05"
        );

        var run = await Run.Of(
            "worksheet",
            copy.Study,
            "--page",
            "run-list",
            "--date",
            "2026-03-02"
        );

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.StartsWith("1 row of tubes could not be read", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Specimens_that_are_in_the_files_already_are_named()
    {
        using var copy = StudyCopy.Create();

        var run = await Run.Of("worksheet", copy.Study, "--page", "draw");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("Already in the study's files: N-001", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_study_that_cannot_be_read_gets_no_page_and_its_queries()
    {
        using var copy = StudyCopy.Create();
        copy.Edit("protocol.toml", "format = 1", "format = 7");

        var run = await Run.Of("worksheet", copy.Study);

        Assert.Equal(ExitCode.StopQueries, run.Code);
        Assert.Contains("protocol.toml", run.Out + run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(copy.At("study", "out")));
    }

    private static void RequirePdf(string path) =>
        Assert.Equal("%PDF-"u8.ToArray(), File.ReadAllBytes(path)[..5]);
}
