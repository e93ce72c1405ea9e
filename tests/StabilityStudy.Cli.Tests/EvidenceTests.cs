using System.Text.Json;
using StabilityStudy.Files.Recording;

namespace StabilityStudy.Cli.Tests;

/// <summary>trial-certificate, report, sign, sign, verify: the way of a report to evidence.</summary>
[Trait("lane", "slow")]
public sealed class EvidenceTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static string SignedIn(StudyCopy copy) =>
        Assert.Single(Directory.GetFiles(copy.At("study", "signed"), "*.pdf"));

    // A key, a report and a signature are dear: each is made once, and every test has a copy of its own.
    private static readonly MadeOnce s_reported = new(MakeReport);

    private static readonly MadeOnce s_signed = new(MakeSignature);

    private static Task<StudyCopy> Reported() => s_reported.Copy();

    private static Task<StudyCopy> SignedByAuthor() => s_signed.Copy();

    private static async Task<StudyCopy> MakeReport()
    {
        var copy = StudyCopy.CreateSmall();
        await MakeReport(copy);
        return copy;
    }

    private static async Task MakeReport(StudyCopy copy)
    {
        await Run.Of("trial-certificate", copy.At("keys"), "--name", "Author One");
        await Run.Of("trial-certificate", copy.At("keys"), "--name", "Director One");
        var report = await Run.Of("report", copy.Study);
        Assert.Equal(ExitCode.Done, report.Code);
    }

    private static async Task<StudyCopy> MakeSignature()
    {
        var copy = await Reported();
        var author = await Run.Sign(
            copy,
            copy.At("study", "out", "report.pdf"),
            "author",
            "author-one"
        );
        Assert.Equal(ExitCode.Done, author.Code);
        return copy;
    }

    [Fact]
    public async Task Lines_cut_from_the_record_after_a_signature_show()
    {
        using var copy = await SignedByAuthor();
        var record = copy.At("study", "record.jsonl");
        var lines = await File.ReadAllLinesAsync(record, TestContext.Current.CancellationToken);
        var whole = await Run.Of("verify", SignedIn(copy));
        var kept = copy.At("kept.jsonl");
        File.Copy(record, kept);
        await File.WriteAllLinesAsync(record, lines[..^2], TestContext.Current.CancellationToken);
        var cut = await Run.Of("verify", SignedIn(copy));
        var named = await Run.Of("verify", SignedIn(copy), "--record", kept);
        var elsewhere = copy.At("alone.pdf");
        File.Copy(SignedIn(copy), elsewhere);
        var alone = await Run.Of("verify", elsewhere);

        Assert.Contains("Lines added since: 1", Run.OneLine(whole.Out), Comparison);
        Assert.DoesNotContain("Lines were cut off", Run.OneLine(whole.Out), Comparison);
        Assert.Contains("Lines were cut off or changed", Run.OneLine(cut.Out), Comparison);
        Assert.Equal(ExitCode.VerificationFailed, cut.Code);
        Assert.Equal(whole.Out, named.Out);
        Assert.Contains("--record", alone.Out, Comparison);
        Assert.DoesNotContain("Lines were cut off", Run.OneLine(alone.Out), Comparison);
    }

    [Fact]
    public async Task A_report_becomes_evidence()
    {
        using var copy = StudyCopy.Create();
        await MakeReport(copy);
        var report = copy.At("study", "out", "report.pdf");

        var author = await Run.Sign(copy, report, "author", "author-one");
        var signed = SignedIn(copy);
        var approver = await Run.Sign(
            copy,
            signed,
            "approver",
            "director-one",
            "--decision",
            "approve",
            "--window",
            "aPTT/none=5 h",
            "--condition",
            "aPTT/none=hematocrit below 55 %",
            "--reason",
            "the drift may reach the limit before 6 h",
            "--review",
            "2099-11-30",
            "--credentials",
            "MD"
        );
        var trusted = await Run.Of("verify", signed, "--trust", copy.At("keys"));
        var json = await Run.Of("verify", signed, "--json");

        Assert.Equal(ExitCode.Done, author.Code);
        Assert.DoesNotContain("changed", author.Error, Comparison);
        Assert.Contains("Still to sign: approver.", author.Out, Comparison);
        Assert.Matches("/signed/WB-RT-APTT-[0-9a-f]{8}[.]pdf$", author.Out.TrimEnd());
        Assert.Equal(ExitCode.Done, approver.Code);
        Assert.Contains("Everybody has signed.", approver.Out, Comparison);
        Assert.Contains("self-issued", approver.Out, Comparison);

        // The example of these tests is not locked.
        Assert.Equal(ExitCode.VerificationFailed, trusted.Code);
        Assert.Contains("5 h approved (supported: ", trusted.Out, Comparison);
        Assert.Contains("Condition 1: hematocrit below 55 %", trusted.Out, Comparison);
        var stated = JsonDocument
            .Parse(json.Out)
            .RootElement.GetProperty("decision")
            .GetProperty("stated");
        Assert.Equal("conditions", stated.GetProperty("kind").GetString());
        Assert.Equal("PT5H", stated.GetProperty("windows")[0].GetProperty("approved").GetString());
        Assert.Equal("2099-11-30", stated.GetProperty("review").GetString());
        var parts = JsonDocument.Parse(json.Out).RootElement.GetProperty("parts");
        Assert.Equal(
            ["not-checked", "holds", "holds", "fails"],
            parts.EnumerateArray().Select(part => part.GetProperty("outcome").GetString())
        );
        Assert.All(trusted.Out.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    [Fact]
    public async Task Every_signature_adds_a_line_to_the_record()
    {
        using var copy = await SignedByAuthor();
        var record = await File.ReadAllBytesAsync(
            copy.At("study", StudyRecord.Name),
            TestContext.Current.CancellationToken
        );

        var last = System.Text.Encoding.UTF8.GetString(record).TrimEnd('\n').Split('\n')[^1];

        Assert.Empty(StudyRecord.Check(record, null));
        Assert.Equal(
            "sign",
            JsonDocument.Parse(last).RootElement.GetProperty("action").GetString()
        );
        Assert.Contains("Author One (author)", last, Comparison);
    }

    [Fact]
    public async Task Signing_says_when_the_study_has_changed_since_its_report()
    {
        using var copy = await Reported();
        var results = copy.At("study", "pairs.csv");
        var lines = await File.ReadAllLinesAsync(results, TestContext.Current.CancellationToken);
        await File.WriteAllLinesAsync(results, lines[..^1], TestContext.Current.CancellationToken);

        var answer = await Run.Sign(
            copy,
            copy.At("study", "out", "report.pdf"),
            "author",
            "author-one"
        );

        Assert.Equal(ExitCode.Done, answer.Code);
        Assert.Contains("have changed since this report was made", answer.Error, Comparison);
    }

    [Fact]
    public async Task A_signed_copy_is_never_overwritten()
    {
        using var copy = await SignedByAuthor();
        var report = copy.At("study", "out", "report.pdf");
        var before = await File.ReadAllBytesAsync(
            SignedIn(copy),
            TestContext.Current.CancellationToken
        );

        var again = await Run.Sign(copy, report, "author", "author-one");

        Assert.Equal(ExitCode.WrongUsage, again.Code);
        Assert.Contains("never overwritten", again.Error, Comparison);
        Assert.Equal(
            before,
            await File.ReadAllBytesAsync(SignedIn(copy), TestContext.Current.CancellationToken)
        );
    }

    [Fact]
    public async Task A_refusal_leaves_the_signed_report_as_it_was()
    {
        using var copy = await SignedByAuthor();
        var signed = SignedIn(copy);
        var before = await File.ReadAllBytesAsync(signed, TestContext.Current.CancellationToken);

        var same = await Run.Sign(copy, signed, "approver", "author-one", "--decision", "approve");
        var elsewhere = await Run.Sign(
            copy,
            signed,
            "approver",
            "director-one",
            "--decision",
            "approve",
            "-o",
            copy.At("other.pdf")
        );

        Assert.Equal(ExitCode.WrongUsage, same.Code);
        Assert.Contains("Another person", same.Error, Comparison);
        Assert.Contains("extended in place", elsewhere.Error, Comparison);
        Assert.Equal(
            before,
            await File.ReadAllBytesAsync(signed, TestContext.Current.CancellationToken)
        );
    }

    [Theory]
    [InlineData("wrong", "does not open the key")]
    [InlineData("", "does not open the key")]
    public async Task A_wrong_passphrase_is_told(string passphrase, string expected)
    {
        using var copy = await Reported();
        await File.WriteAllTextAsync(
            copy.At("keys", "author-one.passphrase"),
            passphrase,
            TestContext.Current.CancellationToken
        );

        var run = await Run.Sign(
            copy,
            copy.At("study", "out", "report.pdf"),
            "author",
            "author-one"
        );

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains(expected, run.Error, Comparison);
    }

    [Fact]
    public async Task A_changed_byte_gives_code_4()
    {
        using var copy = await SignedByAuthor();
        var bytes = await File.ReadAllBytesAsync(
            SignedIn(copy),
            TestContext.Current.CancellationToken
        );
        bytes[^50_000] ^= 1;
        await File.WriteAllBytesAsync(
            copy.At("bad.pdf"),
            bytes,
            TestContext.Current.CancellationToken
        );

        var right = await Run.Of("verify", SignedIn(copy), "--trust", copy.At("keys"));
        var run = await Run.Of("verify", copy.At("bad.pdf"), "--trust", copy.At("keys"));

        Assert.Contains("the signature is right", right.Out, Comparison);
        Assert.DoesNotContain("the signature is right", run.Out, Comparison);
        Assert.Equal(ExitCode.VerificationFailed, run.Code);
        Assert.Contains("FAILED. Do not rely on this file.", run.Out, Comparison);
    }

    [Fact]
    public async Task A_trial_certificate_is_not_overwritten_and_its_key_is_for_its_owner_only()
    {
        using var copy = StudyCopy.Create();
        var first = await Run.Of("trial-certificate", copy.At("keys"), "--name", "Author One");
        var second = await Run.Of("trial-certificate", copy.At("keys"), "--name", "Author One");

        Assert.Contains("self-issued", first.Out, Comparison);
        Assert.Equal(ExitCode.WrongUsage, second.Code);
        Assert.Contains("not overwritten", second.Error, Comparison);
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(
                UnixFileMode.UserRead | UnixFileMode.UserWrite,
                File.GetUnixFileMode(copy.At("keys", "author-one.p12"))
            );
        }
    }

    [Fact]
    public async Task What_is_no_report_no_key_and_no_trust_file_is_told()
    {
        using var copy = StudyCopy.Create();
        var csv = copy.At("study", "results.csv");

        var verify = await Run.Of("verify", csv);
        var trust = await Run.Of("verify", csv, "--trust", csv);
        var key = await Run.Of("sign", csv, "--role", "author", "--key", csv);
        var missing = await Run.Of("verify", copy.At("nothing.pdf"));

        Assert.Equal(ExitCode.VerificationFailed, verify.Code);
        Assert.Equal(ExitCode.WrongUsage, trust.Code);
        Assert.Contains("neither a certificate nor a list", trust.Error, Comparison);
        Assert.Contains("neither PKCS#12 nor PEM", key.Error, Comparison);
        Assert.Contains("cannot be read", missing.Error, Comparison);
    }

    [Theory]
    [InlineData("--trust", "no certificate in")]
    [InlineData("--trust-time", "no certificate in")]
    [InlineData("--revoked", "no list of revoked certificates in")]
    public async Task An_option_that_brings_nothing_of_what_it_is_for_is_told(
        string option,
        string expected
    )
    {
        using var copy = StudyCopy.Create();
        var folder = Directory.CreateDirectory(copy.At("store")).FullName;
        await File.WriteAllTextAsync(
            Path.Combine(folder, "broken.pem"),
            "nothing",
            TestContext.Current.CancellationToken
        );
        var run = await Run.Of("verify", copy.At("study", "results.csv"), option, folder);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains(option + ": there is " + expected, run.Error, Comparison);
        Assert.Contains("broken.pem: This is neither", run.Error, Comparison);
    }

    [Fact]
    public async Task A_certificate_is_no_list_of_revoked_ones()
    {
        using var copy = StudyCopy.Create();
        await Run.Of("trial-certificate", copy.At("keys"), "--name", "Author One");
        var run = await Run.Of(
            "verify",
            copy.At("study", "results.csv"),
            "--revoked",
            copy.At("keys")
        );

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("--revoked: there is no list", run.Error, Comparison);
    }
}
