using System.Text.Json;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

/// <summary>withdraw, keep and end: notices at the command line, signed, and what the register and the study folder then say.</summary>
[Trait("lane", "slow")]
public sealed class NoticeTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;
    private const string Director = "Director One";

    private static string Day(int fromToday) =>
        DateTime.Today.AddDays(fromToday).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static Task<Run> Windows(StudyCopy copy, params string[] more) =>
        Run.Of(["supported-windows", copy.At("register"), "--trust", copy.At("keys"), .. more]);

    private static async Task<string> Made(StudyCopy copy, string command, params string[] more)
    {
        var run = await Run.Of([
            command,
            copy.At("register", "signed.pdf"),
            "--by",
            Director,
            "--reason",
            "a shift in external quality control",
            .. more,
        ]);
        Assert.Equal("", run.Code == ExitCode.Done ? "" : run.Error);
        return run.Out.Split('\n')[0].Trim();
    }

    private static async Task Signed(StudyCopy copy, string notice)
    {
        var run = await Run.Sign(copy, notice, "approver", "director-one");
        Assert.Equal("", run.Code == ExitCode.Done ? "" : run.Error);
        Assert.Contains("Everybody has signed.", run.Out, Comparison);
    }

    [Fact]
    public async Task A_withdrawal_is_in_doubt_until_it_is_signed_and_then_counts_from_its_day_on()
    {
        using var copy = await SignedRegister.Copy();
        var notice = await Made(copy, "withdraw", "--from", Day(3));
        Assert.Equal(copy.At("register", $"signed-withdrawn-{Day(3)}.pdf"), notice);

        var draft = await Windows(copy);
        Assert.Equal(ExitCode.VerificationIncomplete, draft.Code);
        Assert.StartsWith(
            "0 windows in force, 2 to attend to. 1 report, 1 notice, ",
            draft.Out,
            Comparison
        );
        Assert.Contains("Director One has not signed it.", draft.Out, Comparison);
        var asked = await Windows(copy, ["--analyte", "PT", "--group", "none", "--waited", "9 h"]);
        Assert.StartsWith("ASK THE DIRECTOR: ", asked.Out, Comparison);

        await Signed(copy, notice);
        var verified = await Run.Of("verify", notice, "--trust", copy.At("keys"));
        Assert.Equal(ExitCode.Done, verified.Code);
        Assert.Contains("All three parts hold.", verified.Out, Comparison);

        var before = await Windows(copy, "--as-of", Day(2));
        Assert.Equal(ExitCode.Done, before.Code);
        Assert.StartsWith("1 window in force, 1 to attend to.", before.Out, Comparison);
        Assert.Contains("takes effect on " + Day(3), Run.OneLine(before.Out), Comparison);
        var after = await Windows(copy, "--as-of", Day(3), "--all");
        Assert.Equal(ExitCode.Done, after.Code);
        Assert.StartsWith("0 windows in force, 0 to attend to.", after.Out, Comparison);
        Assert.Contains("not in force: 1 withdrawn", after.Out, Comparison);
        Assert.Contains(
            "\"a shift in external quality control\"",
            Run.OneLine(after.Out),
            Comparison
        );
        var answer = await Windows(
            copy,
            ["--as-of", Day(3), "--analyte", "PT", "--group", "none", "--waited", "9 h"]
        );
        Assert.Equal(ExitCode.NotSupported, answer.Code);
        Assert.Contains("longer was withdrawn", answer.Out, Comparison);
        var json = JsonDocument.Parse((await Windows(copy, "--as-of", Day(3), "--json")).Out);
        Assert.Equal(
            "withdrawn",
            json.RootElement.GetProperty("windows")[0].GetProperty("standing").GetString()
        );
        Assert.Equal(
            "counts",
            json.RootElement.GetProperty("notices")[0].GetProperty("standing").GetString()
        );
        json.Dispose();
    }

    [Fact]
    public async Task A_review_and_an_adoption_stand_beside_the_window()
    {
        using var copy = await SignedRegister.Copy();
        await Signed(copy, await Made(copy, "keep", "--review", Day(700)));
        var adopted = copy.At("register", "adopted.pdf");
        await Made(copy, "keep", "--new-director", "-o", adopted);
        await Signed(copy, adopted);

        var run = await Windows(copy);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Matches($"PT +No anticoagulant +wb-rt +10 h +[0-9-]{{10}} {Day(700)}", run.Out);
        Assert.Contains(
            $"reviewed, unchanged, {Day(0)} by {Director}",
            Run.OneLine(run.Out),
            Comparison
        );
        Assert.Contains($"adopted {Day(0)} by {Director}", Run.OneLine(run.Out), Comparison);
        Assert.Equal(
            ExitCode.VerificationIncomplete,
            (await Windows(copy, "--as-of", Day(701))).Code
        );
    }

    [Fact]
    public async Task A_new_director_ends_windows_and_looks_back_only_when_asked()
    {
        using var copy = await SignedRegister.Copy();
        var notice = await Made(copy, "withdraw", "--new-director", "--from", Day(0));
        await Signed(copy, notice);

        var run = await Windows(copy, "--all");

        Assert.Contains("ended by a new director", Run.OneLine(run.Out), Comparison);
        var json = JsonDocument.Parse((await Windows(copy, "--json")).Out);
        var written = json.RootElement.GetProperty("notices")[0];
        Assert.False(written.GetProperty("lookBack").GetBoolean());
        Assert.Equal("ended-by-new-director", written.GetProperty("kind").GetString());
        json.Dispose();
    }

    [Fact]
    public async Task Nothing_is_overwritten_and_only_what_goes_together_is_taken()
    {
        using var copy = await SignedRegister.Copy();
        var report = copy.At("register", "signed.pdf");
        var notice = await Made(copy, "keep", "--review", Day(700));
        string[] by = ["--by", Director, "--reason", "r"];

        foreach (
            var (said, arguments) in new (string, string[])[]
            {
                ("never overwritten", ["keep", report, .. by, "--review", Day(700)]),
                ("review_after", ["keep", report, .. by]),
                ("--new-director", ["withdraw", report, .. by, "--from", Day(0), "--look-back"]),
                (
                    "names no window",
                    ["withdraw", report, .. by, "--from", Day(0), "--window", "PT/ufh"]
                ),
                ("named twice", ["withdraw", report, report, .. by, "--from", Day(0)]),
                ("This is no report", ["withdraw", notice, .. by, "--from", Day(0)]),
                ("YYYY-MM-DD", ["withdraw", report, .. by, "--from", "now"]),
                ("--by", ["withdraw", report, "--reason", "r", "--from", Day(0)]),
                ("never locked", ["end", copy.At("keys"), .. by]),
            }
        )
        {
            var run = await Run.Of(arguments);
            Assert.Equal(ExitCode.WrongUsage, run.Code);
            Assert.Contains(said, run.Error, Comparison);
        }

        var other = await Run.Sign(copy, notice, "approver", "author-one");
        Assert.Contains("names Director One", other.Error, Comparison);
    }

    [Fact]
    public async Task A_study_that_was_ended_is_checked_locked_and_reported_no_more()
    {
        using var copy = StudyCopy.CreateOf(
            ExampleStudy.SmallFolder,
            "protocol.toml",
            "study.toml",
            "pairs.csv",
            "protocol.lock"
        );
        await Run.Of("trial-certificate", copy.At("keys"), "--name", Director);
        string[] end = ["end", copy.Study, "--by", Director, "--reason", "analyzer replaced"];

        var made = await Run.Of(end);
        Assert.Equal("", made.Code == ExitCode.Done ? "" : made.Error);
        var draft = await Run.Of("report", copy.Study);
        Assert.Equal(ExitCode.StopQueries, draft.Code);
        Assert.Contains("ended-notice-not-signed", draft.Out, Comparison);

        var ended = Path.Combine(copy.Study, "ended.pdf");
        await Signed(copy, ended);
        foreach (var command in new[] { "check", "analyze", "report" })
        {
            var run = await Run.Of(command, copy.Study);
            Assert.Equal(ExitCode.StopQueries, run.Code);
            Assert.Contains("study-ended", run.Out, Comparison);
            Assert.Contains("analyzer replaced", Run.OneLine(run.Out), Comparison);
        }

        // The folder of the study is also a register, of one study that put nothing into force.
        var register = await Run.Of(
            "supported-windows",
            copy.Study,
            "--trust",
            copy.At("keys"),
            "--all"
        );
        Assert.Equal(ExitCode.Done, register.Code);
        Assert.Contains("1 study ended without a conclusion", register.Out, Comparison);
        Assert.Contains("analyzer replaced", Run.OneLine(register.Out), Comparison);

        copy.Edit("protocol.toml", "version = \"1\"", "version = \"2\"");
        var locked = await Run.Of("lock", copy.Study, "--by", "LS1", "--reason", "wider");
        Assert.Equal(ExitCode.StopQueries, locked.Code);
        copy.Edit("protocol.toml", "version = \"2\"", "version = \"1\"");

        var bytes = await File.ReadAllBytesAsync(ended, TestContext.Current.CancellationToken);
        bytes[^300] ^= 1;
        await File.WriteAllBytesAsync(ended, bytes, TestContext.Current.CancellationToken);
        Assert.Contains(
            "ended-notice-not-right",
            (await Run.Of("check", copy.Study)).Out,
            Comparison
        );
        File.Delete(ended);
        var gone = await Run.Of("report", copy.Study);
        Assert.Equal(ExitCode.StopQueries, gone.Code);
        Assert.Contains("ended-notice-missing", gone.Out, Comparison);
    }
}
