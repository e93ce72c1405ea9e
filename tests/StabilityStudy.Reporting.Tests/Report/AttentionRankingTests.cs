using System.Text.RegularExpressions;
using StabilityStudy.Reporting.Report.Decision;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed partial class AttentionRankingTests
{
    [Fact]
    public void Every_attention_of_the_catalog_has_one_place_and_no_other_code_has_one() =>
        Assert.Equal(
            Catalog().Where(kind => kind.Severity == "attention").Select(kind => kind.Code).Order(),
            AttentionRanking.Order.Order()
        );

    [Fact]
    public void What_page_1_says_elsewhere_are_codes_of_the_catalog() =>
        Assert.Empty(AttentionSummary.SaidElsewhere.Except(Catalog().Select(kind => kind.Code)));

    [Theory]
    [InlineData("wide-limit")]
    [InlineData("low-confidence")]
    [InlineData("low-share")]
    [InlineData("decided-by-estimate-alone")]
    [InlineData("late-baseline")]
    public void A_protocol_that_asks_for_little_comes_before_what_was_not_recorded(string lax)
    {
        Assert.True(AttentionRanking.Of(lax) < AttentionRanking.Of("lot-not-recorded"));
        Assert.True(AttentionRanking.Of(lax) < AttentionRanking.Of("outlier-flagged"));
    }

    private static IEnumerable<(string Code, string Severity)> Catalog()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "StabilityStudy.sln")))
        {
            folder =
                Path.GetDirectoryName(folder)
                ?? throw new InvalidOperationException("The repository was not found.");
        }

        var text = File.ReadAllText(
            Path.Combine(folder, "src", "StabilityStudy.Files", "QUERIES.md")
        );
        return Row()
            .Matches(text)
            .Select(row => (row.Groups["code"].Value, row.Groups["severity"].Value));
    }

    [GeneratedRegex(
        """^\| `(?<code>[a-z-]+)` \| (?<severity>[a-z]+) \|""",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 5000
    )]
    private static partial Regex Row();
}
