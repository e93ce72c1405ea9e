using System.Text.Json;
using StabilityStudy.Cli.Commands;
using StabilityStudy.Cli.Console;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Proving;

namespace StabilityStudy.Cli.Tests;

/// <summary>prove: what is told, written and returned.</summary>
[Trait("lane", "slow")]
public sealed class ProveTests : IDisposable
{
    private static readonly ProofRun s_run = new(
        "the program",
        "a system",
        "X64",
        "a run time",
        "invariant",
        new DateTimeOffset(2030, 5, 6, 7, 8, 9, TimeSpan.FromHours(2)),
        "Europe/Berlin",
        "Lab Scientist One"
    );

    private static readonly ProgramProof s_wrong = new([
        new(
            "A part",
            "Explained.",
            [
                new(
                    "A case",
                    "a book",
                    "a reason",
                    [
                        new("right", "1.5", "1.52", "within 0.05", Agreement.Agrees),
                        new("wrong", "-2.1", "-2.3", "within 0.05", Agreement.Differs),
                        new("elsewhere", "3", "not here", "equal", Agreement.NotChecked),
                    ]
                ),
            ]
        ),
    ]);

    private readonly string _folder = Directory
        .CreateTempSubdirectory("stability-study-prove-")
        .FullName;

    [Fact]
    public async Task Everything_agrees_and_is_told_a_line_a_case()
    {
        var run = await Run.Of("prove");

        Assert.Equal("", run.Error);
        Assert.Equal(ExitCode.Done, run.Code);
        RepositoryFile.RequireSame(
            "tests/StabilityStudy.Cli.Tests/Golden/proved.txt",
            run.Out.ReplaceLineEndings("\n")
        );
        Assert.All(run.Out.Split('\n'), line => Assert.True(line.TrimEnd().Length <= 80, line));
    }

    [Fact]
    public async Task The_document_and_JSON_name_who_ran_it_where_and_when()
    {
        var file = Path.Combine(_folder, "proof.pdf");

        var run = await Run.Of("prove", "-o", file, "--by", "Lab Scientist One", "--json");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal("%PDF"u8, File.ReadAllBytes(file).AsSpan(0, 4));
        using var json = JsonDocument.Parse(run.Out);
        Assert.True(json.RootElement.GetProperty("agrees").GetBoolean());
        Assert.Equal("Lab Scientist One", json.RootElement.GetProperty("by").GetString());
        Assert.StartsWith(
            "stability-study ",
            json.RootElement.GetProperty("program").GetString(),
            StringComparison.Ordinal
        );
        Assert.All(
            ["operatingSystem", "architecture", "runTime", "culture", "at", "timeZone"],
            name => Assert.NotEqual("", json.RootElement.GetProperty(name).GetString())
        );
    }

    [Fact]
    public void What_differs_is_told_in_full_with_exit_code_4()
    {
        var (code, text) = Tell(json: false);

        Assert.Equal(ExitCode.VerificationFailed, code);
        Assert.Equal(
            """
            A part
              1 of 3    A case
                DIFFERS: wrong. Expected -2.1 (within 0.05), found -2.3.
                not checked: elsewhere. Expected 3 (equal), found not here.

            1 of 3 figures DO NOT AGREE. Do not use this program on this computer for a
            study until the reason is found. 1 could not be checked on this computer.

            """.ReplaceLineEndings("\n"),
            text.ReplaceLineEndings("\n")
        );
    }

    [Fact]
    public void JSON_has_every_figure_as_it_stands()
    {
        var (code, text) = Tell(json: true);

        Assert.Equal(ExitCode.VerificationFailed, code);
        using var json = JsonDocument.Parse(text);
        Assert.False(json.RootElement.GetProperty("agrees").GetBoolean());
        Assert.Equal("2030-05-06T07:08:09+02:00", json.RootElement.GetProperty("at").GetString());
        var only = json.RootElement.GetProperty("cases")[0];
        Assert.Equal("a book", only.GetProperty("source").GetString());
        Assert.Equal("a reason", only.GetProperty("reasonOfTolerance").GetString());
        Assert.Equal(
            ["agrees", "differs", "not-checked"],
            only.GetProperty("figures")
                .EnumerateArray()
                .Select(figure => figure.GetProperty("outcome").GetString())
        );
        Assert.Equal(
            ("wrong", "-2.1", "-2.3", "within 0.05"),
            (Of("figure"), Of("expected"), Of("found"), Of("tolerance"))
        );

        string? Of(string name) => only.GetProperty("figures")[1].GetProperty(name).GetString();
    }

    [Fact]
    public async Task What_would_be_destroyed_or_is_no_PDF_is_refused_before_anything_is_run()
    {
        var signed = Path.Combine(_folder, "signed.pdf");
        File.Copy(
            Path.Combine(
                RepositoryFile.Root,
                "tests/ReferenceData/releases/0.5.0/small-paired-sheet.pdf"
            ),
            signed
        );
        var before = File.ReadAllBytes(signed);
        Directory.CreateDirectory(Path.Combine(_folder, "folder.pdf"));

        await Refused("holds a signature", "-o", signed);
        await Refused("is a folder", "-o", Path.Combine(_folder, "folder.pdf"));
        await Refused("Name it like", "-o", Path.Combine(_folder, "proof.txt"));
        await Refused("--by needs a text", "--by", " ");

        Assert.Equal(before, File.ReadAllBytes(signed));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static async Task Refused(string why, params string[] options)
    {
        var run = await Run.Of(["prove", .. options]);

        Assert.Equal((ExitCode.WrongUsage, ""), (run.Code, run.Out));
        Assert.Contains(why, run.Error, StringComparison.Ordinal);
    }

    private static (ExitCode Code, string Text) Tell(bool json)
    {
        using var output = new StringWriter();
        var terminal = new Terminal(
            output,
            TextWriter.Null,
            ShowsProgress: false,
            UsesColor: false,
            Terminal.DefaultWidth
        );
        var code = ProveCommand.Tell(terminal, s_wrong, s_run, null, PaperSize.A4, json);
        return (code, output.ToString());
    }
}
