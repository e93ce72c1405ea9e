using System.Globalization;
using System.Text;
using System.Text.Json;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests.Walks;

/// <summary>A study that is carried out from a ready protocol, command after command, in a folder of its own.</summary>
internal sealed class WalkedStudy : IDisposable
{
    public const string TimeZone = "America/New_York";
    public const string Instrument = "AN1";

    /// <summary>Keys of the year in which studies begin, and of the next one: a trial certificate is valid for a year, and one protocol takes longer.</summary>
    private static readonly Lazy<Task<StudyCopy>> s_keys = new(MakeKeys);

    private static readonly (string Role, string Name)[] s_signers =
    [
        ("author", "Lab Scientist One"),
        ("reviewer", "Lab Scientist Two"),
        ("approver", "Medical Director One"),
    ];

    private static readonly DateOnly s_firstDay = new(2026, 3, 2);
    private readonly StudyCopy _copy = StudyCopy.CreateOf("");
    private readonly SetClock _clock = new();
    private readonly string _name;
    private readonly int _seed;

    public WalkedStudy(string name, int seed)
    {
        (_name, _seed) = (name, seed);
        Folder = _copy.At("walked");
    }

    public string Folder { get; }

    /// <summary>The protocol as it was locked.</summary>
    public StudyProtocol Protocol { get; private set; } = null!;

    /// <summary>Chance of supported with no change, by time point.</summary>
    public Dictionary<
        (string Analyte, string Group, string Storage, string TimePoint),
        double
    > Chances { get; } = [];

    public static string LotOf(StudyProtocol protocol, Analyte analyte) =>
        string.Create(CultureInfo.InvariantCulture, $"R-{protocol.Analytes.IndexOf(analyte) + 1}");

    public void Dispose() => _copy.Dispose();

    /// <summary>start, the marked places answered, check, plan, its document signed, lock, worksheet.</summary>
    public async Task UntilTheFirstTube(int studies)
    {
        _clock.Now = At(s_firstDay, 8).AddDays(-14);
        var ready = Read(Path.Combine(RepositoryFile.Root, "protocols", _name + ".toml"));
        await Done([
            "start",
            Folder,
            "--protocol",
            _name,
            "--facility",
            "Invented laboratory",
            "--time-zone",
            TimeZone,
            "--person",
            "LS1=Lab Scientist One, lab scientist",
            "--person",
            "LS2=Lab Scientist Two, lab scientist",
            "--person",
            "MD1=Medical Director One, medical director",
            "--instrument",
            Instrument + "=Invented analyzer",
            .. ready.Analytes.SelectMany(analyte =>
                (string[])["--lot", $"{LotOf(ready, analyte)}=reagent, {analyte.Id}, 2028-12-31"]
            ),
            "--invented",
        ]);
        await Edit("protocol.toml", Placeholders.Answered);
        Protocol = Read(Path.Combine(Folder, "protocol.toml"));

        var check = await Done("check", Folder);
        Assert.StartsWith("No data yet: next, plan and lock.", check.Out, StringComparison.Ordinal);
        Assert.Contains("Queries: 0 stop", check.Out, StringComparison.Ordinal);

        var plan = await Done(
            "plan",
            Folder,
            "--json",
            "--studies",
            studies.ToString(CultureInfo.InvariantCulture)
        );
        TakeChances(plan.Out);

        var document = Path.Combine(Folder, "out", "protocol.pdf");
        await Done("plan", Folder, "--document", document);
        foreach (var (role, name) in s_signers.Where(signer => signer.Role != "reviewer"))
        {
            _clock.Now = _clock.Now.AddHours(1);
            document = await Sign(document, role, name);
        }

        _clock.Now = _clock.Now.AddDays(1);
        await Done(
            "lock",
            Folder,
            "--by",
            "LS1",
            "--signed-protocol",
            document,
            "--accept-low-chance",
            "shows by how much today's rule would be exceeded"
        );
        await Done("worksheet", Folder, "--day", "1");
    }

    /// <summary>Half of the tests are done: check shows what is there and what is due, and the worksheet of the day is printed.</summary>
    public async Task WhileCollecting(InventedTruth truth)
    {
        var data = Data(truth);
        var times = data.Tubes.Select(tube => tube.TestedAt).Order().ToArray();
        var moment = times[times.Length / 2];
        data.Write(Folder, moment);
        _clock.Now = moment;

        var check = await Done(
            "check",
            Folder,
            "--as-of",
            TimeZoneInfo
                .ConvertTime(moment, TimeZoneInfo.FindSystemTimeZoneById(TimeZone))
                .ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture)
        );
        Assert.StartsWith("Collecting, day ", check.Out, StringComparison.Ordinal);
        Assert.Contains("\nQueries: 0 stop", check.Out, StringComparison.Ordinal);
        foreach (var group in Protocol.Groups)
        {
            Assert.Contains($" of {group.Specimens} ", check.Out, StringComparison.Ordinal);
        }

        if (Protocol.Storages.Any(storage => storage.HighestCelsius > 0))
        {
            await Done("worksheet", Folder, "--page", "run-list");
        }
    }

    /// <summary>All data are in: what was recorded, the transcription check, every query answered.</summary>
    public async Task DataComplete(InventedTruth truth)
    {
        var data = Data(truth);
        data.Write(Folder, DateTimeOffset.MaxValue);
        _clock.Now = data.End.AddHours(1);
        await Edit("study.toml", text => Placeholders.Recorded(text, Protocol));
        var sheet = await Done("transcription", Folder, "--seed", "20260306");
        Assert.Contains("20260306", sheet.Out, StringComparison.Ordinal);
        await Edit(
            "study.toml",
            text =>
                Placeholders.Fill(
                    text,
                    "[[transcription_check]]",
                    $"""
                    seed = 20260306
                    rows = 20
                    differences = 0
                    by = "LS2"
                    on = "{Day(_clock.Now)}"
                    """
                )
        );
    }

    /// <summary>Answers what check still asks; gives the codes of what it asked. Notes need no answer.</summary>
    public async Task<ImmutableArray<string>> AnswerQueries()
    {
        var check = await Done("check", Folder, "--json");
        using var json = JsonDocument.Parse(check.Out);
        var open = json
            .RootElement.GetProperty("queries")
            .EnumerateArray()
            .Where(query => Text(query, "severity") == "attention")
            .ToArray();
        await Edit(
            "study.toml",
            text =>
                text
                + string.Concat(
                    open.Select(query =>
                        $"""

                            [[answer]]
                            query = "{Text(query, "reference")}"
                            text = "The director was asked and leaves it so in this invented study."
                            by = "LS1"
                            on = "{Day(_clock.Now)}"

                            """
                    )
                )
        );
        var answered = await Done("check", Folder);
        Assert.Contains("\nQueries: 0 stop, 0 attention", answered.Out, StringComparison.Ordinal);
        return [.. open.Select(query => Text(query, "code"))];
    }

    /// <summary>What the report says it lacks.</summary>
    public async Task<string> Lacking()
    {
        var path = Path.Combine(Folder, "out", "report.txt");
        await Done("report", Folder, "--format", "text", "-o", path);
        var text = await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken);
        var section = text.Split("\nWhat the report lacks\n")[1];
        return section[..section.IndexOf("Twenty items", StringComparison.Ordinal)]
            .TrimStart('-', '\n');
    }

    /// <summary>The report, signed by everybody, with the decision; what verify then says.</summary>
    public async Task<Run> Decided(params string[] decision)
    {
        await Done("report", Folder);
        var report = Path.Combine(Folder, "out", "report.pdf");
        foreach (var (role, name) in Signers())
        {
            _clock.Now = _clock.Now.AddHours(2);
            report = await Sign(report, role, name, role == "approver" ? decision : []);
        }

        var keys = await s_keys.Value;
        return await At([
            "verify",
            report,
            "--trust",
            keys.At("keys"),
            "--trust",
            keys.At("later-keys"),
        ]);
    }

    /// <summary>What each time point's own data conclude, from analysis.json.</summary>
    public async Task<
        Dictionary<(string Analyte, string Group, string Storage, string TimePoint), string>
    > Conclusions()
    {
        using var json = JsonDocument.Parse(
            await File.ReadAllBytesAsync(
                Path.Combine(Folder, "out", "analysis.json"),
                TestContext.Current.CancellationToken
            )
        );
        return json
            .RootElement.GetProperty("sequences")
            .EnumerateArray()
            .SelectMany(sequence => sequence.GetProperty("cells").EnumerateArray())
            .ToDictionary(
                cell =>
                    (
                        Text(cell, "analyte"),
                        Text(cell, "group"),
                        Text(cell, "storage"),
                        Text(cell, "timePoint")
                    ),
                cell => Text(cell, "ownConclusion")
            );
    }

    /// <summary>The same study once more, as it is now.</summary>
    public WalkedStudy Again()
    {
        var other = new WalkedStudy(_name, _seed) { Protocol = Protocol };
        other._clock.Now = _clock.Now;
        foreach (var file in _copy.Files())
        {
            Directory.CreateDirectory(Path.GetDirectoryName(other._copy.At(file))!);
            File.Copy(_copy.At(file), other._copy.At(file));
        }

        return other;
    }

    /// <summary>A command that does what it should.</summary>
    public async Task<Run> Done(params string[] arguments)
    {
        var run = await At(arguments);
        Assert.True(
            run.Code == ExitCode.Done,
            $"{string.Join(' ', arguments)}\n{run.Code}\n{run.Out}\n{run.Error}"
        );
        return run;
    }

    private Task<Run> At(string[] arguments) =>
        Run.With(
            terminal => terminal with { Clock = _clock },
            TestContext.Current.CancellationToken,
            arguments
        );

    private InventedFiles Data(InventedTruth truth) => new(Protocol, truth, _seed, s_firstDay);

    private IEnumerable<(string Role, string Name)> Signers() =>
        s_signers.Where(signer => Protocol.Signatories.Any(item => item.Role == signer.Role));

    /// <summary>Signs a file; gives the name of the signed one.</summary>
    private async Task<string> Sign(string file, string role, string name, params string[] more)
    {
        var keys = await s_keys.Value;
        var folder = _clock.Now < At(s_firstDay, 8).AddDays(300) ? "keys" : "later-keys";
        var key = keys.At(folder, name.ToLowerInvariant().Replace(' ', '-'));
        var run = await Done([
            "sign",
            file,
            "--role",
            role,
            "--key",
            key + ".p12",
            "--passphrase-file",
            key + ".passphrase",
            .. more,
        ]);
        return run.Out.TrimEnd().Split('\n')[^1].TrimEnd();
    }

    private static async Task<StudyCopy> MakeKeys()
    {
        var copy = StudyCopy.UntilAllHaveRun(StudyCopy.CreateOf(""));
        foreach (var (folder, days) in new[] { ("keys", -30), ("later-keys", 270) })
        {
            var clock = new SetClock { Now = At(s_firstDay, 8).AddDays(days) };
            foreach (var (_, name) in s_signers)
            {
                await Run.With(
                    terminal => terminal with { Clock = clock },
                    TestContext.Current.CancellationToken,
                    "trial-certificate",
                    copy.At(folder),
                    "--name",
                    name
                );
            }
        }

        return copy;
    }

    private void TakeChances(string plan)
    {
        using var json = JsonDocument.Parse(plan);
        foreach (var row in json.RootElement.GetProperty("rows").EnumerateArray())
        {
            foreach (var time in row.GetProperty("timePoints").EnumerateArray())
            {
                foreach (
                    var chance in time.GetProperty("chances")
                        .EnumerateArray()
                        .Where(item => item.GetProperty("shareOfExpected").GetDouble() == 0)
                )
                {
                    Chances[
                        (
                            Text(row, "analyte"),
                            Text(row, "group"),
                            Text(row, "storage"),
                            Text(time, "timePoint")
                        )
                    ] = chance.GetProperty("together").GetProperty("probability").GetDouble();
                }
            }
        }
    }

    private static string Text(JsonElement element, string name) =>
        element.GetProperty(name).GetString()!;

    private async Task Edit(string name, Func<string, string> change)
    {
        var path = Path.Combine(Folder, name);
        var text = await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(path, change(text), TestContext.Current.CancellationToken);
    }

    private static StudyProtocol Read(string path)
    {
        var outcome = ProtocolReader.Read(File.ReadAllBytes(path), Path.GetFileName(path));
        Assert.True(
            outcome.TryGet(out var protocol),
            string.Join('\n', outcome.Queries.Select(query => query.Message))
        );
        return protocol;
    }

    private static DateTimeOffset At(DateOnly day, int hour)
    {
        var local = day.ToDateTime(new TimeOnly(hour, 0));
        return new(local, TimeZoneInfo.FindSystemTimeZoneById(TimeZone).GetUtcOffset(local));
    }

    private static string Day(DateTimeOffset time) =>
        time.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
