using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Cli.Tests;

/// <summary>
/// One sheet of pairs of which fifteen leave the share open and twenty would show it: whoever looks at the fifteen first
/// and then adds the others concludes nothing from them.
/// </summary>
[Trait("lane", "slow")]
public sealed class LookTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;
    private const string Pairs = "pairs.csv";
    private const int First = 15;

    [Fact]
    public async Task Twenty_planned_and_looked_at_once_are_supported()
    {
        using var copy = Sheet(specimens: 20, rows: 21);

        var run = await Run.Of("analyze", copy.Study);

        Assert.Contains("[+] No anticoagulant: Supported to 12 h", run.Out, Comparison);
        Assert.DoesNotContain("looked at on", run.Out, Comparison);
    }

    [Fact]
    public async Task Fifteen_reported_as_inconclusive_are_not_extended_to_support()
    {
        using var copy = Sheet(First, First);
        await Run.Of(
            "lock",
            copy.Study,
            "--by",
            "LS1",
            "--accept-low-chance",
            "too few on purpose"
        );
        var first = await Run.Of("report", copy.Study);
        await Run.Of("trial-certificate", copy.At("keys"), "--name", "A");
        var signed = await Run.Of(
            "sign",
            copy.At("study", "out", "report.pdf"),
            "--role",
            "author",
            "--key",
            copy.At("keys", "a.p12"),
            "--passphrase-file",
            copy.At("keys", "a.passphrase"),
            "-o",
            copy.At("signed.pdf")
        );
        Rows(copy, 21);
        var added = await Run.Of("report", copy.Study, "-o", copy.At("added.pdf"));
        copy.Edit("protocol.toml", "specimens = 15", "specimens = 20");
        var locked = await Run.Of(
            "lock",
            copy.Study,
            "--by",
            "LS1",
            "--reason",
            "more willing",
            "--accept-low-chance",
            "too few on purpose"
        );
        var amended = await Run.Of("report", copy.Study, "-o", copy.At("amended.pdf"));
        var page = await Run.Of("analyze", copy.Study);
        var json = await Run.Of("analyze", copy.Study, "--json");

        Assert.Contains("\"keepsRules\": true", json.Out, Comparison);
        Assert.Equal((ExitCode.Done, ExitCode.Done), (first.Code, signed.Code));
        Assert.All(
            new[] { first, added, amended, page },
            run => Assert.Contains("Inconclusive", run.Out, Comparison)
        );
        Assert.Contains(
            "specimens added after the data had been looked at",
            Run.OneLine(added.Out),
            Comparison
        );
        Assert.Contains(
            "specimens added after the data had been looked at",
            Run.OneLine(page.Out),
            Comparison
        );
        Assert.Matches(
            @"The data were looked at on \d{4}-\d\d-\d\d with 14 of 15 pairs",
            Run.OneLine(page.Out)
        );
        Assert.Contains("Criteria unchanged: only planned numbers", locked.Out, Comparison);
        Assert.Contains("group.none.specimens: 15, now 20", locked.Out, Comparison);
        Assert.All(
            new[] { "added.pdf", "amended.pdf" },
            name => Assert.Equal(PartOutcome.Holds, Recomputed(copy.At(name)).Outcome)
        );
    }

    [Fact]
    public async Task Looking_again_at_the_same_data_changes_nothing_and_is_recorded_once()
    {
        using var copy = Sheet(20, 21);
        await Run.Of("analyze", copy.Study);
        var record = await Record(copy);
        await Run.Of("report", copy.Study, "-o", copy.At("1.pdf"));
        await Run.Of("analyze", copy.Study);
        await Run.Of("report", copy.Study, "-o", copy.At("2.pdf"));

        Assert.Contains("\"look\"", Assert.Single(record), Comparison);
        Assert.Single(await Record(copy), line => line.Contains("\"look\"", Comparison));
        Assert.Equal(
            await File.ReadAllBytesAsync(copy.At("1.pdf"), TestContext.Current.CancellationToken),
            await File.ReadAllBytesAsync(copy.At("2.pdf"), TestContext.Current.CancellationToken)
        );
    }

    [Theory]
    [InlineData("analyze")]
    [InlineData("report")]
    public async Task Before_the_planned_number_is_complete_only_counts_are_shown(string command)
    {
        using var copy = Sheet(20, First);
        var before = copy.Files();

        var run = await Run.Of(command, copy.Study);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("Collection is not complete", run.Out, Comparison);
        Assert.Contains("15 of 20", Run.OneLine(run.Out), Comparison);
        Assert.DoesNotContain("%", run.Out, Comparison);
        Assert.DoesNotContain("onclusive", run.Out, Comparison);
        Assert.Contains("--interim", run.Error, Comparison);
        Assert.Equal(before, copy.Files());
        Assert.All(
            (run.Out + run.Error).Split('\n'),
            line => Assert.True(line.TrimEnd().Length <= 80, line)
        );
    }

    [Fact]
    public async Task Counts_as_json_hold_no_figure()
    {
        using var copy = Sheet(20, First);

        var run = await Run.Of("analyze", copy.Study, "--json");

        Assert.Contains("\"countsOnly\": true", run.Out, Comparison);
        Assert.Contains("\"usable\": 15", run.Out, Comparison);
        Assert.DoesNotContain("conclusion", run.Out, Comparison);
    }

    [Fact]
    public async Task An_interim_look_warns_is_on_record_and_concludes_nothing_then_or_later()
    {
        using var copy = Sheet(20, First);

        var interim = await Run.Of("report", copy.Study, "--interim", "-o", copy.At("i.pdf"));
        var page = await Run.Of("analyze", copy.Study, "--interim");
        Rows(copy, 21);
        var later = await Run.Of("analyze", copy.Study);

        Assert.Contains(
            "Interim: collection is not complete",
            Run.OneLine(interim.Error),
            Comparison
        );
        Assert.Contains("INTERIM: collection is not complete", Run.OneLine(page.Out), Comparison);
        Assert.Contains("[?] No anticoagulant: Inconclusive", page.Out, Comparison);
        Assert.Single(await Record(copy), line => line.Contains("incomplete", Comparison));
        Assert.Equal(PartOutcome.Holds, Recomputed(copy.At("i.pdf")).Outcome);
        Assert.Contains("[?] No anticoagulant: Inconclusive", later.Out, Comparison);
        Assert.Matches(@"looked at on \S+ with 14 of 20 pairs", Run.OneLine(later.Out));
    }

    [Fact]
    public async Task A_study_that_ended_early_shows_all_and_one_looked_at_before_concludes_nothing()
    {
        using var copy = Sheet(21, 21);
        copy.Edit(
            "study.toml",
            "[[not_drawn]]\nspecimen = \"P-008\"",
            "[[not_drawn]]\nspecimen = \"P-021\""
        );
        copy.Edit("protocol.toml", "specimens = 21", "specimens = 25");
        using var looked = Sheet(25, 21);
        await Run.Of("analyze", looked.Study, "--interim");
        foreach (var study in new[] { copy, looked })
        {
            study.Edit(
                "study.toml",
                "\n[[person]]\ncode = \"LS1\"",
                "\nended_early = { reason = \"nobody else came\", by = \"LS1\", on = \"2026-05-13\" }\n\n[[person]]\ncode = \"LS1\""
            );
        }

        var ended = await Run.Of("analyze", copy.Study);
        var peeked = await Run.Of("analyze", looked.Study);

        Assert.DoesNotContain("INTERIM", ended.Out, Comparison);
        Assert.DoesNotContain("looked at on", ended.Out, Comparison);
        Assert.Contains("[?] No anticoagulant: Inconclusive", peeked.Out, Comparison);
        Assert.Contains("who looks before the end can stop", Run.OneLine(peeked.Out), Comparison);
    }

    private static StudyCopy Sheet(int specimens, int rows)
    {
        var copy = StudyCopy.CreateOf(
            ExampleStudy.SmallFolder,
            "protocol.toml",
            "study.toml",
            Pairs
        );
        copy.Edit("protocol.toml", "specimens = 20", $"specimens = {specimens}");
        Rows(copy, rows);
        return copy;
    }

    private static void Rows(StudyCopy copy, int rows) =>
        File.WriteAllLines(
            copy.At("study", Pairs),
            File.ReadLines(Path.Combine(ExampleStudy.SmallFolder, Pairs)).Take(rows + 1)
        );

    private static VerifiedPart Recomputed(string report) =>
        ReportVerifier
            .Verify(File.ReadAllBytes(report), VerificationOptions.WithoutTrust)
            .Parts.Single(part => part.Question.Contains("follow from the data", Comparison));

    private static async Task<string[]> Record(StudyCopy copy) =>
        await File.ReadAllLinesAsync(
            copy.At("study", StudyRecord.Name),
            TestContext.Current.CancellationToken
        );
}
