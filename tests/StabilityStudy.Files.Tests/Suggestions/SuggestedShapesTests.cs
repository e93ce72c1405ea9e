using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Suggestions;
using StabilityStudy.Files.Tests.OwnTables;
using StabilityStudy.Files.Tests.OwnTables.Shapes;

namespace StabilityStudy.Files.Tests.Suggestions;

/// <summary>What is suggested for each shape in each dialect reads it to the same data, or a person is asked and check stops. Never other data.</summary>
public sealed class SuggestedShapesTests
{
    private static readonly DateTimeOffset s_asOf = new(
        2026,
        3,
        27,
        12,
        0,
        0,
        TimeSpan.FromHours(1)
    );

    public static TheoryData<string, string> Ways => ShapeTests.Ways;

    [Theory]
    [MemberData(nameof(Ways))]
    public void A_shape_in_a_dialect_is_read_to_the_same_data_or_asked_about(
        string shape,
        string dialect
    )
    {
        var data = ShapedData.Of(2);
        var written = Shape.All(data).Single(item => item.Name == shape);
        var described = Dialect.All.Single(item => item.Name == dialect).Of(written, data);
        var files = described.With("study.toml", GoodStudy.Utf8(DeliveredData.Facts("")));
        Assert.True(StudySuggestion.Of(files, s_asOf).TryGet(out var suggestion));
        var facts = suggestion.WrittenInto(files.Files["study.toml"]);
        Assert.NotNull(facts);

        var outcome = StudyIntake.Read(files.With("study.toml", facts.Value));
        if (outcome.TryGet(out var study))
        {
            Assert.False(written.IsOfPairs);
            Assert.Empty(suggestion.Questions);
            Assert.Equal(Values(CanonicalTests.Read(described)), Values(study));
        }
        else
        {
            Assert.Contains(outcome.Queries, query => query.Severity == Severity.Stop);
            Assert.NotEmpty(suggestion.Questions);
            // Whether "First" and "Second" are baseline and delayed result, nothing says.
            Assert.True(written.IsOfPairs, suggestion.Text);
        }
    }

    private static IEnumerable<string> Values(StudyIntakeResult study) =>
        study
            .Inputs.Results.Select(row =>
                $"{row.Specimen} {row.Tube} {row.Analyte} {row.Occasion} {row.TestedAt:O} {row.Result} {row.Unit}"
            )
            .Order(StringComparer.Ordinal);
}
