using System.Text;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Pipeline.Tests;

/// <summary>Every analysis that these tests make is held against the schema (<see cref="ExampleStudy.Analyze"/>); here, that the schema forbids something.</summary>
[Trait("lane", "slow")]
public sealed class PublishedSchemaTests
{
    private static readonly string s_example = Encoding.UTF8.GetString(
        StudyPipeline.WriteAnalysis(ExampleStudy.Analyzed).Span
    );

    [Theory]
    [InlineData("\"conclusion\": \"supported\"", "\"conclusion\": \"perhaps\"")]
    [InlineData("\"conclusion\": \"supported\"", "\"conclusion\": 1")]
    [InlineData("\"format\": 3", "\"format\": 3, \"more\": 1")]
    [InlineData("\"toolVersion\"", "\"version\"")]
    [InlineData("\"PT4H\"", "\"4 h\"")]
    [InlineData("\"percent\": \"7.5\"", "\"percent\": 7.5")]
    [InlineData("\"kind\": \"bias\"", "\"kind\": \"mean\"")]
    public void What_the_program_does_not_write_is_not_valid(string from, string to)
    {
        Assert.Contains(from, s_example, StringComparison.Ordinal);
        var changed = s_example.Replace(from, to, StringComparison.Ordinal);

        Assert.NotEqual("", PublishedSchema.FaultsOf(Encoding.UTF8.GetBytes(changed)));
    }

    [Fact]
    public void An_analysis_with_its_power_is_valid()
    {
        var study = StudyPipeline.WithPower(ExampleStudy.Analyzed, 10);

        Assert.Equal("", PublishedSchema.FaultsOf(StudyPipeline.WriteAnalysis(study)));
    }
}
