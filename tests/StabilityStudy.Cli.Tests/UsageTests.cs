using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

public sealed class UsageTests
{
    private static readonly string s_study = ExampleStudy.Folder;

    [Theory]
    [InlineData("help", "--help")]
    [InlineData("protocols", "protocols", "--help")]
    [InlineData("start", "start", "--help")]
    [InlineData("plan", "plan", "--help")]
    [InlineData("lock", "lock", "--help")]
    [InlineData("worksheet", "worksheet", "--help")]
    [InlineData("check", "check", "--help")]
    [InlineData("transcription", "transcription", "--help")]
    [InlineData("analyze", "analyze", "--help")]
    [InlineData("report", "report", "--help")]
    [InlineData("sign", "sign", "--help")]
    [InlineData("supported-windows", "supported-windows", "--help")]
    [InlineData("withdraw", "withdraw", "--help")]
    [InlineData("keep", "keep", "--help")]
    [InlineData("end", "end", "--help")]
    [InlineData("procedures", "procedures", "--help")]
    [InlineData("inspection", "inspection", "--help")]
    [InlineData("verify", "verify", "--help")]
    [InlineData("renew", "renew", "--help")]
    [InlineData("trial-certificate", "trial-certificate", "--help")]
    [InlineData("prove", "prove", "--help")]
    [InlineData("manual", "manual", "--help")]
    [InlineData("completions", "completions", "--help")]
    public async Task Help_says_what_the_golden_file_says(string name, params string[] arguments)
    {
        var run = await Run.Of(arguments);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal("", run.Error);
        RepositoryFile.RequireSame(
            $"tests/StabilityStudy.Cli.Tests/Golden/{name}.txt",
            run.Out.ReplaceLineEndings("\n")
        );
        Assert.All(run.Out.Split('\n'), line => Assert.True(line.TrimEnd().Length <= 80, line));
    }

    [Fact]
    public async Task Version_names_the_rules_and_the_commit_on_one_line()
    {
        var run = await Run.Of("--version");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Matches(
            @"^stability-study \S+, decision rules \d+, commit ([0-9a-f]{40}|unknown)\s*$",
            run.Out
        );
    }

    public static TheoryData<string, string[]> WrongCalls =>
        new()
        {
            { "Which command", [] },
            { "chek", ["chek", s_study] },
            { "--colour", ["check", s_study, "--colour"] },
            { "--colour", ["analyze", s_study, "--colour"] },
            { "--colour", ["report", s_study, "--colour"] },
            { "no ready protocol", ["protocols", "absent"] },
            { "FOLDER", ["start"] },
            { "no ready protocol", ["start", "absent", "--protocol", "absent"] },
            { "2026-03-05T14:20", ["check", s_study, "--as-of", "yesterday"] },
            { "--as-of", ["check", s_study, "--as-of"] },
            { "is two", ["check", s_study, "--as-of", "2026-03-08T02:30"] },
            { "is two", ["check", s_study, "--as-of", "2026-11-01T01:30"] },
            { "--rows", ["transcription", s_study, "--rows", "0"] },
            { "--seed", ["transcription", s_study, "--seed", "-1"] },
            { "--day", ["worksheet", s_study, "--day", "0"] },
            { "--seed", ["worksheet", s_study, "--seed", "-1"] },
            { "is no date", ["worksheet", s_study, "--date", "today"] },
            {
                "The days are",
                ["worksheet", s_study, "--page", "run-list", "--date", "2020-01-01"]
            },
            { "no frozen storage", ["worksheet", s_study, "--page", "frozen"] },
            { "The groups are", ["worksheet", s_study, "--specimens", "N-001..N-004"] },
            { "first and the last", ["worksheet", s_study, "--specimens", "none=N 1"] },
            {
                "named twice",
                ["worksheet", s_study, "--specimens", "none=A", "--specimens", "none=A"]
            },
            { "numbers are complete", ["worksheet", s_study, "--day", "1000"] },
            {
                "gap-down missing",
                [
                    "worksheet",
                    s_study,
                    "--label-sheet",
                    "columns=4 rows=12 width=45.7 height=21.2 left=9 top=21 gap-across=2",
                ]
            },
            { "is no measure", ["worksheet", s_study, "--label-sheet", "columns=four"] },
            { "is no size", ["worksheet", s_study, "--label-size", "45"] },
            {
                "does not go with",
                ["worksheet", s_study, "--label-size", "45x21", "--first-label", "3"]
            },
            { "1 to 48", ["worksheet", s_study, "--first-label", "49"] },
            { "at least", ["worksheet", s_study, "--label-size", "20x10"] },
            { "are a PDF", ["worksheet", s_study, "-o", "sheet.txt"] },
            { "no result up to", ["transcription", s_study, "--as-of", "2020-01-01T00:00"] },
            { "second", ["protocols", "frozen-plasma-20", "second"] },
            { "STUDY", ["check"] },
            { "STUDY", ["analyze"] },
            { "STUDY", ["report"] },
            { "second", ["check", s_study, "second"] },
            { "a5", ["report", s_study, "--paper", "a5"] },
            { "latex", ["report", s_study, "--format", "latex"] },
            { "--output", ["report", s_study, "--output"] },
            { "--output", ["report", s_study, "--output", ""] },
            { "@", ["check", "@answers.txt"] },
            { "no folder", ["check", Path.Combine(s_study, "absent")] },
            { "no folder", ["analyze", Path.Combine(s_study, "absent")] },
            { "no folder", ["report", Path.Combine(s_study, "absent")] },
            { "no folder", ["check", ""] },
            { "is a file", ["check", Path.Combine(s_study, "study.toml")] },
            { "is a file", ["report", Path.Combine(s_study, "study.toml")] },
            { "is a folder", ["report", s_study, "-o", s_study] },
            { "data file", ["report", s_study, "-o", Path.Combine(s_study, "results.csv")] },
            { "data file", ["report", s_study, "-o", Path.Combine(s_study, "PROTOCOL.TOML")] },
            { "data file", ["report", s_study, "-o", Path.Combine(s_study, "analysis.json")] },
            { "data file", ["report", s_study, "-o", Path.Combine(s_study, "record.jsonl")] },
            { "data file", ["report", s_study, "-o", Path.Combine(s_study, "protocol.lock")] },
            { "ends in .docx", ["report", s_study, "-o", "report.docx"] },
            { "asks for pdf", ["report", s_study, "-o", "report.html", "--format", "pdf"] },
            { "is a folder", ["verify", s_study] },
            { "--role", ["sign", "r.pdf", "--key", "k.p12"] },
            { "--key", ["sign", "r.pdf", "--role", "author"] },
            {
                "--key does not go with --prepare",
                ["sign", "r.pdf", "--role", "author", "--key", "k.p12", "--prepare", "p"]
            },
            {
                "--time-stamp does not go with --prepare",
                ["sign", "r.pdf", "--role", "a", "--prepare", "p", "--time-stamp", "https://t"]
            },
            {
                "--prepare does not go with --complete",
                ["sign", "r.pdf", "--prepare", "p", "--complete", "a.p7s"]
            },
            {
                "--role does not go with --complete",
                ["sign", "r.pdf", "--role", "author", "--complete", "a.p7s"]
            },
            {
                "--decision does not go with --complete",
                ["sign", "r.pdf", "--decision", "approve", "--complete", "a.p7s"]
            },
            {
                "--accept-not-recomputed does not go with --complete",
                ["sign", "r.pdf", "--accept-not-recomputed", "--complete", "a.p7s"]
            },
            {
                "cannot be written",
                [
                    "report",
                    s_study,
                    "--format",
                    "text",
                    "-o",
                    Path.Combine(s_study, "study.toml", "r.txt"),
                ]
            },
        };

    [Theory]
    [MemberData(nameof(WrongCalls))]
    public async Task Wrong_usage_is_said_on_the_error_output_alone(string says, string[] arguments)
    {
        var run = await Run.Of(arguments);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Equal("", run.Out);
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_numbers_of_the_exit_codes_are_a_contract() =>
        Assert.Equal(
            [0, 1, 2, 3, 4, 5, 70, 130],
            Enum.GetValues<ExitCode>().Select(code => (int)code)
        );
}
