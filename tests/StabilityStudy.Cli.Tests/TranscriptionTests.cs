using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

public sealed class TranscriptionTests
{
    private static readonly string[] s_call =
    [
        "transcription",
        ExampleStudy.Folder,
        "--rows",
        "5",
        "--seed",
        "7",
        "--as-of",
        "2026-03-20T12:00",
    ];

    [Fact]
    public async Task The_sheet_has_the_rows_of_the_file_and_the_lines_for_study_toml()
    {
        var run = await Run.Of(s_call);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.StartsWith(
            "Transcription check: 5 of 444 rows of results.csv, tested up to 2026-03-20\n12:00, drawn with seed 7.",
            run.Out.ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "[[transcription_check]]\nseed = 7\nrows = 5\n",
            run.Out.ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "--rows 5 --seed 7 --as-of 2026-03-20T12:00-04:00",
            run.Error,
            StringComparison.Ordinal
        );
        Assert.Equal(5, run.Out.Split("[ ]").Length - 1);
        Assert.All(run.Out.Split('\n'), line => Assert.True(line.TrimEnd().Length <= 80, line));
    }

    [Fact]
    public async Task The_same_call_prints_the_same_sheet()
    {
        var first = await Run.Of(s_call);

        Assert.Equal(first.Out, (await Run.Of(s_call)).Out);
        Assert.NotEqual(
            first.Out,
            (await Run.Of([.. s_call.Select(word => word == "7" ? "8" : word)])).Out
        );
    }

    [Fact]
    public async Task Every_row_for_a_spreadsheet_is_that_of_its_line()
    {
        var lines = await File.ReadAllLinesAsync(
            Path.Combine(ExampleStudy.Folder, ExampleStudy.Results),
            TestContext.Current.CancellationToken
        );

        var run = await Run.Of([.. s_call, "--csv"]);

        var rows = run.Out.TrimEnd().ReplaceLineEndings("\n").Split('\n');
        Assert.Equal(
            "no,line,specimen,tube,analyte,time_point,tested_at,result,unit,same",
            rows[0]
        );
        Assert.Equal(5, rows.Length - 1);
        Assert.All(
            rows[1..],
            row =>
            {
                var fields = row.Split(',');
                var line = lines[int.Parse(fields[1], CultureInfo.InvariantCulture) - 1];
                Assert.StartsWith(
                    string.Join(',', fields[2..6]) + ",",
                    line,
                    StringComparison.Ordinal
                );
                Assert.Contains($",{fields[7]},{fields[8]},", line, StringComparison.Ordinal);
            }
        );
    }

    [Fact]
    public async Task Rows_that_cannot_be_read_stop_it()
    {
        using var copy = StudyCopy.Create();
        copy.Edit(ExampleStudy.Results, ",33.2,s,", ",3x.2,s,");

        var run = await Run.Of("transcription", copy.Study);

        Assert.Equal(ExitCode.StopQueries, run.Code);
        Assert.Contains("[unknown-result]", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("[ ]", run.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("seed = 7\nrows = 5\ndifferences = 1\n", "differences")]
    [InlineData("seed = 7\nrows = 5\ndifferences = 6\noutcome = \"x\"\n", "differences")]
    [InlineData("seed = 7\nrows = 0\ndifferences = 0\n", "rows")]
    [InlineData("seed = 7\nrows = 5\n", "differences")]
    public async Task A_comparison_that_says_too_little_stops_the_study(string keys, string about)
    {
        using var copy = StudyCopy.Create();
        await File.AppendAllTextAsync(
            Path.Combine(copy.Study, ExampleStudy.Facts),
            $"\n[[transcription_check]]\n{keys}by = \"LS1\"\non = \"2026-03-20\"\n",
            TestContext.Current.CancellationToken
        );

        var run = await Run.Of("check", copy.Study);

        Assert.Equal(ExitCode.StopQueries, run.Code);
        Assert.Contains($"key transcription_check.{about}", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_stated_comparison_stands_in_the_report_and_is_not_missing_there()
    {
        using var copy = StudyCopy.Create();
        var without = await Run.Of(
            "report",
            copy.Study,
            "--format",
            "html",
            "-o",
            copy.At("a.html")
        );
        await File.AppendAllTextAsync(
            Path.Combine(copy.Study, ExampleStudy.Facts),
            "\n[[transcription_check]]\nseed = 7\nrows = 5\ndifferences = 1\noutcome = \"N-003 corrected\"\nby = \"LS1\"\non = \"2026-03-20\"\n",
            TestContext.Current.CancellationToken
        );
        const string Missing = "transcription was not checked";

        var with = await Run.Of("report", copy.Study, "--format", "html", "-o", copy.At("b.html"));

        Assert.Equal(ExitCode.Done, without.Code);
        Assert.Equal(ExitCode.Done, with.Code);
        var (before, after) = (
            Run.OneLine(await Read("a.html")),
            Run.OneLine(await Read("b.html"))
        );
        Assert.Contains(Missing, before, StringComparison.Ordinal);
        Assert.DoesNotContain(Missing, after, StringComparison.Ordinal);
        Assert.Contains(
            "5 rows drawn at random (seed 7) were compared with the instrument",
            after,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "printout by LS1 on 2026-03-20; 1 differed: <a",
            after,
            StringComparison.Ordinal
        );

        Task<string> Read(string name) =>
            File.ReadAllTextAsync(copy.At(name), TestContext.Current.CancellationToken);
    }
}
