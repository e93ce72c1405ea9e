using System.Text;
using System.Text.Json.Nodes;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Json.Forms;

namespace StabilityStudy.Files.Tests;

[Trait("lane", "slow")]
public sealed class AnalysisJsonTests
{
    internal static readonly byte[] Example = AnalysisJson.Write(
        Analyze(
            ExampleStudyTests.Read(
                Path.Combine(RepositoryFile.Root, "example-studies", "aptt-room-temperature")
            )
        )
    );

    [Fact]
    public void Decimals_are_texts_estimates_are_numbers_and_enum_members_are_words()
    {
        var root = JsonNode.Parse(Example)!;
        var analyte = root["protocol"]!["analytes"]![0]!;
        var cell = root["sequences"]![0]!["cells"]![0]!;
        var estimate = cell["estimates"]!["meanPercent"]!;

        Assert.Equal("2.1", (string?)analyte["betweenRunCvPercent"]);
        Assert.Equal("20.0", (string?)analyte["measuringInterval"]!["lowest"]);
        Assert.Equal("PT4H", (string?)analyte["standardWindow"]!["time"]);
        Assert.Equal("before-first-collection", (string?)root["lock"]!["standing"]);
        Assert.Equal("bias", (string?)root["protocol"]!["criteria"]![0]!["kind"]);
        Assert.True(double.IsFinite((double)estimate["value"]!["mean"]!));
        Assert.Null(estimate["notComputable"]);
    }

    [Theory]
    [InlineData("\"format\": 3", "\"format\": 3, \"format\": 3")]
    [InlineData("\"format\": 3,", "")]
    [InlineData("\"format\": 3", "\"format\": \"2\"")]
    [InlineData("\"toolVersion\": \"0\"", "\"toolVersion\": null")]
    [InlineData("\"queries\": [", "\"queries\": [1,")]
    [InlineData("{", "")]
    public void What_is_no_analysis_is_not_read(string from, string to)
    {
        Assert.False(StatedAnalysis.TryRead(Changed(from, to), out _, out var fault));
        Assert.Contains("analysis.json", fault, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"format\": 3", "\"format\":  2")]
    [InlineData("\"rules\": 2", "\"rules\": 2.0")]
    [InlineData("\"format\": 3,\n  \"rules\": 2,", "\"rules\": 2,\n  \"format\": 3,")]
    [InlineData("aPTT", "\\u0061PTT")]
    public void Other_spacing_order_digits_or_escapes_are_not_as_the_program_writes(
        string from,
        string to
    )
    {
        Assert.True(StatedAnalysis.IsWrittenAs(Example, Example));
        Assert.False(StatedAnalysis.IsWrittenAs(Changed(from, to), Example));
    }

    [Theory]
    [InlineData("\"before-first-collection\"", "\"beforeFirstCollection\"")]
    [InlineData("\"before-first-collection\"", "0")]
    [InlineData("\"2.1\"", "2.1")]
    [InlineData("\"2.1\"", "\"2.10\"")]
    [InlineData("\"PT4H\"", "\"PT240M\"")]
    [InlineData("\"format\": 3", "\"format\": 3, \"more\": 1")]
    [InlineData("\"conclusion\": \"supported\",", "")]
    public void A_report_of_this_version_differs_in_nothing(string from, string to)
    {
        Assert.Empty(Compare(Example, ComparedVersion.Same).Faults);
        Assert.NotEmpty(Compare(Changed(from, to), ComparedVersion.Same).Faults);
    }

    [Fact]
    public void What_only_one_of_two_versions_has_is_listed_and_a_conclusion_is_never_left_out()
    {
        var more = Compare(Changed("\"rules\": 2", "\"rules\": 2, \"more\": 1"), OtherVersion);
        Assert.Empty(more.Faults);
        Assert.Equal(["analysis.more"], more.NotRecomputed);

        var fewer = Compare(Changed("\"loinc\": \"14979-9\",", ""), OtherVersion);
        Assert.Empty(fewer.Faults);
        Assert.Equal(["analysis.protocol.analytes[aPTT].loinc"], fewer.NotRecomputed);

        Assert.NotEmpty(
            Compare(Changed("\"conclusion\": \"supported\",", ""), OtherVersion).Faults
        );
    }

    [Fact]
    public void Other_rules_may_give_another_conclusion_and_never_other_inputs()
    {
        var conclusion = Compare(
            Changed("\"conclusion\": \"supported\"", "\"conclusion\": \"inconclusive\""),
            ComparedVersion.OtherWithOtherRules
        );
        Assert.Empty(conclusion.Faults);
        Assert.Contains(
            "conclusion",
            Assert.Single(conclusion.UnderOtherRules),
            StringComparison.Ordinal
        );

        Assert.Single(
            Compare(Changed("\"2.1\"", "\"2.2\""), ComparedVersion.OtherWithOtherRules).Faults
        );
    }

    [Fact]
    public void Data_queries_are_compared_for_codes_that_both_versions_know()
    {
        var renamed = Changed("\"code\": \"outlier-flagged\"", "\"code\": \"outlier-found\"");
        var unknownNow = Compare(
            renamed,
            OtherVersion,
            knewThen: code => code != "outlier-flagged"
        );
        Assert.Empty(unknownNow.Faults);
        Assert.Equal(2, unknownNow.NotRecomputed.Length);

        Assert.Contains(
            "outlier-flagged",
            Assert.Single(Compare(renamed, OtherVersion).Faults),
            StringComparison.Ordinal
        );
    }

    private const ComparedVersion OtherVersion = ComparedVersion.OtherWithSameRules;

    private static AnalysisDifferences Compare(
        byte[] stated,
        ComparedVersion version,
        Func<string, bool>? knewThen = null
    )
    {
        Assert.True(StatedAnalysis.TryRead(stated, out var analysis, out var fault), fault);
        return AnalysisJson.Compare(
            analysis,
            Example,
            version,
            knewThen ?? (_ => true),
            code => code != "outlier-found",
            _ => false
        );
    }

    private static byte[] Changed(string from, string to)
    {
        var text = Encoding.UTF8.GetString(Example);
        var at = text.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, from);
        return Encoding.UTF8.GetBytes(text[..at] + to + text[(at + from.Length)..]);
    }

    [Fact]
    public void The_published_schema_is_that_of_the_program()
    {
        RepositoryFile.RequireSame(
            "src/StabilityStudy.Files/Json/analysis.schema.json",
            AnalysisJson.Schema(MemberMeanings.Of)
        );
    }

    [Fact]
    public void Every_property_of_the_published_schema_has_its_meaning_in_words()
    {
        var schema = JsonNode.Parse(AnalysisJson.Schema(MemberMeanings.Of))!;
        Assert.Empty(
            schema["$defs"]!
                .AsObject()
                .SelectMany(definition =>
                    definition.Value!["oneOf"]?.AsArray() is { } kinds
                        ? kinds.SelectMany(kind => Unexplained(definition.Key, kind!))
                        : Unexplained(definition.Key, definition.Value)
                )
                .Concat(Unexplained("study", schema))
        );
    }

    private static IEnumerable<string> Unexplained(string name, JsonNode definition) =>
        definition["properties"]!
            .AsObject()
            .Where(property =>
                property.Value!["const"] is null && property.Value["description"] is null
            )
            .Select(property => $"{name}.{property.Key}");

    private static StudyAnalysis Analyze(StudyBytes files)
    {
        var study = CanonicalTests.Read(files);
        return StudyAnalyzer.Analyze(study.Inputs, study.Identity, study.LastingQueries, "0");
    }
}
