using System.Globalization;
using System.Text;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

/// <summary>check --suggest on an export of the example's results.</summary>
public sealed class SuggestTests
{
    private const string Export = "analyzer_export.csv";
    private const string AsOf = "2026-03-25T10:00";

    [Fact]
    public async Task What_is_suggested_says_what_the_golden_file_says_and_changes_nothing()
    {
        using var copy = Delivered();
        var before = await File.ReadAllBytesAsync(
            Facts(copy),
            TestContext.Current.CancellationToken
        );

        var run = await Run.Of("check", copy.Study, "--suggest", "--as-of", AsOf);

        Assert.Equal(ExitCode.StopQueries, run.Code);
        Assert.Equal(
            "Nothing was changed. --write puts it into study.toml and keeps a copy.",
            run.Error.TrimEnd()
        );
        RepositoryFile.RequireSame(
            "tests/StabilityStudy.Cli.Tests/Golden/suggest.txt",
            run.Out.ReplaceLineEndings("\n")
        );
        Assert.DoesNotContain("Doe", run.Out, StringComparison.Ordinal);
        Assert.Equal(
            before,
            await File.ReadAllBytesAsync(Facts(copy), TestContext.Current.CancellationToken)
        );
    }

    [Fact]
    public async Task Written_and_answered_it_leaves_check_without_a_stop_and_the_old_file_beside_the_new()
    {
        using var copy = Delivered();
        var before = await File.ReadAllTextAsync(
            Facts(copy),
            TestContext.Current.CancellationToken
        );

        var written = await Run.Of("check", copy.Study, "--suggest", "--write", "--as-of", AsOf);
        var open = await Run.Of("check", copy.Study, "--as-of", AsOf);
        var text = await File.ReadAllTextAsync(Facts(copy), TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(
            Facts(copy),
            text.Replace(
                    "# date_format = \"dd.MM.yy HH:mm\"",
                    "date_format = \"dd.MM.yy HH:mm\"",
                    StringComparison.Ordinal
                )
                .Replace("# E3 = \"?\"", "E3 = \"harmless\"", StringComparison.Ordinal),
            TestContext.Current.CancellationToken
        );
        var answered = await Run.Of("check", copy.Study, "--as-of", AsOf);

        Assert.Equal(ExitCode.StopQueries, written.Code);
        Assert.Equal(
            $"study.toml was changed; the one before is study.toml.before-1.\nnext: stability-study check {copy.Study}",
            written.Error.ReplaceLineEndings("\n").TrimEnd()
        );
        Assert.Equal(
            before,
            await File.ReadAllTextAsync(
                Facts(copy) + ".before-1",
                TestContext.Current.CancellationToken
            )
        );
        Assert.Equal(ExitCode.StopQueries, open.Code);
        Assert.Equal(ExitCode.Done, answered.Code);
        Assert.Contains("Queries: 0 stop", answered.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_that_is_read_as_it_is_needs_nothing()
    {
        var run = await Run.Of("check", ExampleStudy.Folder, "--suggest");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal(
            "Nothing to suggest: every table of the folder is read as it is.",
            run.Out.TrimEnd()
        );
        Assert.Equal("", run.Error);
    }

    [Fact]
    public async Task Write_alone_is_refused()
    {
        var run = await Run.Of("check", ExampleStudy.Folder, "--write");

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("--suggest", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_text_file_of_data_is_no_place_for_a_report()
    {
        using var copy = StudyCopy.Create();
        var data = Path.Combine(copy.Study, "lis.txt");
        File.Move(Path.Combine(copy.Study, ExampleStudy.Results), data);
        copy.Edit("study.toml", "results = \"results.csv\"", "results = \"lis.txt\"");

        var run = await Run.Of("report", copy.Study, "--format", "text", "-o", data);

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains("has the name of a data file", run.Error, StringComparison.Ordinal);
    }

    private static string Facts(StudyCopy copy) => Path.Combine(copy.Study, "study.toml");

    /// <summary>The example with its results of the first twelve days of the month as an analyzer exports them.</summary>
    private static StudyCopy Delivered()
    {
        var copy = StudyCopy.Create();
        var path = Path.Combine(copy.Study, ExampleStudy.Results);
        var lines = File.ReadAllLines(path);
        File.Delete(path);
        var text = new StringBuilder(
            "Invented analyzer, 37 °C\r\nSerial;0001\r\n\r\nExported by nobody\r\n\r\nSample ID;Test;Result;Unit;Date;Time;Flag;Name;Run;Reagent lot\r\n"
        );
        var count = 0;
        foreach (var fields in lines.Skip(1).Select(line => line.Split(',')))
        {
            var time = DateTimeOffset.Parse(fields[5], CultureInfo.InvariantCulture);
            if (time.Day > 12)
            {
                continue;
            }

            count++;
            text.Append(
                CultureInfo.InvariantCulture,
                $"{fields[1]};APTT-FS;{fields[6].Replace('.', ',')};sec;{time:dd.MM.yy};{time:HH:mm};{(count == 17 ? "E3" : count % 5 == 0 ? "H" : "")};Doe, Jane;{fields[8]};{fields[10]}\r\n"
            );
        }

        text.Append(CultureInfo.InvariantCulture, $"{count} rows exported\r\n");
        File.WriteAllBytes(
            Path.Combine(copy.Study, Export),
            Encoding.Latin1.GetBytes(text.ToString())
        );
        return copy;
    }
}
