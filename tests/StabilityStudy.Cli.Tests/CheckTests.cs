using System.Text.Json;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

public sealed class CheckTests
{
    /// <summary>Words that would tell a result while the study still collects.</summary>
    private static readonly string[] s_resultWords =
    [
        "mean",
        "supported",
        "inconclusive",
        "interval",
        "allowed",
        "outlier",
        "median",
        "change",
        "lower bound",
    ];

    [Fact]
    public async Task The_example_passes_with_its_queries_and_no_result()
    {
        var run = await Run.Of("check", ExampleStudy.Folder);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal("next: stability-study report " + ExampleStudy.Folder, run.Error.TrimEnd());
        Assert.StartsWith(
            "Collected: every planned specimen is there. No tube is overdue, none is due",
            run.Out,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "\nQueries: 0 stop, 8 attention, 1 note\n",
            run.Out.ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );
        RequireNoResult(run.Out);
    }

    [Fact]
    public async Task A_query_that_stops_gives_code_1_and_is_the_first_of_the_queries()
    {
        using var copy = StudyCopy.Create();
        copy.Edit(ExampleStudy.Results, ",33.2,s,", ",3x.2,s,");

        var run = await Run.Of("check", copy.Study);

        Assert.Equal(ExitCode.StopQueries, run.Code);
        Assert.Contains(
            "note\n\nSTOP  results.csv line 3, column result  [unknown-result]",
            run.Out.ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );
        RequireNoResult(run.Out);
    }

    [Fact]
    public async Task A_whole_column_that_is_written_otherwise_does_not_flood_the_screen()
    {
        using var copy = StudyCopy.Create();
        var results = copy.At("study", ExampleStudy.Results);
        var lines = await File.ReadAllLinesAsync(results, TestContext.Current.CancellationToken);
        await File.WriteAllLinesAsync(
            results,
            lines.Select(
                (line, i) =>
                    i is 10 or > 50 ? line : line.Replace(",s,", ",sec,", StringComparison.Ordinal)
            ),
            TestContext.Current.CancellationToken
        );

        var run = await Run.Of("check", copy.Study);

        Assert.Equal(1, run.Out.Split("[other-unit]").Length - 1);
        Assert.Contains(
            "in 49 rows: lines 2 to 10, 12 to 51",
            string.Join(' ', run.Out.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)),
            StringComparison.Ordinal
        );
        Assert.Contains("1 stop", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Json_is_one_document_and_nothing_else()
    {
        var run = await Run.Of("check", ExampleStudy.Folder, "--json");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal("", run.Error);
        using var document = JsonDocument.Parse(run.Out);
        Assert.Equal(9, document.RootElement.GetProperty("queries").GetArrayLength());
        RequireNoResult(run.Out);
    }

    [Fact]
    public async Task Json_of_a_stopped_study_is_one_document_and_nothing_else()
    {
        using var copy = StudyCopy.Create();
        copy.Edit(ExampleStudy.Results, ",33.2,s,", ",3x.2,s,");
        foreach (var command in new[] { "check", "analyze" })
        {
            var run = await Run.Of(command, copy.Study, "--json");

            Assert.Equal(ExitCode.StopQueries, run.Code);
            Assert.Equal("", run.Error);
            using var document = JsonDocument.Parse(run.Out);
            Assert.Equal(
                "unknown-result",
                document.RootElement.GetProperty("queries")[0].GetProperty("code").GetString()
            );
        }
    }

    [Fact]
    public async Task Color_is_used_only_where_it_may_be()
    {
        var plain = await Run.Of("check", ExampleStudy.Folder);
        var colored = await Run.Of(
            usesColor: true,
            TestContext.Current.CancellationToken,
            "check",
            ExampleStudy.Folder
        );

        Assert.DoesNotContain('\e', plain.Out);
        Assert.Contains('\e', colored.Out);
    }

    private static void RequireNoResult(string output) =>
        Assert.All(
            s_resultWords,
            word => Assert.DoesNotContain(word, output, StringComparison.OrdinalIgnoreCase)
        );
}
