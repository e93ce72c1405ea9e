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
    public void A_tail_up_to_one_half_has_a_rank_for_every_size()
    {
        // 2ⁿ patterns of signs in all; those of sum 0 to the middle have at least half of them.
        for (var n = 1; n <= 40; n++)
        {
            var (rank, below) = SignedRankDistribution.Rank(n, 0.5);

            Assert.InRange(rank, 0, n * (n + 1) / 4);
            Assert.True(below < 0.5);
        }
    }

    [Fact]
    public void The_largest_exact_size_and_the_next_one_agree_but_for_the_step()
    {
        const int largest = SignedRankDistribution.LargestExact;
        var (exact, exactBelow) = SignedRankDistribution.Rank(largest, 0.025);
        var (approximate, below) = SignedRankDistribution.Rank(largest + 1, 0.025);

        // The mean grows by (n + 1)/2, less 1.96 times the growth of the standard deviation.
        Assert.InRange(approximate - exact, 460, 485);
        Close.Absolute(exactBelow, below, 5e-5);
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
