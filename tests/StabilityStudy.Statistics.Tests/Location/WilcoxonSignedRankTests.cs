using CsCheck;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

public sealed class WilcoxonSignedRankTests
{
    [Fact]
    public void Depression_scores_give_the_published_value()
    {
        // Hollander and Wolfe (1973): rank sum of the decreases 40 of 45, one-sided p 0.0195 = 10/512.
        var table = ReferenceTable.Read("published/hollander_wolfe_depression.csv");
        var test = Computed.Value(
            WilcoxonSignedRank.Compute(
                ExactPairs.Create(
                    [.. Enumerable.Range(0, table.Count).Select(i => table.Exact(i, "first"))],
                    [.. Enumerable.Range(0, table.Count).Select(i => table.Exact(i, "second"))]
                )
            )
        );

        Assert.Equal((9, 0, 5.0), (test.Count, test.Zeros, test.PositiveRankSum));
        Close.Relative(20 / 512.0, test.PValue, 1e-14);
    }

    [Fact]
    public void Agrees_with_R_over_all_patterns_of_signs()
    {
        var table = ReferenceTable.Read("computed/signed_rank.csv");
        for (var row = 0; row < table.Count; row++)
        {
            decimal[] differences =
            [
                .. table
                    .Text(row, "values")
                    .Split(' ')
                    .Select(text => decimal.Parse(text, CultureInfo.InvariantCulture)),
            ];
            var test = Computed.Value(WilcoxonSignedRank.Compute(Of(differences, 1)));

            Assert.Equal(table.Number(row, "v"), test.PositiveRankSum);
            Assert.Equal(differences.Count(d => d == 0), test.Zeros);
            Close.Relative(table.Number(row, "p"), test.PValue, 1e-13);
            Close.Relative(table.Number(row, "normal"), test.NormalPValue, 1e-11);
        }
    }

    [Fact]
    public void Powers_of_ten_change_nothing_and_a_swap_mirrors() =>
        Gen.Int[-6, 9]
            .Array[1, 30]
            .Where(values => values.Any(v => v != 0))
            .Sample(values =>
            {
                decimal[] differences = [.. values.Select(v => (decimal)v)];
                var plain = Computed.Value(WilcoxonSignedRank.Compute(Of(differences, 1)));
                var tenth = Computed.Value(WilcoxonSignedRank.Compute(Of(differences, 0.1m)));
                var swapped = Computed.Value(
                    WilcoxonSignedRank.Compute(Of([.. differences.Select(d => -d)], 1))
                );

                Assert.Equal(plain, tenth);
                Assert.Equal(plain.PValue, swapped.PValue);
                Assert.Equal(
                    plain.Count * (plain.Count + 1) / 2.0,
                    plain.PositiveRankSum + swapped.PositiveRankSum
                );
            });

    [Fact]
    public void Large_samples_are_approximate_and_say_so()
    {
        decimal[] thousand =
        [
            .. Enumerable.Range(1, 1000).Select(i => i % 9 < 4 ? (decimal)-i : i),
        ];
        var exact = WilcoxonSignedRank.Compute(Of(thousand, 1));
        var beyond = WilcoxonSignedRank.Compute(Of([.. thousand, 1001m], 1));

        Assert.Empty(exact.Notes);
        Close.Absolute(exact.Value!.NormalPValue, exact.Value.PValue, 1e-4);
        Assert.Equal(EstimateNote.ApproximatePValue, Assert.Single(beyond.Notes));
        Assert.Equal(beyond.Value!.NormalPValue, beyond.Value.PValue);
    }

    [Fact]
    public void Nothing_to_rank_is_refused()
    {
        Computed.Refusal(
            AssumptionCode.TooFewValues,
            WilcoxonSignedRank.Compute(ExactPairs.Create([], []))
        );
        Computed.Refusal(
            AssumptionCode.ZeroSpread,
            WilcoxonSignedRank.Compute(ExactPairs.Create([1, 2], [1.0m, 2]))
        );
    }

    /// <summary>Pairs on different levels with these differences.</summary>
    private static ExactPairs Of(decimal[] differences, decimal unit) =>
        ExactPairs.Create(
            [.. differences.Select((_, i) => (30 + i) * unit)],
            [.. differences.Select((d, i) => (30 + i + d) * unit)]
        );

    [Fact]
    public void Very_many_pairs_that_all_rise_do_not_overflow()
    {
        decimal[] x = [.. Enumerable.Range(1, 60_000).Select(i => (decimal)i)];
        decimal[] y = [.. x.Select(value => (2 * value) + 1)];

        Assert.Equal(0, Computed.Value(WilcoxonSignedRank.Compute(ExactPairs.Create(x, y))).PValue);
    }
}
