using System.Text.Json;

namespace StabilityStudy.Cli.Tests;

/// <summary>inspection writes a folder, and verify checks it.</summary>
[Trait("lane", "slow")]
public sealed class InspectionTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static Task<Run> Make(StudyCopy copy, params string[] more) =>
        Run.Of([
            "inspection",
            copy.At("register"),
            "-o",
            copy.At("pack"),
            "--trust",
            copy.At("keys"),
            .. more,
        ]);

    private static Task<Run> Verify(StudyCopy copy, params string[] more) =>
        Run.Of(["verify", copy.At("pack"), "--trust", copy.At("keys"), .. more]);

    [Fact]
    public async Task A_folder_is_made_and_holds_and_a_change_of_it_does_not()
    {
        using var copy = await SignedRegister.Copy();
        Directory.CreateDirectory(copy.At("pack"));

        var made = await Make(copy);
        var sound = await Verify(copy);

        Assert.Equal("", made.Error.Replace(NextLine(made), "", Comparison).Trim());
        Assert.Equal(ExitCode.Done, made.Code);
        Assert.StartsWith("next: stability-study verify ", NextLine(made), Comparison);
        Assert.Equal(ExitCode.Done, sound.Code);
        Assert.Contains("All parts hold.", sound.Out, Comparison);
        var digest = made.Out.Split('\n').Single(line => line.TrimEnd().Length == 64).TrimEnd();
        Assert.Contains(digest, sound.Out, Comparison);

        await File.WriteAllTextAsync(
            copy.At("pack", ".hidden"),
            "",
            TestContext.Current.CancellationToken
        );
        File.Delete(copy.At("pack", "bench", "PT-wb-rt-card.pdf"));
        var changed = await Verify(copy, "--json");

        Assert.Equal(ExitCode.VerificationFailed, changed.Code);
        using var json = JsonDocument.Parse(changed.Out);
        Assert.Equal("fails", json.RootElement.GetProperty("outcome").GetString());
        var found = json
            .RootElement.GetProperty("parts")[0]
            .GetProperty("found")
            .EnumerateArray()
            .Select(item => item.GetString())
            .ToArray();
        Assert.Contains("bench/PT-wb-rt-card.pdf is missing.", found);
        Assert.Contains(".hidden is not in the list: it was added.", found);
    }

    private static string NextLine(Run run) =>
        run.Error.Split('\n').Single(line => line.StartsWith("next: ", Comparison));

    [Fact]
    public async Task What_does_not_count_is_copied_too_and_named()
    {
        using var copy = await SignedRegister.Copy();
        var bytes = await File.ReadAllBytesAsync(
            copy.At("register", "signed.pdf"),
            TestContext.Current.CancellationToken
        );
        bytes[bytes.Length / 3] ^= 1;
        await File.WriteAllBytesAsync(
            copy.At("register", "tampered.pdf"),
            bytes,
            TestContext.Current.CancellationToken
        );
        Directory.CreateDirectory(copy.At("register", "open"));
        foreach (var name in new[] { "protocol.toml", "protocol.lock" })
        {
            File.Copy(copy.At("study", name), copy.At("register", "open", name));
        }

        var made = await Make(copy, "--paper", "letter", "--as-of", "2040-01-01");
        var found = await Verify(copy);

        Assert.Equal(ExitCode.VerificationIncomplete, made.Code);
        Assert.Contains("! tampered.pdf: not counted.", made.Out, Comparison);
        Assert.Equal(
            bytes,
            await File.ReadAllBytesAsync(
                copy.At("pack", "register", "tampered.pdf"),
                TestContext.Current.CancellationToken
            )
        );
        Assert.True(File.Exists(copy.At("pack", "register", "open", "protocol.lock")));
        Assert.Equal(ExitCode.Done, found.Code);
        Assert.Contains(
            "register/tampered.pdf: fails, as then.",
            Run.OneLine(found.Out),
            Comparison
        );
    }

    [Fact]
    public async Task A_folder_with_something_in_it_a_wrong_number_and_a_record_are_refused()
    {
        using var copy = await SignedRegister.Copy();
        var years = await Make(copy, "--keep-years", "0");
        Directory.CreateDirectory(copy.At("pack"));
        await File.WriteAllTextAsync(
            copy.At("pack", "index.pdf"),
            "",
            TestContext.Current.CancellationToken
        );
        var full = await Make(copy);
        var record = await Verify(copy, "--record", copy.At("record.jsonl"));
        var broken = await Verify(copy);

        Assert.Equal(ExitCode.WrongUsage, years.Code);
        Assert.Equal(ExitCode.WrongUsage, full.Code);
        Assert.Equal(ExitCode.WrongUsage, record.Code);
        Assert.Equal(ExitCode.VerificationFailed, broken.Code);
    }
}
