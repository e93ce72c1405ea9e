using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Recording;

namespace StabilityStudy.Cli.Tests;

/// <summary>From the protocol to a document that author and approver have signed, beside the lock, and in every report.</summary>
[Trait("lane", "slow")]
public sealed class PlanTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    [Fact]
    public async Task A_protocol_is_signed_before_collection_and_the_report_says_so()
    {
        using var copy = await Prepared();
        // Collected long after the clock of this computer: signatures and lock come first.
        foreach (var name in new[] { "study.toml", "pairs.csv" })
        {
            copy.Edit(name, "2026-", "2126-");
        }

        var half = await Sign(copy, copy.At("study", "out", "protocol.pdf"), "author");
        Assert.Equal(
            "Signed as author. Still to sign: approver.",
            half.Out.Split('\n')[0].TrimEnd()
        );
        var signed = Assert.Single(Directory.GetFiles(copy.At("study", "signed")));
        Assert.Contains("-protocol-", Path.GetFileName(signed), Comparison);
        var early = await Run.Of(Lock(copy, signed));
        Assert.Equal(ExitCode.WrongUsage, early.Code);
        Assert.Contains("Not everybody", early.Error, Comparison);
        Assert.DoesNotContain("study/protocol.lock", copy.Files());

        var whole = await Sign(copy, signed, "approver");
        Assert.Contains("lock ", whole.Error, Comparison);
        Assert.Contains("--signed-protocol", whole.Error, Comparison);
        var verified = await Run.Of("verify", signed, "--trust", copy.At("keys"));
        Assert.Equal(ExitCode.Done, verified.Code);
        Assert.Contains("All four parts hold.", verified.Out, Comparison);

        var locked = await Run.Of(Lock(copy, signed));
        Assert.Equal(ExitCode.Done, locked.Code);
        Assert.Contains("approved by Medical Director One (approver)", locked.Out, Comparison);
        Assert.DoesNotContain("clock only", locked.Out, Comparison);
        Assert.Equal(await Bytes(signed), await Bytes(copy.At("study", "locked", "1.pdf")));
        var again = await Run.Of(Lock(copy, signed));
        Assert.Equal(ExitCode.WrongUsage, again.Code);
        Assert.Contains("never replaced", again.Error, Comparison);
        Assert.Empty(
            StudyRecord.Check(
                await Bytes(copy.At("study", StudyRecord.Name)),
                InputDigest.Sha256(await Bytes(copy.At("study", LockFile.Name)))
            )
        );

        var report = await Run.Of("report", copy.Study);
        Assert.True(report.Code == ExitCode.Done, report.Error);
        var found = await Run.Of(
            "verify",
            copy.At("study", "out", "report.pdf"),
            "--trust",
            copy.At("keys"),
            "--json"
        );
        using var json = System.Text.Json.JsonDocument.Parse(found.Out);
        var part = json.RootElement.GetProperty("parts")[3];
        Assert.Equal("holds", part.GetProperty("outcome").GetString());
        Assert.Contains(
            "criteria approved by signature of Medical Director One (approver)",
            part.GetProperty("found").ToString(),
            Comparison
        );
    }

    [Fact]
    public async Task A_locked_protocol_takes_its_document_afterwards_and_no_other()
    {
        using var copy = await Prepared();
        await Sign(copy, copy.At("study", "out", "protocol.pdf"), "author");
        var signed = Assert.Single(Directory.GetFiles(copy.At("study", "signed")));
        await Sign(copy, signed, "approver");
        await Run.Of("lock", copy.Study, "--by", "LS1");
        copy.Edit("protocol.toml", "share_percent_min = 85", "share_percent_min = 90");
        var other = await Run.Of(Lock(copy, signed));
        Assert.Equal(ExitCode.WrongUsage, other.Code);
        Assert.Contains("another protocol", other.Error, Comparison);
        copy.Edit("protocol.toml", "share_percent_min = 90", "share_percent_min = 85");

        var added = await Run.Of(Lock(copy, signed));

        Assert.True(added.Code == ExitCode.Done, added.Error);
        Assert.Contains("study/locked/1.pdf", copy.Files());
        Assert.DoesNotContain("study/locked/2.toml", copy.Files());
        var shown = await Run.Of("analyze", copy.Study, "--json");
        Assert.Contains("approved-after-first-collection", shown.Out, Comparison);
    }

    [Fact]
    public async Task An_amendment_is_a_document_whose_reason_the_lock_takes()
    {
        using var copy = await Prepared();
        await Run.Of("lock", copy.Study, "--by", "LS1");
        copy.Edit("protocol.toml", "share_percent_min = 85", "share_percent_min = 80");
        var document = copy.At("study", "out", "amendment.pdf");

        var unexplained = await Run.Of("plan", copy.Study, "--document", document);
        Assert.Equal(ExitCode.WrongUsage, unexplained.Code);
        Assert.Contains("Give the reason with --reason", unexplained.Error, Comparison);
        var alone = await Run.Of("plan", copy.Study, "--reason", "agreed with the director");
        Assert.Equal(ExitCode.WrongUsage, alone.Code);
        var drawn = await Run.Of(
            "plan",
            copy.Study,
            "--document",
            document,
            "--reason",
            "agreed with the director"
        );
        Assert.True(drawn.Code == ExitCode.Done, drawn.Error);
        Assert.Contains("Amendment 1 of the protocol of lock 1: 1 change.", drawn.Out, Comparison);

        await Sign(copy, document, "author");
        var signed = Assert.Single(Directory.GetFiles(copy.At("study", "signed")));
        await Sign(copy, signed, "approver");
        var other = await Run.Of([.. Lock(copy, signed), "--reason", "another one"]);
        Assert.Equal(ExitCode.WrongUsage, other.Code);
        Assert.Contains("states another reason", other.Error, Comparison);
        var locked = await Run.Of(Lock(copy, signed));

        Assert.True(locked.Code == ExitCode.Done, locked.Error);
        Assert.Contains("(lock 2)", locked.Out, Comparison);
        Assert.Equal(await Bytes(signed), await Bytes(copy.At("study", "locked", "2.pdf")));
        Assert.Contains(
            "reason = \"agreed with the director\"",
            await File.ReadAllTextAsync(
                copy.At("study", LockFile.Name),
                TestContext.Current.CancellationToken
            ),
            Comparison
        );
    }

    [Fact]
    public async Task What_is_no_place_for_a_document_is_refused()
    {
        using var copy = StudyCopy.CreateSmall();
        var files = copy.Files();
        foreach (var name in new[] { "protocol.toml", "protocol.txt", "pairs.csv", "." })
        {
            var run = await Run.Of("plan", copy.Study, "--document", copy.At("study", name));
            Assert.Equal(ExitCode.WrongUsage, run.Code);
        }

        copy.Edit("protocol.toml", "format = 1", "format = 1\nspecimen = 3");
        var stopped = await Run.Of(
            "plan",
            copy.Study,
            "--document",
            copy.At("study", "out", "protocol.pdf")
        );
        Assert.Equal(ExitCode.StopQueries, stopped.Code);
        Assert.Equal(files, copy.Files());
    }

    /// <summary>The smallest study with its document and two keys.</summary>
    private static async Task<StudyCopy> Prepared()
    {
        var copy = StudyCopy.CreateSmall();
        foreach (var name in new[] { "Lab Scientist One", "Medical Director One" })
        {
            await Run.Of("trial-certificate", copy.At("keys"), "--name", name);
        }

        var document = copy.At("study", "out", "protocol.pdf");
        var run = await Run.Of("plan", copy.Study, "--document", document);
        Assert.True(run.Code == ExitCode.Done, run.Error);
        Assert.EndsWith(document + Environment.NewLine, run.Out, Comparison);
        return copy;
    }

    private static Task<Run> Sign(StudyCopy copy, string document, string role)
    {
        var who = role == "author" ? "lab-scientist-one" : "medical-director-one";
        return Run.Of(
            "sign",
            document,
            "--role",
            role,
            "--key",
            copy.At("keys", who + ".p12"),
            "--passphrase-file",
            copy.At("keys", who + ".passphrase")
        );
    }

    private static string[] Lock(StudyCopy copy, string document) =>
        ["lock", copy.Study, "--by", "LS1", "--signed-protocol", document];

    private static Task<byte[]> Bytes(string path) =>
        File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken);
}
