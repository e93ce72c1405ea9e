using StabilityStudy.Core.Conclusions;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>What a change of the inputs must change, and what it must leave alone.</summary>
[Trait("lane", "slow")]
public sealed class ChangedStudyTests
{
    private static readonly AnalyzedStudy s_example = ExampleStudy.Analyzed;

    [Fact]
    public void A_limit_of_5_percent_takes_the_support_of_6_hours()
    {
        var narrow = ExampleStudy.Analyze(
            ExampleStudy.Edited(ExampleStudy.Protocol, "\npercent = 7.5", "\npercent = 5")
        );

        Assert.Equal(TimeSpan.FromHours(6), s_example.Analysis.Sequences[0].Window?.Time);
        Assert.NotEqual(Conclusion.Supported, narrow.Analysis.Sequences[0].Cells[0].OwnConclusion);
        Assert.Null(narrow.Analysis.Sequences[0].Window);
    }

    [Fact]
    public void A_unit_ten_times_smaller_changes_no_conclusion_and_no_count()
    {
        var tenfold = ExampleStudy.Analyze(Tenfold());

        Assert.Equal(
            ConclusionText.WithoutFigures(s_example.Analysis),
            ConclusionText.WithoutFigures(tenfold.Analysis)
        );
        Assert.Equal(
            s_example.Analysis.Sequences[0].Cells[0].Pairs[0].Values().Baseline * 10,
            tenfold.Analysis.Sequences[0].Cells[0].Pairs[0].Values().Baseline
        );
    }

    [Theory]
    [InlineData("reversed")]
    [InlineData("by result")]
    public void The_order_of_rows_changes_only_hashes_and_row_numbers(string order)
    {
        var moved = ExampleStudy.Analyze(
            new[] { ExampleStudy.Specimens, ExampleStudy.Results }.Aggregate(
                ExampleStudy.Bytes,
                (files, name) => files.WithText(name, Reordered(name, order))
            )
        );

        Assert.Empty(
            JsonDifferences.Of(
                StudyPipeline.WriteAnalysis(s_example),
                StudyPipeline.WriteAnalysis(moved),
                tolerance: 0,
                "inputDigest",
                "sha256",
                "dataSha256",
                "sourceRow",
                "line"
            )
        );
        Assert.NotEqual(
            s_example.Analysis.Identity.RawFiles[1],
            moved.Analysis.Identity.RawFiles[1]
        );
    }

    [Fact]
    public void A_file_that_the_study_does_not_name_changes_no_figure_and_is_told()
    {
        var more = ExampleStudy.Analyze(ExampleStudy.With("old-results.csv", "not,a,study\n1\n"));

        Assert.Equal(
            ["/queries"],
            JsonDifferences.Of(
                StudyPipeline.WriteAnalysis(s_example),
                StudyPipeline.WriteAnalysis(more),
                tolerance: 0
            )
        );
    }

    private static string Reordered(string name, string order)
    {
        var lines = ExampleStudy.Text(name).TrimEnd('\n').Split('\n');
        var rows = lines[1..];
        var moved =
            order == "reversed"
                ? rows.Reverse()
                : rows.OrderBy(row => row.Split(',')[6], StringComparer.Ordinal);
        return string.Join('\n', moved.Prepend(lines[0])) + "\n";
    }

    private static StudyBytes Tenfold()
    {
        var lines = ExampleStudy.Text(ExampleStudy.Results).TrimEnd('\n').Split('\n');
        var column = Array.IndexOf(lines[0].Split(','), "result");
        var rows = lines[1..]
            .Select(line =>
            {
                var fields = line.Split(',');
                fields[column] = TimesTen(fields[column]);
                return string.Join(',', fields);
            });
        return ExampleStudy
            .With(ExampleStudy.Results, string.Join('\n', rows.Prepend(lines[0])) + "\n")
            .Edited(ExampleStudy.Protocol, "decimals = 1", "decimals = 0")
            .Edited(
                ExampleStudy.Protocol,
                "measuring_interval = [20.0, 180.0]",
                "measuring_interval = [200, 1800]"
            )
            .Edited(
                ExampleStudy.Protocol,
                "decision_levels = [40.0, 60.0, 90.0]",
                "decision_levels = [400, 600, 900]"
            )
            .Edited(ExampleStudy.Protocol, "{ level = 40.0", "{ level = 400")
            .Edited(ExampleStudy.Protocol, "{ level = 60.0", "{ level = 600")
            .Edited(ExampleStudy.Protocol, "{ level = 60.0", "{ level = 600")
            .Edited(ExampleStudy.Protocol, "{ level = 90.0", "{ level = 900")
            .Edited(ExampleStudy.Protocol, "{ level = 90.0", "{ level = 900")
            .Edited(ExampleStudy.Protocol, "range = [45.0, 110.0]", "range = [450, 1100]")
            .Edited(ExampleStudy.Protocol, "levels = [60.0, 90.0]", "levels = [600, 900]")
            .Edited(ExampleStudy.Protocol, "absolute_in_unit = 2.0", "absolute_in_unit = 20");
    }

    private static string TimesTen(string result) =>
        result.Length == 0
            ? result
            : (decimal.Parse(result, CultureInfo.InvariantCulture) * 10).ToString(
                "0.###",
                CultureInfo.InvariantCulture
            );
}
