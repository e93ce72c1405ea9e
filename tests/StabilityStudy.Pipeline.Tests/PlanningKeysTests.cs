using System.Text;
using System.Text.Json.Nodes;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>What keys that plan leave as it was, and how those that decide reach the analysis and the report.</summary>
[Trait("lane", "slow")]
public sealed class PlanningKeysTests
{
    private const string LastCriterion = "levels = [60.0, 90.0]\nconfidence = 0.90\n";

    private const string FallsOnly = """

        [[criterion]]
        id = "falls"
        kind = "reclassification"
        analytes = ["aPTT"]
        groups = ["ufh"]
        levels = [60.0]
        direction = "down"
        near = { range = [60.0, 100.0], specimens_min = 20 }
        share_percent_max = 15
        confidence = 0.95

        """;

    private static readonly AnalyzedStudy s_example = ExampleStudy.Analyzed;

    private static readonly AnalyzedStudy s_withFalls = ExampleStudy.Analyze(
        ExampleStudy.Edited(ExampleStudy.Protocol, LastCriterion, LastCriterion + FallsOnly)
    );

    /// <summary>Alternatives, expected changes and planned numbers are in the protocol that a report carries, and in no figure of it.</summary>
    [Fact]
    public void Keys_that_plan_change_nothing_but_the_hashes_of_the_protocol()
    {
        var planned = ExampleStudy.Analyze(
            ExampleStudy
                .Edited(
                    ExampleStudy.Protocol,
                    "drift_shape = ",
                    """
                    planned_numbers = [{ group = "none", range = [40.0, 60.0], specimens = 15 }]
                    other_windows = [{ name = "older practice", time = "4 h", source = "guideline of 2008" }]
                    expected_changes = [{ group = "none", time = "6 h", percent = 4.8, source = "a paper", chance = "open" }]
                    drift_shape = 
                    """
                )
                .Edited(
                    ExampleStudy.Protocol,
                    "minimum_days = ",
                    "planned_days = 10\nminimum_days = "
                )
                .Edited(
                    ExampleStudy.Protocol,
                    "percent = 7.5\n",
                    "percent = 7.5\nalternatives = [{ name = \"published rule\", percent = 10, source = \"authors\", why_not = \"too much\" }]\n"
                )
        );

        Assert.Empty(
            JsonDifferences.Of(
                StudyPipeline.WriteAnalysis(s_example),
                StudyPipeline.WriteAnalysis(planned),
                tolerance: 0,
                "inputDigest",
                "sha256",
                "dataSha256",
                "line"
            )
        );
    }

    [Fact]
    public void What_counts_one_way_is_stated_in_the_analysis_and_else_nowhere()
    {
        var plain = Encoding.UTF8.GetString(StudyPipeline.WriteAnalysis(s_example).Span);
        var root = JsonNode.Parse(StudyPipeline.WriteAnalysis(s_withFalls).Span)!;
        var rule = root["protocol"]!["criteria"]!.AsArray()[^1]!;

        Assert.DoesNotContain("\"direction\": \"both\"", plain, StringComparison.Ordinal);
        Assert.DoesNotContain("\"near\"", plain, StringComparison.Ordinal);
        Assert.DoesNotContain("\"timeOrigin\"", plain, StringComparison.Ordinal);
        Assert.Equal("down", (string?)rule["direction"]);
        Assert.Equal("60.0", (string?)rule["near"]!["lowest"]);
        Assert.Equal(20, (int)rule["near"]!["specimensMinimum"]!);
    }

    [Fact]
    public void The_report_says_which_way_counts_and_near_what()
    {
        var text = StudyPipeline.RenderText(s_withFalls, 2000, full: true);

        Assert.Contains("clearly fall below 60", text, StringComparison.Ordinal);
        Assert.Contains(
            "with baselines from 60 to 100 in the unit",
            StudyPipeline.RenderHtml(s_withFalls),
            StringComparison.Ordinal
        );
        Assert.Contains("Only changes downward count", text, StringComparison.Ordinal);
        Assert.NotEmpty(StudyPipeline.Render(s_withFalls, PaperSize.A4).Pdf.ToArray());
    }

    [Fact]
    public void The_report_names_the_route_and_how_late_later_tests_may_be()
    {
        var study = ExampleStudy.Analyze(
            ExampleStudy
                .Edited(
                    ExampleStudy.Protocol,
                    "spin_to_test = \"1 h\" }",
                    "spin_to_test = \"1 h\", transport = \"courier, box with a logger\" }"
                )
                .Edited(
                    ExampleStudy.Protocol,
                    "late = \"30 min\" }",
                    "late = \"30 min\", later = [{ from = \"12 h\", late = \"40 min\" }] }"
                )
        );

        var text = StudyPipeline.RenderText(study, 2000, full: true);

        Assert.Contains("transported: courier, box with a logger", text, StringComparison.Ordinal);
        Assert.Contains("30 min late, from 12 h on 40 min", text, StringComparison.Ordinal);
    }
}
