using StabilityStudy.Cli.Tests.Walks;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

/// <summary>start makes a folder that check and plan accept, asks only where somebody can answer, and writes all or nothing.</summary>
public sealed class StartTests : IDisposable
{
    private const string Aptt = "aptt-whole-blood-room-temperature";

    private static readonly string[] s_answers =
    [
        "--facility",
        "Invented laboratory",
        "--time-zone",
        "America/New_York",
        "--person",
        "LS1=Lab Scientist One, lab scientist",
        "--person",
        "MD1=Medical Director One, medical director",
    ];

    private readonly StudyCopy _root = StudyCopy.CreateOf("");

    public void Dispose() => _root.Dispose();

    /// <summary>Some of the ready protocols; tests/long-proofs.sh asks for all of them.</summary>
    public static TheoryData<string> Protocols()
    {
        var all = Directory
            .EnumerateFiles(Path.Combine(RepositoryFile.Root, "protocols"), "*.toml")
            .Select(file => Path.GetFileNameWithoutExtension(file))
            .Order(StringComparer.Ordinal)
            .ToArray();
        var some = Math.Clamp(LongProof.Setting("START_PROTOCOLS", 3), 1, all.Length);
        return [.. Enumerable.Range(0, some).Select(i => all[i * all.Length / some])];
    }

    [Theory]
    [MemberData(nameof(Protocols))]
    public async Task A_ready_protocol_gives_a_folder_that_check_and_plan_accept(string name)
    {
        var folder = _root.At(name);

        var start = await Run.Of(["start", folder, "--protocol", name, .. s_answers]);
        var check = await Run.Of("check", folder);
        var plan = await Run.Of("plan", folder, "--studies", "1");
        // Some have words that a laboratory puts in, and are not locked without them.
        await File.WriteAllTextAsync(
            Path.Combine(folder, StudyBytes.ProtocolName),
            Placeholders.Answered(await Text(folder, StudyBytes.ProtocolName)),
            TestContext.Current.CancellationToken
        );

        // Most study a time that is hardly within reach, to show it; some do not, and there the reason is not kept.
        var locked = await Run.Of(
            "lock",
            folder,
            "--by",
            "LS1",
            "--accept-low-chance",
            "shows by how much today's rule would be exceeded"
        );
        var again = await Run.Of("check", folder);

        Assert.Equal(ExitCode.Done, start.Code);
        Assert.StartsWith(
            $"Study folder {folder} is ready. Nothing is locked yet.",
            start.Out,
            StringComparison.Ordinal
        );
        Assert.EndsWith(
            $"next: stability-study plan {folder}",
            start.Error.TrimEnd(),
            StringComparison.Ordinal
        );
        Assert.Equal(ExitCode.Done, check.Code);
        Assert.StartsWith("No data yet: next, plan and lock.", check.Out, StringComparison.Ordinal);
        Assert.Contains("Queries: 0 stop", check.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Done, plan.Code);
        Assert.Equal(ExitCode.Done, locked.Code);
        Assert.StartsWith(
            "Still marked CHANGE, and locked as it stands",
            locked.Error,
            StringComparison.Ordinal
        );
        Assert.Equal(ExitCode.Done, again.Code);
        Assert.StartsWith(
            "No data yet. The protocol is locked: next, print the worksheets",
            again.Out,
            StringComparison.Ordinal
        );
        Assert.Equal($"next: stability-study worksheet {folder}", again.Error.TrimEnd());
    }

    [Fact]
    public async Task A_mark_that_is_left_in_a_text_is_asked_about_and_keeps_the_protocol_from_being_locked()
    {
        var folder = _root.At("marked");
        await Run.Of(["start", folder, "--protocol", "anti-xa-ufh-whole-blood", .. s_answers]);

        var check = await Run.Of("check", folder);
        var run = await Run.Of("lock", folder, "--by", "LS1", "--accept-low-chance", "to be shown");

        Assert.Equal(ExitCode.Done, check.Code);
        Assert.Contains("[left-to-change]", check.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCode.StopQueries, run.Code);
        Assert.Contains("[left-to-change]", run.Out + run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(folder, "protocol.lock")));
    }

    [Fact]
    public async Task Where_nobody_can_be_asked_the_missing_options_are_named_and_nothing_is_written()
    {
        var folder = _root.At("new");

        var run = await Run.Of("start", folder, "--protocol", Aptt);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Equal("", run.Out);
        Assert.Contains("--facility, --time-zone, --person", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
        Assert.Contains(
            "--protocol",
            (await Run.Of(["start", folder, .. s_answers])).Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task At_a_terminal_it_asks_and_asks_again_for_what_will_not_do()
    {
        var folder = _root.At("aptt-2026");

        var (run, questions) = await Asked(
            folder,
            [
                "no-such",
                Aptt,
                "",
                "",
                "",
                "Invented laboratory",
                "Mars/Olympus",
                "none",
                "Lab Scientist One",
                "Medical Director One",
                "Invented analyzer",
                "R-1",
            ]
        );

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal(
            [
                "Which of them: ",
                "Which of them: ",
                "Study code, printed on every page [APTT-2026]: ",
                "Title [How long may whole blood for aPTT wait at room temperature, without heparin?]: ",
                "Laboratory, as the report names it: ",
                "Laboratory, as the report names it: ",
            ],
            questions.Take(6)
        );
        Assert.Equal(12, questions.Count);
        Assert.Contains(
            "There is no ready protocol \"no-such\"",
            run.Error,
            StringComparison.Ordinal
        );
        Assert.Contains("An answer is needed.", run.Error, StringComparison.Ordinal);
        Assert.Contains("\"Mars/Olympus\" is not in the IANA", run.Error, StringComparison.Ordinal);
        var facts = await Text(folder, StudyBytes.FactsName);
        Assert.Contains("\nfacility = \"Invented laboratory\"\n", facts, StringComparison.Ordinal);
        Assert.Contains("\n#time_zone = ", facts, StringComparison.Ordinal);
        Assert.Contains("\nname = \"Medical Director One\"\n", facts, StringComparison.Ordinal);
        Assert.Contains("\n[[instrument]]\nid = \"AN1\"\n", facts, StringComparison.Ordinal);
        Assert.Contains("\n[[lot]]\nid = \"R-1\"\n", facts, StringComparison.Ordinal);
        Assert.Contains(
            "\ncode = \"APTT-2026\"\n",
            await Text(folder, StudyBytes.ProtocolName),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task An_input_that_ends_leaves_nothing_behind()
    {
        var folder = _root.At("new");

        var (run, _) = await Asked(folder, [Aptt, ""]);

        Assert.Equal(ExitCode.Cancelled, run.Code);
        Assert.Equal(
            ["study"],
            Directory.EnumerateFileSystemEntries(_root.Root).Select(Path.GetFileName)
        );
    }

    [Fact]
    public async Task A_folder_that_is_not_empty_is_left_as_it_is()
    {
        var folder = _root.At("full");
        Directory.CreateDirectory(folder);
        await File.WriteAllTextAsync(
            Path.Combine(folder, ".hidden"),
            "kept",
            TestContext.Current.CancellationToken
        );

        var run = await Run.Of(["start", folder, "--protocol", Aptt, .. s_answers]);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Equal(
            $"{folder} is not empty (1 entry). Name a new folder; nothing was written.",
            run.Error.TrimEnd()
        );
        Assert.Equal(["full/.hidden"], _root.Files());
    }

    [Fact]
    public async Task A_file_is_no_folder()
    {
        var file = _root.At("file");
        await File.WriteAllTextAsync(file, "kept", TestContext.Current.CancellationToken);

        var run = await Run.Of(["start", file, "--protocol", Aptt, .. s_answers]);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("is a file", run.Error, StringComparison.Ordinal);
        Assert.Equal(
            "kept",
            await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken)
        );
    }

    [Fact]
    public async Task A_link_is_not_followed()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "links need a right there");
        var (link, target) = (_root.At("link"), _root.At("target"));
        Directory.CreateDirectory(target);
        Directory.CreateSymbolicLink(link, target);

        var run = await Run.Of(["start", link, "--protocol", Aptt, .. s_answers]);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Empty(Directory.EnumerateFileSystemEntries(target));
    }

    [Fact]
    public async Task An_empty_folder_that_is_there_is_used()
    {
        var folder = _root.At("empty");
        Directory.CreateDirectory(folder);

        var run = await Run.Of(["start", folder + "/", "--protocol", Aptt, .. s_answers]);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal(5, Directory.EnumerateFileSystemEntries(folder).Count());
    }

    [Fact]
    public async Task Where_nothing_can_be_written_nothing_is_left()
    {
        var parent = _root.At("parent");
        await File.WriteAllTextAsync(parent, "", TestContext.Current.CancellationToken);

        var run = await Run.Of([
            "start",
            Path.Combine(parent, "new"),
            "--protocol",
            Aptt,
            .. s_answers,
        ]);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("cannot be written", run.Error, StringComparison.Ordinal);
        Assert.Equal(["parent"], _root.Files());
    }

    [Theory]
    [InlineData("--person", "Lab Scientist One", "LS1=Lab Scientist One, lab scientist")]
    [InlineData("--person", "LS1=Lab Scientist One", "LS1=Lab Scientist One, lab scientist")]
    [InlineData("--instrument", "AN1", "AN1=Optical analyzer")]
    [InlineData("--lot", "R-1=reagent", "R-1=aPTT reagent, aPTT, 2027-01-31")]
    [InlineData("--lot", "R-1=reagent, aPTT, soon", "R-1=aPTT reagent, aPTT, 2027-01-31")]
    [InlineData("--lot", "R-1=reagent, PT", "It has aPTT.")]
    [InlineData("--code", "with space", "letters, digits")]
    [InlineData("--time-zone", "Mars/Olympus", "IANA")]
    [InlineData("--facility", "a\nb", "one line")]
    public async Task An_option_that_cannot_be_read_is_told_with_what_can_be(
        string option,
        string value,
        string says
    )
    {
        var folder = _root.At("new");
        var others = s_answers.Chunk(2).Where(pair => pair[0] != option).SelectMany(pair => pair);

        var run = await Run.Of(["start", folder, "--protocol", Aptt, option, value, .. others]);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Equal("", run.Out);
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }

    private static async Task<(Run Run, List<string> Questions)> Asked(
        string folder,
        string[] answers
    )
    {
        var left = new Queue<string>(answers);
        var questions = new List<string>();
        var run = await Run.With(
            terminal =>
                terminal with
                {
                    AskLine = question =>
                    {
                        questions.Add(question);
                        return left.TryDequeue(out var answer) ? answer : null;
                    },
                },
            TestContext.Current.CancellationToken,
            "start",
            folder
        );
        return (run, questions);
    }

    private static Task<string> Text(string folder, string name) =>
        File.ReadAllTextAsync(Path.Combine(folder, name), TestContext.Current.CancellationToken);
}
