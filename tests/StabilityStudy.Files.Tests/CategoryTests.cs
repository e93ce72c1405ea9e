using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Rows;

namespace StabilityStudy.Files.Tests;

public sealed class CategoryTests
{
    private static readonly ImmutableArray<string> Words =
    [
        "negative",
        "weak positive",
        "positive",
    ];

    [Theory]
    [InlineData("negative", 0)]
    [InlineData("Weak Positive", 1)]
    [InlineData("POSITIVE", 2)]
    public void A_word_of_the_test_is_its_place_and_stays_as_written(string text, int place)
    {
        Assert.Equal(new CategoryResult(text, place), ResultText.ReadCategory(text, Words).Result);
    }

    [Theory]
    [InlineData("", MissingReason.NoReportableResult)]
    [InlineData("clot", MissingReason.Clot)]
    public void A_word_for_no_result_is_one(string text, MissingReason reason)
    {
        Assert.Equal(new MissingResult(text, reason), ResultText.ReadCategory(text, Words).Result);
    }

    [Theory]
    [InlineData("postive", "perhaps positive")]
    [InlineData("weak", "write one of negative, weak positive, positive, NA")]
    [InlineData("31.2", "write one of negative")]
    [InlineData("positive ", "perhaps positive")]
    public void Any_other_text_is_refused_with_what_to_write(string text, string advice)
    {
        var (result, found) = ResultText.ReadCategory(text, Words);

        Assert.Null(result);
        Assert.Contains(advice, found, StringComparison.Ordinal);
    }
}
