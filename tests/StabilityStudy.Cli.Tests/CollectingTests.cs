using System.Text.Json;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Cli.Tests;

/// <summary>check while specimens are being collected: the example cut off in the middle of its third day.</summary>
public sealed class CollectingTests : IDisposable
{
    private const string Moment = "2026-03-04T14:05";

    private readonly StudyCopy _study = StudyCopy.Create();

    public CollectingTests()
    {
        Cut(ExampleStudy.Specimens, "collected_at", "2026-03-04T13:20");
        Cut(ExampleStudy.Results, "tested_at", "2026-03-04T13:20");
        Cut("controls.csv", "tested_at", "2026-03-04T13:20");
        var facts = Path.Combine(_study.Study, ExampleStudy.Facts);
        var text = File.ReadAllText(facts);
        File.WriteAllText(facts, text[..text.IndexOf("# Left out by", StringComparison.Ordinal)]);
    }

    public void Dispose() => _study.Dispose();

    [Fact]
    public async Task It_begins_with_what_is_overdue_and_due_and_then_each_group()
    {
        var run = await Run.Of("check", _study.Study, "--as-of", Moment);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal("", run.Error);
        Assert.StartsWith(
            """
            Collecting, day 3 of at least 5. 2 tubes are overdue, 17 are due today. As of
            2026-03-04 14:05.

                                    specimens  tubes tested   due  overdue  lost
            No anticoagulant         15 of 50            46    13        1     0
            Unfractionated heparin   18 of 61            67     4        1     0

            Now and next
              overdue  N-012  6 h  last time was 13:52
              overdue  H-014  6 h  last time was 14:02
              now          N-013  6 h  until 14:07, spin from 13:07
            """.ReplaceLineEndings("\n"),
            run.Out.ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );
        Assert.Contains("\n  and 7 more today: --all\n", run.Out, StringComparison.Ordinal);
        Assert.Contains(
            "Baselines so far, aPTT, Unfractionated heparin: 47.0 to 101.7 s (18), planned\n  45.0 to 110.0; 1 above 90.0 s, 3 wanted.",
            run.Out.ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );
        Assert.All(run.Out.Split('\n'), line => Assert.True(line.TrimEnd().Length <= 80, line));
    }

    [Fact]
    public async Task Only_what_is_overdue_is_asked_for()
    {
        var before = await Run.Of("check", _study.Study, "--as-of", "2026-03-04T13:20");
        var run = await Run.Of("check", _study.Study, "--as-of", Moment);
        var afterwards = await Run.Of("check", _study.Study, "--as-of", "2026-03-06T08:00");

        Assert.DoesNotContain("[delayed-result-missing]", before.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("[tube-without-results]", before.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("[clot-not-recorded]", before.Out, StringComparison.Ordinal);
        Assert.Equal(2, run.Out.Split("[delayed-result-missing]").Length - 1);
        Assert.Contains("19 tubes are overdue", afterwards.Out, StringComparison.Ordinal);
        Assert.Contains("more overdue: --all", afterwards.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_moment_is_that_of_the_clock_when_none_is_given()
    {
        var run = await Run.With(
            terminal => terminal with { Clock = new FixedClock("2026-03-04T19:05:30Z") },
            TestContext.Current.CancellationToken,
            "check",
            _study.Study
        );

        Assert.Equal((await Run.Of("check", _study.Study, "--as-of", Moment)).Out, run.Out);
    }

    [Fact]
    public async Task All_lists_every_tube()
    {
        var run = await Run.Of("check", _study.Study, "--as-of", Moment, "--all");

        Assert.DoesNotContain("--all", run.Out, StringComparison.Ordinal);
        Assert.Contains(
            "\n  20:14-20:44  N-015  12 h  spin from 19:44",
            run.Out,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_stop_leaves_the_inventory_of_the_rows_that_can_be_read()
    {
        _study.Edit(
            ExampleStudy.Specimens,
            "N-014-C,S027,none,wb-rt,1,",
            "N-014-C,S027,none,wb-rt,x,"
        );

        var run = await Run.Of("check", _study.Study, "--as-of", Moment);

        Assert.Equal(ExitCode.StopQueries, run.Code);
        Assert.StartsWith("Collecting, day 3", run.Out, StringComparison.Ordinal);
        Assert.Contains("\nSTOP  specimens.csv", run.Out, StringComparison.Ordinal);
        Assert.Equal("next: answer what is marked STOP, and run check again", run.Error.TrimEnd());
    }

    [Fact]
    public async Task An_answer_closes_a_query_until_the_query_says_something_else()
    {
        var open = await Json();
        var query = open
            .RootElement.GetProperty("queries")
            .EnumerateArray()
            .Single(item => item.GetProperty("code").GetString() == "hematocrit-not-recorded");
        await File.AppendAllTextAsync(
            Path.Combine(_study.Study, ExampleStudy.Facts),
            $"\n[[answer]]\nquery = \"{query.GetProperty("reference").GetString()}\"\ntext = \"Not measured in outpatients.\"\nby = \"LS1\"\non = \"2026-03-04\"\n",
            TestContext.Current.CancellationToken
        );

        var answered = await Run.Of("check", _study.Study, "--as-of", Moment);
        var shown = await Run.Of("check", _study.Study, "--as-of", Moment, "--answered");

        Assert.DoesNotContain("[hematocrit-not-recorded]", answered.Out, StringComparison.Ordinal);
        Assert.Contains("(1 answered before: --answered)", answered.Out, StringComparison.Ordinal);
        Assert.Contains(
            "answered by LS1 on 2026-03-04: Not measured in outpatients.",
            shown.Out,
            StringComparison.Ordinal
        );
        Cut(ExampleStudy.Specimens, "collected_at", "2026-03-03T23:00");
        Cut(ExampleStudy.Results, "tested_at", "2026-03-03T23:00");
        var reopened = await Run.Of("check", _study.Study, "--as-of", Moment);
        Assert.Contains("[hematocrit-not-recorded]", reopened.Out, StringComparison.Ordinal);
        Assert.Contains(
            "1 of the answers in study.toml fits no query any more.",
            reopened.Out,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Json_has_the_inventory_and_no_result_of_a_delayed_tube()
    {
        using var document = await Json();

        var collection = document.RootElement.GetProperty("collection");
        Assert.Equal("2026-03-04T14:05:00-05:00", collection.GetProperty("asOf").GetString());
        Assert.Equal(19, collection.GetProperty("open").GetArrayLength());
        Assert.Equal(
            [1, 1],
            collection
                .GetProperty("groups")
                .EnumerateArray()
                .Select(item => item.GetProperty("overdue").GetInt32())
        );
        Assert.Equal(0, document.RootElement.GetProperty("answered").GetArrayLength());
    }

    [Fact]
    public async Task Before_the_first_result_no_file_of_results_or_controls_is_needed()
    {
        Cut(ExampleStudy.Results, "tested_at", "2026-01-01");
        File.Delete(Path.Combine(_study.Study, "controls.csv"));

        var run = await Run.Of("check", _study.Study, "--as-of", "2026-03-02T07:10");

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.StartsWith("Collecting, day 3", run.Out, StringComparison.Ordinal);
        Assert.Contains("collected after this moment", run.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCode.StopQueries, (await Run.Of("analyze", _study.Study)).Code);
    }

    private async Task<JsonDocument> Json()
    {
        var run = await Run.Of("check", _study.Study, "--as-of", Moment, "--json");
        Assert.Equal("", run.Error);
        return JsonDocument.Parse(run.Out);
    }

    /// <summary>Keeps the rows up to a time.</summary>
    private void Cut(string name, string column, string upTo)
    {
        var path = Path.Combine(_study.Study, name);
        var lines = File.ReadAllLines(path);
        var place = Array.IndexOf(lines[0].Split(','), column);
        File.WriteAllLines(
            path,
            [
                lines[0],
                .. lines[1..]
                    .Where(line =>
                        string.CompareOrdinal(line.Split(',')[place], 0, upTo, 0, upTo.Length) <= 0
                    ),
            ]
        );
    }

    private sealed class FixedClock(string utc) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() =>
            DateTimeOffset.Parse(utc, CultureInfo.InvariantCulture);
    }
}
