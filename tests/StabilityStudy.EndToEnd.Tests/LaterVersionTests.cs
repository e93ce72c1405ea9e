using StabilityStudy.Cli;
using StabilityStudy.Cli.Tests;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>What a later version of the program makes of a report of today.</summary>
[Trait("lane", "slow")]
public sealed class LaterVersionTests(SignedExample example, LaterVersion later)
    : IClassFixture<SignedExample>,
        IClassFixture<LaterVersion>
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    [Fact]
    public async Task A_signed_report_of_today_verifies_but_for_what_only_one_version_has()
    {
        var answer = await later.Run("verify", example.WithSignatures, "--trust", example.Keys);

        Assert.True(answer.ExitCode == 5, answer.Out + answer.Error);
        var words = string.Join(' ', answer.Lines.Select(line => line.Trim()));
        Assert.Contains("Pages not recomputed", words, Comparison);
        Assert.Contains("addedEstimate", words, Comparison);
        Assert.Contains("added-query", words, Comparison);
        Assert.Contains("Supported to 6 h", words, Comparison);
        Assert.Equal(2, answer.Lines.Count(line => line.Trim() == "HOLDS"));
    }

    [Fact]
    public async Task An_unsigned_report_of_today_is_to_be_made_again()
    {
        var answer = await later.Run(Signing(example.Report, "author", "lab-scientist-one"));

        Assert.Equal(2, answer.ExitCode);
        Assert.Contains("Make the report again", answer.Error, Comparison);
    }

    [Fact]
    public async Task The_later_version_signs_over_a_signature_only_what_is_accepted()
    {
        var report = example.At("signed-once.pdf");
        var author = await Run.Of(
            Signing(example.Report, "author", "lab-scientist-one", "-o", report)
        );
        Assert.True(author.Code == ExitCode.Done, author.Error);
        string[] approve = ["--decision", "approve"];

        var refused = await later.Run(Signing(report, "approver", "medical-director-one", approve));
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("the pages", refused.Error, Comparison);
        Assert.Contains("addedEstimate", refused.Error, Comparison);
        Assert.Contains("--accept-not-recomputed", refused.Error, Comparison);

        var accepted = await later.Run(
            Signing(
                report,
                "approver",
                "medical-director-one",
                [.. approve, "--accept-not-recomputed"]
            )
        );
        Assert.True(accepted.ExitCode == 0, accepted.Error);

        var today = await Run.Of("verify", report, "--trust", example.Keys);
        Assert.True(today.Code == ExitCode.VerificationIncomplete, today.Out);
        var then = await later.Run("verify", report, "--trust", example.Keys);
        Assert.Equal(5, then.ExitCode);
        foreach (var words in new[] { today.Out, then.Out })
        {
            Assert.Contains(
                "accepted as not computed again: the pages",
                string.Join(' ', words.Split('\n').Select(line => line.Trim())),
                Comparison
            );
        }

        var stamp = await OutsideTool.Run("pdftotext", "-l", "1", report, "-");
        Assert.Contains("version " + LaterVersion.Version, stamp.Out, Comparison);
    }

    private string[] Signing(string report, string role, string key, params string[] more) =>
        [
            "sign",
            report,
            "--role",
            role,
            "--key",
            Path.Combine(example.Keys, key + ".p12"),
            "--passphrase-file",
            Path.Combine(example.Keys, key + ".passphrase"),
            .. more,
        ];
}
