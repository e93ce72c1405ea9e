using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

[Trait("lane", "slow")]
public sealed class ReportTests
{
    private static readonly string[] s_inputs =
    [
        "study/controls.csv",
        "study/protocol.toml",
        "study/results.csv",
        "study/specimens.csv",
        "study/study.toml",
    ];

    /// <summary>The same with the record to which every report adds a line.</summary>
    private static string[] Recorded(string[] files) =>
        [.. files.Append("study/record.jsonl").Order(StringComparer.Ordinal)];

    [Fact]
    public async Task Report_makes_the_folder_and_ends_with_the_path()
    {
        using var copy = StudyCopy.Create();

        var run = await Run.Of("report", copy.Study);

        var path = copy.At("study", "out", "report.pdf");
        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal("", run.Error);
        Assert.Equal(path, run.Out.TrimEnd().Split('\n')[^1]);
        Assert.Equal(
            Recorded([
                s_inputs[0],
                "study/out/analysis.json",
                "study/out/report.pdf",
                .. s_inputs[1..],
            ]),
            copy.Files()
        );
        Assert.StartsWith(
            "%PDF-",
            System.Text.Encoding.ASCII.GetString(
                await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken),
                0,
                5
            ),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_report_elsewhere_has_analysis_json_beside_it_and_replaces_old_files()
    {
        using var copy = StudyCopy.Create();
        var report = copy.At("a", "b", "r.txt");
        Directory.CreateDirectory(copy.At("a", "b"));
        await File.WriteAllTextAsync(report, "old", TestContext.Current.CancellationToken);

        var run = await Run.Of("report", copy.Study, "--format", "text", "-o", report);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal(Recorded(["a/b/r.analysis.json", "a/b/r.txt", .. s_inputs]), copy.Files());
        Assert.Contains(
            "[+] No anticoagulant: Supported to 6 h, with 6 reservations",
            await File.ReadAllTextAsync(report, TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_write_that_fails_leaves_the_old_report_and_no_part()
    {
        using var copy = StudyCopy.Create();
        var report = copy.At("a", "r.txt");
        Directory.CreateDirectory(copy.At("a", "r.analysis.json"));
        await File.WriteAllTextAsync(report, "old", TestContext.Current.CancellationToken);

        var run = await Run.Of("report", copy.Study, "--format", "text", "-o", report);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Equal("", run.Out);
        Assert.Contains("analysis.json cannot be written", run.Error, StringComparison.Ordinal);
        Assert.Equal(["a/r.txt", .. s_inputs], copy.Files());
        Assert.Equal(
            "old",
            await File.ReadAllTextAsync(report, TestContext.Current.CancellationToken)
        );
    }

    [Fact]
    public async Task A_report_made_again_has_the_same_bytes()
    {
        using var copy = StudyCopy.CreateOf(
            ExampleStudy.SmallFolder,
            "protocol.toml",
            "study.toml",
            "pairs.csv"
        );
        var path = copy.At("study", "out", "report.pdf");
        await Run.Of("report", copy.Study);
        var first = await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken);

        var run = await Run.Of("report", copy.Study);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal(
            first,
            await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken)
        );
    }

    [Fact]
    public async Task A_report_that_was_signed_is_never_replaced()
    {
        using var copy = StudyCopy.Create();
        var signed = copy.At("signed.pdf");
        const string Content = "%PDF-1.7\n1 0 obj <</Type/Sig /ByteRange [0 1 2 3]>> endobj";
        await File.WriteAllTextAsync(signed, Content, TestContext.Current.CancellationToken);

        var run = await Run.Of("report", copy.Study, "-o", signed);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Equal("", run.Out);
        Assert.Contains("signed.pdf holds a signature", run.Error, StringComparison.Ordinal);
        Assert.Equal(
            Content,
            await File.ReadAllTextAsync(signed, TestContext.Current.CancellationToken)
        );
        Assert.Equal(["signed.pdf", .. s_inputs], copy.Files());
    }

    [Fact]
    public async Task A_stopped_study_leaves_the_old_report_and_says_so()
    {
        using var copy = StudyCopy.Create();
        copy.Edit(ExampleStudy.Results, ",33.2,s,", ",\"33,2\",s,");
        var report = copy.At("study", "out", "report.pdf");
        Directory.CreateDirectory(copy.At("study", "out"));
        await File.WriteAllTextAsync(report, "old", TestContext.Current.CancellationToken);

        var run = await Run.Of("report", copy.Study);

        Assert.Equal(ExitCode.StopQueries, run.Code);
        Assert.Contains("results.csv line 3, column result", run.Out, StringComparison.Ordinal);
        Assert.Contains("Nothing was written", run.Error, StringComparison.Ordinal);
        Assert.Equal(
            "old",
            await File.ReadAllTextAsync(report, TestContext.Current.CancellationToken)
        );
        Assert.Equal([s_inputs[0], "study/out/report.pdf", .. s_inputs[1..]], copy.Files());
    }

    [Fact]
    public async Task A_required_window_that_is_missing_gives_code_3_and_still_the_report()
    {
        using var copy = StudyCopy.Create();

        var run = await Run.Of("report", copy.Study, "--format", "text", "--require-supported");

        Assert.Equal(ExitCode.NotSupported, run.Code);
        Assert.Contains("study/out/report.txt", copy.Files());
    }

    [Fact]
    public async Task A_cancelled_report_gives_code_130_and_no_file()
    {
        using var copy = StudyCopy.Create();
        using var cancellation = new CancellationTokenSource();
        await cancellation.CancelAsync();

        var run = await Run.Of(usesColor: false, cancellation.Token, "report", copy.Study);

        Assert.Equal(ExitCode.Cancelled, run.Code);
        Assert.Equal("", run.Out);
        Assert.Equal(s_inputs, copy.Files());
    }
}
