using System.Text.Json;

namespace StabilityStudy.Cli.Tests;

/// <summary>supported-windows over a folder of signed reports. The example's prothrombin time without anticoagulant: 8 h today, 10 h approved on a condition.</summary>
[Trait("lane", "slow")]
public sealed class SupportedWindowsTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static async Task<Run> Windows(params string[] more)
    {
        using var copy = await SignedRegister.Copy();
        return await Run.Of([
            "supported-windows",
            copy.At("register"),
            "--trust",
            copy.At("keys"),
            .. more,
        ]);
    }

    private static Task<Run> Ask(params string[] more) =>
        Windows(["--analyte", "PT", "--group", "none", .. more]);

    [Fact]
    public async Task What_is_in_force_is_shown_with_its_scope_and_conditions()
    {
        var run = await Windows();

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.StartsWith(
            "1 window in force, 0 to attend to. 1 report, as of ",
            run.Out,
            Comparison
        );
        Assert.Matches(
            "PT +No anticoagulant +wb-rt +10 h +[0-9-]{10} none set +[0-9a-f]{8}",
            run.Out
        );
        Assert.Contains(
            "instrument AN1; lot PT-2604; decided by Director One",
            run.Out,
            Comparison
        );
        Assert.Contains("condition: tubes stay closed", run.Out, Comparison);
        Assert.All(run.Out.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    [Fact]
    public async Task The_same_is_json()
    {
        var run = await Windows("--json");

        using var json = JsonDocument.Parse(run.Out);
        var window = json.RootElement.GetProperty("windows")[0];
        Assert.Equal("in-force", window.GetProperty("standing").GetString());
        Assert.Equal("PT10H", window.GetProperty("approved").GetString());
        Assert.Equal("PT8H", window.GetProperty("today").GetString());
        Assert.Equal(
            "decided",
            json.RootElement.GetProperty("reports")[0].GetProperty("standing").GetString()
        );
    }

    [Theory]
    [InlineData("8 h", "TEST", ExitCode.Done)]
    [InlineData("9:30", "TEST", ExitCode.Done)]
    [InlineData("10h", "TEST", ExitCode.Done)]
    [InlineData("600 min", "TEST", ExitCode.Done)]
    [InlineData("10:00:01", "DO NOT TEST", ExitCode.NotSupported)]
    [InlineData("601 min", "DO NOT TEST", ExitCode.NotSupported)]
    public async Task The_answer_comes_first_and_gives_the_exit_code(
        string waited,
        string answer,
        ExitCode code
    )
    {
        var run = await Ask("--waited", waited);

        Assert.Equal(code, run.Code);
        Assert.StartsWith(answer + ": PT, No anticoagulant, wb-rt, ", run.Out, Comparison);
        Assert.Equal(
            code == ExitCode.Done ? 1 : 2,
            run.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length
        );
        Assert.Equal("", run.Error);
    }

    [Fact]
    public async Task A_window_is_told_with_its_condition_scope_and_report()
    {
        var run = await Ask("--waited", "9 h 5 min");

        Assert.Contains("9 h 05 min of 10 h. Condition: tubes stay closed.", run.Out, Comparison);
        Assert.Contains("Only with instrument AN1, lot PT-2604.", run.Out, Comparison);
        Assert.Matches(@"\([^ ]+-[0-9a-f]{8}, in force from [0-9-]{10}\)", run.Out);
    }

    [Fact]
    public async Task What_is_not_tested_has_a_comment_to_report()
    {
        var old = await Ask("--waited", "11 h");
        var unknown = await Ask();

        Assert.Contains(
            "report: \"PT not tested: over 10 h from collection. Please send a new tube.\"",
            old.Out,
            Comparison
        );
        Assert.Equal(ExitCode.NotSupported, unknown.Code);
        Assert.Contains("PT not tested: collection time not known.", unknown.Out, Comparison);
    }

    [Fact]
    public async Task Another_lot_and_an_unknown_analyte_or_group_are_for_the_director()
    {
        var lot = await Ask("--waited", "9 h", "--lot", "PT-2605");
        var analyte = await Windows("--analyte", "INR", "--waited", "1 h");
        var group = await Windows("--analyte", "PT", "--waited", "1 h");

        Assert.All(
            [lot, analyte, group],
            run =>
            {
                Assert.Equal(ExitCode.VerificationIncomplete, run.Code);
                Assert.StartsWith("ASK THE DIRECTOR: ", run.Out, Comparison);
                Assert.Contains("Do not test meanwhile.", run.Out, Comparison);
            }
        );
        Assert.Contains("lot PT-2605 is not covered (PT-2604)", lot.Out, Comparison);
        Assert.Contains(
            "Due before it is used beyond that: for a new lot of the same reagent a reduced study at 10 h",
            lot.Out,
            Comparison
        );
        Assert.Contains("only for PT", analyte.Out, Comparison);
    }

    [Fact]
    public async Task Spin_separation_and_faults_of_the_tube_are_facts_too()
    {
        var late = await Ask("--waited", "10 h", "--spun", "9 h");
        var early = await Ask("--waited", "10 h", "--spun", "8 h 59 min");
        var plasma = await Ask("--waited", "9 h", "--separated", "1 h");
        var unfit = await Ask("--waited", "1 h", "--unfit", "clotted");
        var strict = await Ask("--waited", "10 h", "--strict");

        Assert.Equal(
            [
                ExitCode.Done,
                ExitCode.VerificationIncomplete,
                ExitCode.VerificationIncomplete,
                ExitCode.NotSupported,
                ExitCode.VerificationIncomplete,
            ],
            new[] { late, early, plasma, unfit, strict }.Select(run => run.Code)
        );
        Assert.Contains(
            "a spin 1 h 01 min before the test is not covered (at most 1 h)",
            early.Out,
            Comparison
        );
        Assert.Contains("PT not tested: tube unsuitable (clotted).", unfit.Out, Comparison);
        Assert.Contains("the lot is not stated (PT-2604)", strict.Out, Comparison);
        Assert.Contains("so the 10 h window does not hold", strict.Out, Comparison);
    }

    [Fact]
    public async Task A_changed_report_never_answers_test()
    {
        using var copy = await SignedRegister.Copy();
        var file = copy.At("register", "signed.pdf");
        var bytes = await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken);
        bytes[bytes.Length / 3] ^= 1;
        await File.WriteAllBytesAsync(file, bytes, TestContext.Current.CancellationToken);
        string[] register = ["supported-windows", copy.At("register"), "--trust", copy.At("keys")];

        var list = await Run.Of(register);
        // Out of sight it counts all the same.
        Directory.CreateDirectory(copy.At("register", "2026"));
        File.Move(file, copy.At("register", "2026", ".Signed.PDF"));
        var asked = await Run.Of([
            .. register,
            "--analyte",
            "PT",
            "--group",
            "none",
            "--waited",
            "1 min",
        ]);

        Assert.Equal(ExitCode.VerificationIncomplete, list.Code);
        Assert.StartsWith("0 windows in force, 1 to attend to.", list.Out, Comparison);
        Assert.Contains("! signed.pdf: not counted.", list.Out, Comparison);
        Assert.Equal(ExitCode.VerificationIncomplete, asked.Code);
        Assert.StartsWith("ASK THE DIRECTOR: ", asked.Out, Comparison);
        Assert.Contains(".Signed.PDF could not be verified now", asked.Out, Comparison);
    }

    [Fact]
    public async Task Without_trust_nothing_answers()
    {
        using var copy = await SignedRegister.Copy();
        var run = await Run.Of(
            "supported-windows",
            copy.At("register"),
            "--analyte",
            "PT",
            "--group",
            "none",
            "--waited",
            "1 h",
            "--json"
        );

        Assert.Equal(ExitCode.VerificationIncomplete, run.Code);
        using var json = JsonDocument.Parse(run.Out);
        Assert.Equal("ask-the-director", json.RootElement.GetProperty("verdict").GetString());
        Assert.Equal("report-not-trusted", json.RootElement.GetProperty("reason").GetString());
    }

    [Fact]
    public async Task A_folder_without_a_report_answers_nothing_and_says_what_to_do()
    {
        using var copy = StudyCopy.CreateLocked();

        var list = await Run.Of("supported-windows", copy.Study, "--all");
        var asked = await Run.Of(
            "supported-windows",
            copy.Study,
            "--analyte",
            "aPTT",
            "--waited",
            "1 h"
        );

        Assert.Equal(ExitCode.VerificationIncomplete, list.Code);
        Assert.StartsWith("0 windows in force, 1 to attend to. 0 reports", list.Out, Comparison);
        Assert.Contains(
            "Put the signed reports of your studies into it",
            Run.OneLine(list.Out),
            Comparison
        );
        Assert.Contains("locked and not reported", list.Out, Comparison);
        Assert.Equal(ExitCode.VerificationIncomplete, asked.Code);
        Assert.StartsWith("ASK THE DIRECTOR: aPTT", asked.Out, Comparison);
        Assert.Contains("no signed report in the folder", asked.Error, Comparison);
    }

    [Theory]
    [InlineData(
        "--lot",
        "PT-2605",
        "lot PT-2605 is not covered (PT-2604). Due before it is used beyond today's 8 h: for a new lot of the same reagent a reduced study at 10 h (start --repeat signed.pdf --reason \"new lot PT-2605\"); for another reagent the full study."
    )]
    [InlineData(
        "--instrument",
        "AN2",
        "instrument AN2 is not covered (AN1). Due before it is used beyond today's 8 h: the full study (start --repeat signed.pdf --tier full)."
    )]
    public async Task The_list_says_which_study_is_due(string option, string value, string says)
    {
        var run = await Windows(option, value);

        Assert.Contains(says, Run.OneLine(run.Out), Comparison);
    }

    [Fact]
    public async Task A_lot_and_an_instrument_that_are_covered_make_nothing_due()
    {
        var run = await Windows("--lot", "PT-2604", "--instrument", "AN1");

        Assert.DoesNotContain("is not covered", run.Out, Comparison);
    }

    [Theory]
    [InlineData("7 what? Write 7 h or 7 min.", "--analyte", "PT", "--waited", "7")]
    [InlineData("is no time", "--analyte", "PT", "--waited", "-1 h")]
    [InlineData("--spun: 7 what?", "--analyte", "PT", "--spun", "7")]
    [InlineData("is no time", "--analyte", "PT", "--waited", "")]
    [InlineData("is no time", "--analyte", "PT", "--waited", "1:75")]
    [InlineData("longer than ten years", "--analyte", "PT", "--waited", "9999 d")]
    [InlineData("--waited goes with --analyte", "--waited", "7 h")]
    [InlineData("YYYY-MM-DD", "--as-of", "yesterday")]
    public async Task What_cannot_be_read_is_wrong_usage(string says, params string[] more)
    {
        using var copy = StudyCopy.CreateSmall();

        var run = await Run.Of(["supported-windows", copy.Study, .. more]);
        var empty = await Run.Of("supported-windows", copy.Study);
        var absent = await Run.Of("supported-windows", copy.At("absent"));

        Assert.Equal(
            [ExitCode.WrongUsage, ExitCode.VerificationIncomplete, ExitCode.WrongUsage],
            [run.Code, empty.Code, absent.Code]
        );
        Assert.Contains(says, run.Error, Comparison);
        Assert.Contains("no signed report in the folder", Run.OneLine(empty.Out), Comparison);
        Assert.Contains("no folder", absent.Error, Comparison);
    }
}
