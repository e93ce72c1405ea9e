using StabilityStudy.Reporting.Report.Wording;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class RefusalWordsTests
{
    [Fact]
    public void Every_refusal_reads_as_a_clause_and_as_a_sentence() =>
        Assert.All(
            Enum.GetValues<Refusal>().Select(kind => new NotComputable(kind)),
            why =>
            {
                Assert.Matches("^[a-z].*[^.]$", RefusalWords.Clause(why));
                Assert.Matches("^[A-Z].*[^.][.]$", RefusalWords.Sentence(why));
            }
        );

    [Fact]
    public void A_fit_that_fails_without_one_pair_names_the_pair() =>
        Assert.Equal(
            "Without pair 4 of 9 there is no standard error: All baseline values are the same.",
            RefusalWords.Sentence(new(Refusal.SameBaselines, new(4, 9)))
        );

    [Fact]
    public void A_fit_that_fails_without_one_day_says_so() =>
        Assert.Equal(
            "without the pairs of one cluster, such as a collection day, there is no line: The weights and the line did not settle",
            RefusalWords.Clause(new(Refusal.WeightsDidNotSettle, new(null, 9)))
        );

    [Fact]
    public void An_association_that_is_not_shown_gives_its_interval()
    {
        var tau = new KendallTau(20, 100, 90, 0, 0, 0.05, 0.2, -0.3421, 0.4421, 0.95);

        Assert.Contains(
            "the interval of Kendall's tau-b, -0.342 to 0.442, does not show that it does",
            RefusalWords.Clause(new(Refusal.NoPositiveAssociation, Association: tau)),
            StringComparison.Ordinal
        );
    }
}
