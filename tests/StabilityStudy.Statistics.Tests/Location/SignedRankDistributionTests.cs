using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class SignedRankDistributionTests
{
    [Fact]
    public void Signed_ranks_of_small_samples_agree_with_all_sign_patterns()
    {
        for (var n = 1; n <= 12; n++)
        {
            var sums = Enumerable
                .Range(0, 1 << n)
                .Select(signs => Enumerable.Range(1, n).Sum(r => (signs >> (r - 1) & 1) * r))
                .ToArray();
            foreach (var tail in new[] { 0.005, 0.025, 0.05, 0.2, 0.49 })
            {
                var rank = Enumerable
                    .Range(0, sums.Length)
                    .First(q => sums.Count(v => v <= q) >= tail * sums.Length);
                var below = (double)sums.Count(v => v < rank) / sums.Length;

                Assert.Equal((rank, below), SignedRankDistribution.Rank(n, tail));
            }
        }
    }

    [Fact]
    public void The_approximate_rank_is_next_to_the_exact_one_of_R()
    {
        // The normal tail is off by 1.4e-5 here, which is two ranks of about 230,000.
        var table = ReferenceTable.Read("computed/interval_ranks.csv");
        var row = Enumerable
            .Range(0, table.Count)
            .Single(r => table.Whole(r, "n") > SignedRankDistribution.LargestExact);

        var (rank, below) = SignedRankDistribution.Rank(table.Whole(row, "n"), 0.025);

        Assert.InRange(table.Whole(row, "hl_rank") - rank, 0, 3);
        Close.Absolute(table.Number(row, "hl_level"), 1 - (2 * below), 5e-5);
    }
}
