using System.Globalization;

namespace StabilityStudy.Cli.Tests;

/// <summary>procedures over a folder of signed reports, and start --repeat from one of them.</summary>
[Trait("lane", "slow")]
public sealed class ProceduresTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static async Task<Run> Procedures(
        StudyCopy copy,
        string output,
        params string[] more
    ) =>
        await Run.Of([
            "procedures",
            copy.At("register"),
            "-o",
            output,
            "--trust",
            copy.At("keys"),
            .. more,
        ]);

    private static Dictionary<string, string>[] Cases(string path)
    {
        // No field of the example's cases holds a comma or a quotation mark but comment and words, which stand last.
        var rows = File.ReadAllLines(path).Select(line => line.Split(',')).ToArray();
        return
        [
            .. rows.Skip(1)
                .Select(row =>
                    rows[0].Zip(row).ToDictionary(field => field.First, field => field.Second)
                ),
        ];
    }

    [Theory]
    [InlineData("a4", "595")]
    [InlineData("letter", "612")]
    public async Task Every_document_is_written(string paper, string width)
    {
        using var copy = await SignedRegister.Copy();
        var output = copy.At("bench-" + paper);

        var run = await Procedures(copy, output, "--paper", paper);

        Assert.Equal((ExitCode.Done, ""), (run.Code, run.Error));
        string[] names =
        [
            "PT-wb-rt-card.pdf",
            "PT-wb-rt-rules.pdf",
            "PT-wb-rt-procedure.pdf",
            "PT-wb-rt-clients.pdf",
            "PT-wb-rt-training.pdf",
            "PT-wb-rt-rules.csv",
            "PT-wb-rt-cases.csv",
        ];
        Assert.Equal(
            names.Select(name => Path.Combine(output, name)),
            run.Out.TrimEnd().ReplaceLineEndings("\n").Split('\n')
        );
        Assert.Equal(
            names.Order(StringComparer.Ordinal),
            Directory.EnumerateFiles(output).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
        var info = await OutsideTool.Run("pdfinfo", Path.Combine(output, "PT-wb-rt-procedure.pdf"));
        Assert.Contains(width, info.Out, Comparison);
        var text = await OutsideTool.Run("pdftotext", Path.Combine(output, names[0]), "-");
        Assert.Contains("PT: how old may the tube be?", text.Out, Comparison);
        Assert.Contains("ask", text.Out, Comparison);
    }

    [Fact]
    public async Task Every_case_of_the_rule_table_is_the_answer_of_the_command_line()
    {
        using var copy = await SignedRegister.Copy();
        var output = copy.At("bench-cases");
        var made = await Procedures(copy, output, "--document", "rules");
        Assert.Equal((ExitCode.Done, ""), (made.Code, made.Error));
        var cases = Cases(Path.Combine(output, "PT-wb-rt-cases.csv"));
        Assert.InRange(cases.Length, 20, 100);
        foreach (var item in cases)
        {
            List<string> question =
            [
                "supported-windows",
                copy.At("register"),
                "--trust",
                copy.At("keys"),
                "--strict",
                "--analyte",
                item["analyte"],
                "--storage",
                item["storage"],
                "--as-of",
                item["tested_on"],
            ];
            Add("--group", item["group"]);
            Add("--waited", Seconds(item["age_seconds"]));
            Add("--spun", Minutes(item["spun_at_minutes"]));
            Add("--separated", Minutes(item["separated_at_minutes"]));
            Add("--instrument", item["instrument"]);
            Add("--lot", item["lot"]);
            Add("--unfit", item["tube_fault"]);
            var run = await Run.Of([.. question]);

            Assert.Equal("", run.Error);
            Assert.StartsWith(item["answer"].ToUpperInvariant() + ": ", run.Out, Comparison);

            void Add(string option, string value)
            {
                if (value.Length > 0)
                {
                    question.AddRange([option, value]);
                }
            }
        }

        // A tube that is collected after its test has no age that could be given.
        static string Seconds(string text) =>
            text.Length == 0 || text[0] == '-'
                ? ""
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"{int.Parse(text, CultureInfo.InvariantCulture) / 60} min {int.Parse(text, CultureInfo.InvariantCulture) % 60} s"
                );

        static string Minutes(string text) => text.Length == 0 ? "" : text + " min";
    }

    [Fact]
    public async Task A_changed_report_gives_no_document_and_says_what_to_take_down()
    {
        using var copy = await SignedRegister.Copy();
        var file = copy.At("register", "signed.pdf");
        var other = copy.At("register", "other.pdf");
        File.Copy(file, other);
        var bytes = await File.ReadAllBytesAsync(other, TestContext.Current.CancellationToken);
        bytes[bytes.Length / 3] ^= 1;
        await File.WriteAllBytesAsync(other, bytes, TestContext.Current.CancellationToken);

        var run = await Procedures(copy, copy.At("bench"));
        File.Delete(file);
        var alone = await Procedures(copy, copy.At("bench"));

        Assert.Equal(ExitCode.VerificationIncomplete, run.Code);
        Assert.Equal("", run.Out);
        Assert.Contains("No document for PT in wb-rt: ASK THE DIRECTOR", run.Error, Comparison);
        Assert.Contains("Take down what is posted for PT in wb-rt.", run.Error, Comparison);
        Assert.Equal(ExitCode.VerificationIncomplete, alone.Code);
        Assert.Contains("other.pdf: not counted.", alone.Error, Comparison);
        Assert.False(Directory.Exists(copy.At("bench")));
    }

    [Fact]
    public async Task A_time_from_spin_to_test_beyond_the_protocols_is_wrong_usage()
    {
        using var copy = await SignedRegister.Copy();

        var run = await Procedures(copy, copy.At("never"), "--spin-takes", "61 min");

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("at most 1 h after the spin", run.Error, Comparison);
    }

    [Theory]
    [InlineData("reduced", "Reduced repeat of ")]
    [InlineData("full", "Full repeat of ")]
    public async Task A_repeat_passes_check_plan_and_lock_and_names_the_original(
        string tier,
        string says
    )
    {
        using var copy = await SignedRegister.Copy();
        var folder = copy.At("repeat");

        var start = await Run.Of(
            "start",
            folder,
            "--repeat",
            copy.At("register", "signed.pdf"),
            "--trust",
            copy.At("keys"),
            "--tier",
            tier,
            "--reason",
            "new lot PT-2605"
        );
        var check = await Run.Of("check", folder);
        var plan = await Run.Of("plan", folder);
        var locked = await Run.Of("lock", folder, "--by", "LS1");

        Assert.Equal("", start.Code == ExitCode.Done ? "" : start.Error);
        Assert.StartsWith(says, start.Out, Comparison);
        Assert.All([check, plan, locked], run => Assert.Equal(ExitCode.Done, run.Code));
        var protocol = await File.ReadAllTextAsync(
            Path.Combine(folder, "protocol.toml"),
            TestContext.Current.CancellationToken
        );
        Assert.Matches("digest = \"[0-9a-f]{64}\"", protocol);
        Assert.Contains($"tier = \"{tier}\"", protocol, Comparison);
    }

    [Fact]
    public async Task Without_trust_a_reason_or_a_report_nothing_is_repeated()
    {
        using var copy = await SignedRegister.Copy();
        var report = copy.At("register", "signed.pdf");
        var folder = copy.At("never");

        var untrusted = await Run.Of("start", folder, "--repeat", report);
        var reasonless = await Run.Of(
            "start",
            folder,
            "--repeat",
            report,
            "--tier",
            "full",
            "--trust",
            copy.At("keys")
        );
        var both = await Run.Of(
            "start",
            folder,
            "--repeat",
            report,
            "--protocol",
            "pt-whole-blood"
        );
        var alone = await Run.Of("start", folder, "--reason", "new lot");

        Assert.All(
            [untrusted, reasonless, both, alone],
            run => Assert.Equal(ExitCode.WrongUsage, run.Code)
        );
        Assert.Contains("cannot be repeated", untrusted.Error, Comparison);
        Assert.Contains("--tier full takes --reason", reasonless.Error, Comparison);
        Assert.Contains("leave --protocol away", both.Error, Comparison);
        Assert.Contains("--reason goes with --repeat", alone.Error, Comparison);
        Assert.False(Directory.Exists(folder));
    }
}
