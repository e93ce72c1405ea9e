namespace StabilityStudy.Cli.Tests;

/// <summary>What supported-windows remembers of files that it verified, and when it verifies them anew.</summary>
[Trait("lane", "slow")]
public sealed class RegisterCacheTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;
    private const string Verifying = "Verifying signed.pdf";

    /// <summary>A call with a cache beside the register; what was verified stands on the error output.</summary>
    private static Task<Run> Windows(StudyCopy copy, params string[] more) =>
        Windows(copy, TimeProvider.System, copy.At("keys"), more);

    private static Task<Run> Windows(
        StudyCopy copy,
        TimeProvider clock,
        string trust,
        params string[] more
    ) =>
        Run.With(
            terminal =>
                terminal with
                {
                    CacheFolder = copy.At("cache"),
                    ShowsProgress = true,
                    Clock = clock,
                },
            TestContext.Current.CancellationToken,
            ["supported-windows", copy.At("register"), "--trust", trust, .. more]
        );

    private static string[] Entries(StudyCopy copy) =>
        [
            .. Directory
                .GetFiles(copy.At("cache"), "*", SearchOption.AllDirectories)
                .Where(file => Path.GetFileName(file) != "key"),
        ];

    [Fact]
    public async Task A_file_is_verified_once_a_day_and_told_alike()
    {
        using var copy = await SignedRegister.Copy();

        var first = await Windows(copy, "--json");
        var second = await Windows(copy, "--json");
        var anew = await Windows(copy, "--json", "--no-cache");

        Assert.Contains(Verifying, first.Error, Comparison);
        Assert.DoesNotContain(Verifying, second.Error, Comparison);
        Assert.Contains(Verifying, anew.Error, Comparison);
        Assert.Equal((first.Out, first.Code), (second.Out, second.Code));
        Assert.Equal(first.Out, anew.Out);
        Assert.Single(Entries(copy));
    }

    [Fact]
    public async Task An_answer_verifies_anew_what_it_follows_from()
    {
        using var copy = await SignedRegister.Copy();
        await Windows(copy);

        var asked = await Windows(copy, "--analyte", "PT", "--group", "none", "--waited", "9 h");
        var other = await Windows(copy, "--analyte", "aPTT", "--waited", "1 h");

        Assert.Contains(Verifying, asked.Error, Comparison);
        Assert.StartsWith("TEST: ", asked.Out, Comparison);
        Assert.DoesNotContain(Verifying, other.Error, Comparison);
    }

    [Fact]
    public async Task Another_content_trust_day_or_name_is_never_answered_from_it()
    {
        using var copy = await SignedRegister.Copy();
        await Windows(copy);

        var tomorrow = await Windows(copy, new Later(TimeSpan.FromDays(1)), copy.At("keys"));
        Assert.Contains(Verifying, tomorrow.Error, Comparison);
        Assert.Single(Entries(copy));

        var trust = await Windows(copy, TimeProvider.System, copy.At("keys", "author-one.pem"));
        Assert.Contains(Verifying, trust.Error, Comparison);
        Assert.StartsWith("0 windows in force", trust.Out, Comparison);

        await Windows(copy);
        var file = copy.At("register", "signed.pdf");
        File.Move(file, copy.At("register", "renamed.pdf"));
        var renamed = await Windows(copy, "--json");
        Assert.DoesNotContain("Verifying", renamed.Error, Comparison);
        Assert.Contains("renamed.pdf", renamed.Out, Comparison);
        File.Move(copy.At("register", "renamed.pdf"), file);

        var bytes = await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken);
        bytes[bytes.Length / 3] ^= 1;
        await File.WriteAllBytesAsync(file, bytes, TestContext.Current.CancellationToken);
        var changed = await Windows(copy);
        Assert.Contains(Verifying, changed.Error, Comparison);
        Assert.StartsWith("0 windows in force", changed.Out, Comparison);
    }

    [Fact]
    public async Task A_changed_or_exchanged_entry_is_not_used()
    {
        using var copy = await SignedRegister.Copy();
        var expected = await Windows(copy);
        var entry = Assert.Single(Entries(copy));
        var bytes = await File.ReadAllBytesAsync(entry, TestContext.Current.CancellationToken);
        foreach (var place in new[] { 0, 31, 32, bytes.Length / 2, bytes.Length - 1 })
        {
            var changed = bytes.ToArray();
            changed[place] ^= 1;
            await File.WriteAllBytesAsync(entry, changed, TestContext.Current.CancellationToken);

            var run = await Windows(copy);

            Assert.Contains(Verifying, run.Error, Comparison);
            Assert.Equal(expected.Out, run.Out);
        }

        foreach (var content in new byte[][] { [], [1, 2, 3], bytes[..40] })
        {
            await File.WriteAllBytesAsync(entry, content, TestContext.Current.CancellationToken);
            Assert.Contains(Verifying, (await Windows(copy)).Error, Comparison);
        }

        // An entry that holds for this file does not hold for another.
        var draft = await Run.Of(
            "withdraw",
            copy.At("register", "signed.pdf"),
            "--by",
            "Director One",
            "--reason",
            "r",
            "--from",
            "2030-01-01"
        );
        Assert.Equal(ExitCode.Done, draft.Code);
        await Windows(copy);
        var notice = Assert.Single(Entries(copy), file => file != entry);
        File.Copy(entry, notice, overwrite: true);
        Assert.Contains("Verifying signed-withdrawn", (await Windows(copy)).Error, Comparison);
    }

    [Fact]
    public async Task A_key_that_others_can_read_is_replaced()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "There are no such rights.");
        using var copy = await SignedRegister.Copy();
        await Windows(copy);
        var key = copy.At("cache", "key");
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(key));
            File.SetUnixFileMode(
                key,
                UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.OtherRead
            );
        }

        Assert.Contains(Verifying, (await Windows(copy)).Error, Comparison);
        Assert.DoesNotContain(Verifying, (await Windows(copy)).Error, Comparison);
    }

    [Fact]
    public async Task A_cache_that_cannot_be_used_changes_nothing()
    {
        using var copy = await SignedRegister.Copy();
        await File.WriteAllTextAsync(
            copy.At("cache"),
            "a file",
            TestContext.Current.CancellationToken
        );

        var run = await Windows(copy);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains(Verifying, run.Error, Comparison);
    }

    [Fact]
    public async Task The_register_is_written_as_a_table_too()
    {
        using var copy = await SignedRegister.Copy();
        var table = copy.At("windows.csv");

        var run = await Windows(copy, "--csv", table, "--as-of", "2040-01-02");
        var question = await Windows(copy, "--csv", table, "--analyte", "PT");

        Assert.Equal(ExitCode.Done, run.Code);
        var lines = await File.ReadAllLinesAsync(table, TestContext.Current.CancellationToken);
        Assert.Equal(2, lines.Length);
        Assert.StartsWith("as_of,standing,analyte,group,group_name,", lines[0], Comparison);
        Assert.StartsWith("2040-01-02,in force,PT,none,No anticoagulant,", lines[1], Comparison);
        Assert.Contains(",8 h,12 h,10 h,,tubes stay closed,", lines[1], Comparison);
        Assert.Equal(ExitCode.WrongUsage, question.Code);
    }

    private sealed class Later(TimeSpan by) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => System.GetUtcNow() + by;
    }
}
