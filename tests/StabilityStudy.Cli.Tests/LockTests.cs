using StabilityStudy.Files.Recording;

namespace StabilityStudy.Cli.Tests;

[Trait("lane", "slow")]
public sealed class LockTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    [Fact]
    public async Task Lock_writes_the_lock_a_copy_and_a_line_of_the_record()
    {
        using var copy = StudyCopy.Create();
        var protocol = await Bytes(copy, "protocol.toml");

        var run = await Run.Of("lock", copy.Study, "--by", "LS1");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("(lock 1)", run.Out, Comparison);
        Assert.Contains("this computer's clock only", run.Out, Comparison);
        Assert.Equal(protocol, await Bytes(copy, "locked", "1.toml"));
        Assert.Contains(
            "protocol_sha256 = \""
                + Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(protocol)),
            await Text(copy, "protocol.lock"),
            Comparison
        );
        Assert.Single((await Text(copy, StudyRecord.Name)).TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public async Task The_same_protocol_is_not_locked_twice()
    {
        using var copy = StudyCopy.Create();
        await Run.Of("lock", copy.Study, "--by", "LS1");
        var before = copy.Files();

        var run = await Run.Of("lock", copy.Study, "--by", "LS1", "--reason", "again");

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("locked already", run.Error, Comparison);
        Assert.Equal(before, copy.Files());
    }

    [Fact]
    public async Task An_amendment_needs_a_reason_and_keeps_the_lock_before_it()
    {
        using var copy = StudyCopy.Create();
        await Run.Of("lock", copy.Study, "--by", "LS1");
        copy.Edit("protocol.toml", "share_percent_min = 85", "share_percent_min = 90");

        var refused = await Run.Of("lock", copy.Study, "--by", "LS1");
        var changed = await Run.Of("analyze", copy.Study);
        var amended = await Run.Of(
            "lock",
            copy.Study,
            "--by",
            "LS1",
            "--reason",
            "stricter",
            "--accept-low-chance",
            "the numbers are fixed"
        );

        Assert.Equal(ExitCode.WrongUsage, refused.Code);
        Assert.Contains("--reason", refused.Error, Comparison);
        Assert.Contains("Changed since it was locked", changed.Out, Comparison);
        Assert.Equal(ExitCode.Done, amended.Code);
        Assert.Contains("study/locked/1.toml", copy.Files());
        Assert.Contains("study/locked/2.toml", copy.Files());
        Assert.Contains("reason = \"stricter\"", await Text(copy, "protocol.lock"), Comparison);
    }

    [Fact]
    public async Task A_protocol_that_tests_an_analyte_too_late_in_a_group_is_not_locked()
    {
        using var copy = StudyCopy.Create();
        copy.Edit("protocol.toml", "[\"2 h\", \"4 h\", \"6 h\"]", "[\"4 h\", \"6 h\"]");

        var run = await Run.Of("lock", copy.Study, "--by", "LS1");

        Assert.Equal(ExitCode.StopQueries, run.Code);
        Assert.Contains("[first-time-point-too-late]", run.Out + run.Error, Comparison);
        Assert.Contains("group ufh", run.Out + run.Error, Comparison);
        Assert.DoesNotContain("study/protocol.lock", copy.Files());
    }

    [Theory]
    [InlineData("anticoagulant = \"heparin\", ", "", "by code and name")]
    [InlineData("anticoagulant = \"heparin\", ", "anticoagulant = \"heparin\", ", "on heparin")]
    [InlineData("anticoagulant = \"heparin\", ", "anticoagulant = \"none\", ", null)]
    [InlineData(
        "scale = \"percent\"",
        "scale = \"percent\"\nwithout_levels = \"see LAB-17\"",
        null
    )]
    public async Task A_mean_on_heparin_is_locked_only_with_decision_levels_or_a_reason(
        string from,
        string to,
        string? because
    )
    {
        using var copy = StudyCopy.Create();
        copy.Edit("protocol.toml", "kind = \"decision-level\"", "kind = \"drift\"");
        copy.Edit("protocol.toml", "levels = [60.0, 90.0]", "shapes = [\"logarithmic\"]");
        copy.Edit("protocol.toml", from, to);

        var run = await Run.Of("lock", copy.Study, "--by", "LS1");

        var said = string.Join(
            ' ',
            (run.Out + run.Error).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
        );
        if (because is null)
        {
            Assert.Equal(ExitCode.Done, run.Code);
            Assert.DoesNotContain("[mean-without-levels]", said, Comparison);
            Assert.Equal(
                to.Contains("LAB-17", Comparison),
                said.Contains("Stated reason: see LAB-17", Comparison)
            );
        }
        else
        {
            Assert.Equal(ExitCode.StopQueries, run.Code);
            Assert.Contains("[mean-without-levels]", said, Comparison);
            Assert.Contains(because, said, Comparison);
            Assert.DoesNotContain("study/protocol.lock", copy.Files());
        }
    }

    [Fact]
    public async Task A_protocol_with_a_stop_query_is_not_locked()
    {
        using var copy = StudyCopy.Create();
        copy.Edit("protocol.toml", "minimum_days = 5", "minimum_days = 0");

        var run = await Run.Of("lock", copy.Study, "--by", "LS1");

        Assert.Equal(ExitCode.StopQueries, run.Code);
        Assert.Contains("Not locked", run.Error, Comparison);
        Assert.DoesNotContain("study/protocol.lock", copy.Files());
    }

    [Theory]
    [InlineData("")]
    [InlineData("two\nlines")]
    [InlineData(" LS1")]
    public async Task Who_locks_is_a_text_on_one_line(string by)
    {
        using var copy = StudyCopy.Create();

        var run = await Run.Of("lock", copy.Study, "--by", by);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("--by", run.Error, Comparison);
    }

    [Fact]
    public async Task A_signed_lock_is_called_signed_until_its_statement_is_changed()
    {
        using var copy = StudyCopy.Create();
        await Run.Of("trial-certificate", copy.At("keys"), "--name", "LS1");

        var run = await Run.Of(
            "lock",
            copy.Study,
            "--by",
            "LS1",
            "--key",
            copy.At("keys", "ls1.p12"),
            "--passphrase-file",
            copy.At("keys", "ls1.passphrase")
        );
        var signed = await Json(copy);
        var text = await Text(copy, "protocol.lock");
        await File.WriteAllTextAsync(
            copy.At("study", "protocol.lock"),
            text.Replace("by = \"LS1\"", "by = \"LS2\"", Comparison),
            TestContext.Current.CancellationToken
        );
        var changed = await Json(copy);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("The lock is signed", run.Out, Comparison);
        Assert.Contains("\"level\": \"by-signature\"", signed, Comparison);
        Assert.DoesNotContain("by-signature", changed, Comparison);
        Assert.Contains("\"level\": \"contradicted\"", changed, Comparison);
    }

    private static async Task<string> Json(StudyCopy copy) =>
        (await Run.Of("analyze", copy.Study, "--json")).Out;

    [Fact]
    public async Task A_lock_edited_by_hand_is_on_the_first_page()
    {
        using var copy = StudyCopy.Create();
        await Run.Of("lock", copy.Study, "--by", "LS1");
        var path = copy.At("study", "protocol.lock");
        var text = await Text(copy, "protocol.lock");
        await File.WriteAllTextAsync(
            path,
            text.Replace("by = \"LS1\"", "by = \"LS2\"", Comparison),
            TestContext.Current.CancellationToken
        );

        var run = await Run.Of("analyze", copy.Study);

        Assert.Contains(
            "is not the file that the record of the study names",
            Run.OneLine(run.Out),
            Comparison
        );
    }

    private static Task<byte[]> Bytes(StudyCopy copy, params string[] parts) =>
        File.ReadAllBytesAsync(copy.At(["study", .. parts]), TestContext.Current.CancellationToken);

    private static Task<string> Text(StudyCopy copy, string name) =>
        File.ReadAllTextAsync(copy.At("study", name), TestContext.Current.CancellationToken);
}
