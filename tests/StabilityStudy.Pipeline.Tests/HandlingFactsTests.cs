using System.Text;
using System.Text.Json.Nodes;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>The example with every fact of handling: what reaches the analysis and the report, and what a study without them keeps.</summary>
[Trait("lane", "slow")]
public sealed class HandlingFactsTests
{
    private const string Days = "minimum_days = 5";
    private const string Invented = "invented = true\n";

    private static readonly string[] s_properties =
    [
        "draw",
        "spin",
        "whySoMany",
        "collectionTube",
        "spinning",
        "temperatures",
        "specimenSource",
        "funding",
        "interests",
    ];

    private static readonly AnalyzedStudy s_study = ExampleStudy.Analyze(
        ExampleStudy
            .Edited(
                ExampleStudy.Protocol,
                Days,
                """
                draw = { tube = "2.7 mL", citrate_percent = 3.2, discard_tube = "before a winged set", order = "first", inversions = [3, 6], source = "common practice" }
                spin = { relative_force = 1500, duration = "15 min", platelets_below = 10, source = "common practice" }
                minimum_days = 5
                """
            )
            .Edited(
                ExampleStudy.Facts,
                Invented,
                """
                funding = "the invented hospital"
                interests = "none"
                collection_tube = { name = "2.7 mL", citrate_percent = 3.2 }
                spinning = { centrifuge = "C-2", relative_force = 1500, duration = "15 min", platelets = 6 }
                temperature = [{ storage = "wb-rt", celsius = [19.2, 23.8], device = "logger L-7" }]
                subjects = { source = "patients", selection = "in order", ethics = "decision 14" }
                invented = true

                """
            )
            .WithText(ExampleStudy.Specimens, Recorded())
    );

    private static readonly Lazy<string> s_text = new(() =>
        StudyPipeline.RenderText(s_study, 4000, full: true)
    );

    /// <summary>The tubes with what the plan asks to be recorded.</summary>
    private static string Recorded() =>
        string.Concat(
            ExampleStudy
                .Text(ExampleStudy.Specimens)
                .TrimEnd('\n')
                .Split('\n')
                .Select(
                    (line, i) =>
                        line
                        + (
                            i == 0
                                ? ",discard_tube,drawn_after,transport,material\n"
                                : ",citrate,nothing,room temperature,citrate\n"
                        )
                )
        );

    [Fact]
    public void They_are_in_the_analysis_and_without_them_none_is()
    {
        var root = JsonNode.Parse(StudyPipeline.WriteAnalysis(s_study).Span)!;
        var plain = Encoding.UTF8.GetString(
            StudyPipeline.WriteAnalysis(ExampleStudy.Analyzed).Span
        );

        Assert.Equal(3, (int)root["protocol"]!["draw"]!["fewestInversions"]!);
        Assert.Equal("none", (string)root["facts"]!["interests"]!);
        Assert.All(
            s_properties,
            name => Assert.DoesNotContain($"\"{name}\":", plain, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void No_query_is_raised_of_a_study_handled_as_planned()
    {
        string[] codes =
        [
            .. s_study
                .Analysis.Queries.Select(query => query.Code)
                .Except(ExampleStudy.Analyzed.Analysis.Queries.Select(query => query.Code)),
        ];

        Assert.Empty(codes);
    }

    [Fact]
    public void The_report_has_them_and_lacks_them_no_more()
    {
        Assert.Contains(
            "2.7 mL, 3.2 % citrate; plasma, never serum",
            s_text.Value,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "wb-rt at 19.2 to 23.8 °C (logger L-7)",
            s_text.Value,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "paid by the invented hospital; interests: none",
            s_text.Value,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("not in the files", s_text.Value, StringComparison.Ordinal);
        Assert.NotEmpty(StudyPipeline.Render(s_study, PaperSize.A4).Pdf.ToArray());
    }

    /// <summary>Figures and conclusions are those of the study without them.</summary>
    [Fact]
    public void They_change_no_figure()
    {
        string[] named =
        [
            .. s_properties,
            "inputDigest",
            "sha256",
            "dataSha256",
            "line",
            "sourceRow",
        ];

        Assert.Empty(
            JsonDifferences.Of(
                StudyPipeline.WriteAnalysis(ExampleStudy.Analyzed),
                StudyPipeline.WriteAnalysis(s_study),
                tolerance: 0,
                named
            )
        );
    }
}
