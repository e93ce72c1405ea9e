using System.Text;
using System.Text.Json;
using StabilityStudy.Cli.Console;
using StabilityStudy.Core.Text;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.Cli.Tests;

/// <summary>
/// Names in files, certificates and arguments try to steer the screen: erase a line, recolor, write a line of their own, turn the
/// direction of writing around, hide in zero width. What comes out is looked at character by character.
/// </summary>
public sealed class HostileTextTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    /// <summary>One of each kind: escape and C1 sequences, bell, line breaks, direction controls, zero width, separators, blank letters, tags.</summary>
    private const string Hostile =
        "x\u001b[2K\u001b]0;t\u0007\u009b31m\r\nAll four parts hold.\u0085\u202e\u2066\u2069\u200e\u200f\u061c\u200b\u200d\u2060\ufeff\u00ad\u2028\u2029\u3164\u115f\U000e0041y";

    private static void RequireHarmless(Run run)
    {
        Assert.NotEqual(ExitCode.InternalError, run.Code);
        Assert.NotEqual("", run.Out + run.Error);
        var unseen = (run.Out + run.Error)
            .ReplaceLineEndings("\n")
            .EnumerateRunes()
            .Where(rune => rune.Value != '\n' && UnseenCharacters.IsUnseen(rune))
            .Select(UnseenCharacters.NameOf);
        Assert.Empty(unseen);

        // A name begins no line of its own.
        Assert.DoesNotMatch(@"(?m)^ *All four parts hold\.", run.Out + run.Error);
    }

    [Theory]
    [InlineData("TEXT")]
    [InlineData("check TEXT")]
    [InlineData("check STUDY --TEXT")]
    [InlineData("analyze TEXT")]
    [InlineData("report TEXT")]
    [InlineData("report STUDY -o TEXT")]
    [InlineData("report STUDY -o TEXT.pdf/")]
    [InlineData("report STUDY --paper TEXT")]
    [InlineData("lock TEXT --by A")]
    [InlineData("lock STUDY --by TEXT")]
    [InlineData("lock STUDY --by A --key TEXT")]
    [InlineData("lock STUDY --by A --time-stamp TEXT")]
    [InlineData("sign TEXT --role author --key TEXT")]
    [InlineData("verify TEXT")]
    [InlineData("verify STUDY --trust TEXT")]
    [InlineData("verify STUDY --revoked TEXT")]
    [InlineData("protocols TEXT")]
    [InlineData("trial-certificate STUDY --name TEXT")]
    public async Task An_argument_does_not_steer_the_screen(string arguments)
    {
        using var copy = StudyCopy.Create();

        var run = await Run.Of([
            .. arguments
                .Split(' ')
                .Select(argument =>
                    argument
                        .Replace("STUDY", copy.Study, Comparison)
                        .Replace("TEXT", Hostile, Comparison)
                ),
        ]);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        RequireHarmless(run);
    }

    public static TheoryData<string, string, string> Places =>
        new()
        {
            { "protocol.toml", "name = \"Activated", "name = \"TEXT" },
            { "protocol.toml", "window_step =", "\"TEXT\" = 1\nwindow_step =" },
            { "protocol.toml", "window_step =", "[\"TEXT\"]\nwindow_step =" },
            { "study.toml", "facility = \"", "facility = \"TEXT" },
            { "study.toml", "facility = ", "\"TEXT\" = 1\nfacility = " },
            { "results.csv", "aPTT,baseline,", "\"TEXT\",baseline," },
            { "results.csv", "aPTT,baseline,", "aPTT,\"TEXT\"," },
            { "specimens.csv", "wb-rt", "\"TEXT\"" },
            { "specimens.csv", "tube", "\"TEXT\"" },
        };

    [Theory]
    [MemberData(nameof(Places))]
    public async Task A_text_in_a_study_file_does_not_steer_the_screen(
        string file,
        string from,
        string to
    )
    {
        using var copy = StudyCopy.Create();
        copy.Edit(
            file,
            from,
            to.Replace(
                "TEXT",
                file.EndsWith(".toml", Comparison) ? Escaped(Hostile) : Hostile,
                Comparison
            )
        );

        foreach (
            var arguments in (string[][])
                [
                    ["check", copy.Study],
                    ["check", copy.Study, "--json"],
                    ["analyze", copy.Study],
                    ["analyze", copy.Study, "--json"],
                    ["report", copy.Study],
                    ["lock", copy.Study, "--by", "A"],
                ]
        )
        {
            var run = await Run.Of(arguments);

            // A lock reads the protocol alone.
            Assert.Equal(
                arguments[0] == "lock" && file != "protocol.toml"
                    ? ExitCode.Done
                    : ExitCode.StopQueries,
                run.Code
            );
            RequireHarmless(run);
            if (arguments[^1] == "--json")
            {
                JsonDocument.Parse(run.Out).Dispose();
            }
        }
    }

    [Fact]
    public async Task A_name_that_stops_nothing_reaches_no_report_as_it_is()
    {
        using var copy = StudyCopy.Create();
        var lines = File.ReadAllLines(Path.Combine(copy.Study, "results.csv"));
        File.WriteAllLines(
            Path.Combine(copy.Study, "results.csv"),
            lines.Select((line, i) => line + (i == 0 ? $",\"{Hostile}\"" : ","))
        );
        File.WriteAllText(
            Path.Combine(copy.Study, Hostile.Replace("/", "", Comparison) + ".csv"),
            "a\n1\n"
        );

        foreach (var format in (string[])["text", "html", "pdf"])
        {
            var file = copy.At("report." + (format == "text" ? "txt" : format));
            RequireHarmless(await Run.Of("report", copy.Study, "-o", file));
            if (format != "pdf")
            {
                RequireHarmless(
                    new(
                        ExitCode.Done,
                        await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken),
                        ""
                    )
                );
            }
        }

        RequireHarmless(await Run.Of("check", copy.Study));
        RequireHarmless(await Run.Of("check", copy.Study, "--json"));
        RequireHarmless(await Run.Of("analyze", copy.Study));
        RequireHarmless(await Run.Of("analyze", copy.Study, "--json"));
        var verified = await Run.Of("verify", copy.At("report.pdf"));
        Assert.Equal(ExitCode.VerificationFailed, verified.Code);
        RequireHarmless(verified);
        Assert.Contains("[U+202E]", (await Run.Of("check", copy.Study)).Out, Comparison);
    }

    [Fact]
    [Trait("lane", "slow")]
    public async Task A_certificate_does_not_steer_the_screen()
    {
        using var copy = StudyCopy.CreateSmall();
        await Run.Of("report", copy.Study);
        var made = TrialCertificate.Create(
            Hostile,
            "Org\u202e\u001b[1m",
            DateTimeOffset.UtcNow.AddMinutes(-1),
            DateTimeOffset.UtcNow.AddDays(1),
            "p",
            new byte[16]
        );
        File.WriteAllBytes(copy.At("key.p12"), made.Pkcs12.ToArray());
        File.WriteAllText(copy.At("trust.pem"), made.CertificatePem);
        File.WriteAllText(copy.At("pass"), "p\n");

        string[] sign =
        [
            "sign",
            copy.At("study", "out", "report.pdf"),
            "--role",
            "author",
            "--key",
            copy.At("key.p12"),
            "--passphrase-file",
            copy.At("pass"),
            "-o",
            copy.At("signed.pdf"),
        ];

        // A name that a stamp cannot show signs no report; a lock has no stamp.
        var refused = await Run.Of(sign);
        var locked = await Run.Of(
            "lock",
            copy.Study,
            "--by",
            "A",
            "--key",
            copy.At("key.p12"),
            "--passphrase-file",
            copy.At("pass")
        );

        Assert.Equal(ExitCode.WrongUsage, refused.Code);
        RequireHarmless(refused);
        Assert.Equal(ExitCode.Done, locked.Code);
        RequireHarmless(locked);
        RequireHarmless(await Run.Of("report", copy.Study));
        foreach (
            var more in (string[][])
                [
                    ["--json"],
                    ["--trust", copy.At("trust.pem")],
                ]
        )
        {
            RequireHarmless(
                await Run.Of(["verify", copy.At("study", "out", "report.pdf"), .. more])
            );
        }
    }

    [Fact]
    public async Task A_PDF_with_such_names_does_not_steer_the_screen()
    {
        using var copy = StudyCopy.CreateSmall();
        var report = copy.At("report.pdf");
        await Run.Of("report", copy.Study, "-o", report);
        var name = string.Concat(
            Hostile.Where(c => !char.IsControl(c) && c is not '/' and not ':' and not '\\')
        );
        Assert.True(
            DeterministicRewrite
                .Rewrite(
                    File.ReadAllBytes(report),
                    new RewriteOptions(
                        Hostile,
                        Hostile,
                        Hostile,
                        "en",
                        Date: null,
                        [
                            new Attachment(
                                name + ".csv",
                                "text/csv",
                                Hostile,
                                AttachmentRelationship.Data,
                                "a\n"u8.ToArray()
                            ),
                            new Attachment(
                                "protocol.toml",
                                "text/plain",
                                Hostile,
                                AttachmentRelationship.Data,
                                Encoding.UTF8.GetBytes("format = 1\n\"\\u202e\\u001b\\n\" = 1\n")
                            ),
                        ]
                    )
                )
                .TryGet(out var changed, out _)
        );
        File.WriteAllBytes(report, changed.ToArray());

        RequireHarmless(await Run.Of("verify", report));
        RequireHarmless(await Run.Of("verify", report, "--json"));
    }

    [Fact]
    public async Task A_line_of_the_record_does_not_steer_the_screen()
    {
        using var copy = StudyCopy.Create();
        File.WriteAllText(
            Path.Combine(copy.Study, "record.jsonl"),
            "{\"number\":1,\"by\":\"\\u001b[2K\u202e\",\"previous\":\"\u202e\"}\n"
        );

        RequireHarmless(await Run.Of("check", copy.Study));
        RequireHarmless(await Run.Of("analyze", copy.Study));
    }

    [Fact]
    public void Whatever_is_written_in_whatever_pieces_no_unseen_character_comes_out()
    {
        var random = new Random(20260601);
        for (var round = 0; round < 2_000; round++)
        {
            var text = Any(random);
            using var output = new StringWriter { NewLine = "\n" };
            var terminal = new Terminal(output, TextWriter.Null, false, UsesColor: false, 80);

            for (var at = 0; at < text.Length; )
            {
                var piece = text.Substring(at, Math.Min(random.Next(1, 5), text.Length - at));
                at += piece.Length;
                switch (random.Next(4))
                {
                    case 0:
                        terminal.Out.Write(piece);
                        break;
                    case 1:
                        terminal.Out.WriteLine(piece);
                        break;
                    case 2:
                        terminal.Out.Write(piece.ToCharArray());
                        break;
                    default:
                        foreach (var unit in piece)
                        {
                            terminal.Out.Write(unit);
                        }

                        break;
                }
            }

            Assert.All(
                output.ToString().EnumerateRunes(),
                rune => Assert.True(rune.Value == '\n' || !UnseenCharacters.IsUnseen(rune))
            );
        }
    }

    [Fact]
    public void JSON_keeps_every_character_and_shows_none_that_cannot_be_seen()
    {
        var random = new Random(20260602);
        for (var round = 0; round < 2_000; round++)
        {
            // A lone half of a character cannot stand in UTF-8; a writer of JSON replaces it.
            var text = string.Concat(Any(random).EnumerateRunes().Select(rune => rune.ToString()));
            using var output = new StringWriter { NewLine = "\n" };
            using var bytes = new MemoryStream();
            using (
                var json = new Utf8JsonWriter(
                    bytes,
                    new()
                    {
                        Indented = true,
                        Encoder = System
                            .Text
                            .Encodings
                            .Web
                            .JavaScriptEncoder
                            .UnsafeRelaxedJsonEscaping,
                    }
                )
            )
            {
                json.WriteStartArray();
                json.WriteStringValue(text);
                json.WriteEndArray();
            }

            new Terminal(output, TextWriter.Null, false, UsesColor: false, 80).WriteJson(
                bytes.ToArray()
            );

            Assert.Equal(text, JsonDocument.Parse(output.ToString()).RootElement[0].GetString());
            Assert.All(
                output.ToString().EnumerateRunes(),
                rune => Assert.True(rune.Value == '\n' || !UnseenCharacters.IsUnseen(rune))
            );
        }
    }

    /// <summary>In the escapes of TOML.</summary>
    private static string Escaped(string text) =>
        string.Concat(
            text.EnumerateRunes().Select(rune => FormattableString.Invariant($"\\U{rune.Value:X8}"))
        );

    private static string Any(Random random)
    {
        var text = new StringBuilder();
        for (var i = random.Next(1, 30); i > 0; i--)
        {
            text.Append(
                random.Next(4) switch
                {
                    0 => ((char)random.Next(0x20, 0x7F)).ToString(),
                    1 => Hostile[random.Next(Hostile.Length)].ToString(),
                    2 => ((char)random.Next(0, 0x10000)).ToString(),
                    _ => new Rune(random.Next(0x10000, 0x110000)).ToString(),
                }
            );
        }

        return text.ToString();
    }
}
