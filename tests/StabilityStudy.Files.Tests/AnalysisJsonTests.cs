using System.Text;
using System.Text.Json.Nodes;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;

namespace StabilityStudy.Files.Tests;

public sealed class AnalysisJsonTests
{
    private static readonly byte[] Example = AnalysisJson.Write(
        Analyze(
            ExampleStudyTests.Read(
                Path.Combine(RepositoryFile.Root, "example-studies", "aptt-room-temperature")
            )
        )
    );

    [Fact]
    public void What_is_written_reads_back_to_the_same_bytes()
    {
        Assert.True(AnalysisJson.Read(Example).TryGet(out var analysis));
        Assert.Equal(
            Encoding.UTF8.GetString(Example),
            Encoding.UTF8.GetString(AnalysisJson.Write(analysis))
        );
    }

    [Fact]
    public void Decimals_are_texts_estimates_are_numbers_and_enum_members_are_words()
    {
        var root = JsonNode.Parse(Example)!;
        var analyte = root["protocol"]!["analytes"]![0]!;
        var cell = root["sequences"]![0]!["cells"]![0]!;
        var estimate = cell["estimates"]!["meanPercent"]!;

        Assert.Equal("2.1", (string?)analyte["betweenRunCvPercent"]);
        Assert.Equal("20.0", (string?)analyte["measuringInterval"]!["lowest"]);
        Assert.Equal("04:00:00", (string?)analyte["standardWindow"]!["time"]);
        Assert.Equal("before-first-collection", (string?)root["lock"]!["standing"]);
        Assert.Equal("bias", (string?)root["protocol"]!["criteria"]![0]!["kind"]);
        Assert.True(double.IsFinite((double)estimate["value"]!["mean"]!));
        Assert.Null(estimate["notComputable"]);
    }

    [Theory]
    [InlineData("\"format\": 1", "\"format\": 2", "unsupported-format")]
    [InlineData("\"format\": 1", "\"format\": 1, \"more\": 1", "not-an-analysis")]
    [InlineData("\"format\": 1", "\"format\": 1, \"format\": 1", "not-an-analysis")]
    [InlineData("\"format\": 1,", "", "not-an-analysis")]
    [InlineData("\"before-first-collection\"", "\"beforeFirstCollection\"", "not-an-analysis")]
    [InlineData("\"before-first-collection\"", "0", "not-an-analysis")]
    [InlineData("\"2.1\"", "2.1", "not-an-analysis")]
    [InlineData("\"2.1\"", "\"2,1\"", "not-an-analysis")]
    [InlineData("\"04:00:00\"", "\"4 h\"", "not-an-analysis")]
    [InlineData("\"toolVersion\": \"0\"", "\"toolVersion\": null", "not-an-analysis")]
    [InlineData("{", "", "not-an-analysis")]
    public void A_changed_file_is_refused(string from, string to, string code)
    {
        var text = Encoding.UTF8.GetString(Example);
        var at = text.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0);
        var changed = text[..at] + to + text[(at + from.Length)..];

        var query = Assert.Single(AnalysisJson.Read(GoodStudy.Utf8(changed)).Queries);

        Assert.Equal(code, query.Code);
        Assert.Equal(Severity.Stop, query.Severity);
        Assert.Equal("analysis.json", query.Source.File);
    }

    [Fact]
    public void The_published_schema_is_that_of_the_program()
    {
        RepositoryFile.RequireSame(
            "src/StabilityStudy.Files/Json/analysis.schema.json",
            AnalysisSchema.ToJson()
        );
    }

    private static StudyAnalysis Analyze(StudyBytes files)
    {
        var study = CanonicalTests.Read(files);
        return StudyAnalyzer.Analyze(study.Inputs, study.Identity, study.LastingQueries, "0");
    }
}
