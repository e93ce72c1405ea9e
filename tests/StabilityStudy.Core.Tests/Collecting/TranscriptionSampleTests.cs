using StabilityStudy.Core.Collecting;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Collecting;

public sealed class TranscriptionSampleTests
{
    private const int Seed = 20260306;

    private static readonly DateTimeOffset s_end = new(2026, 12, 31, 0, 0, 0, TimeSpan.Zero);

    private static readonly ImmutableArray<ResultRow> s_rows = SmallStudy
        .Of([6, 8], Enumerable.Repeat("30.0 | 30.5 | 31.0", 60))
        .Inputs.Results;

    [Fact]
    public void The_same_seed_draws_the_same_rows_whatever_the_order_of_the_file()
    {
        var drawn = Draw(s_rows, Seed, 20);

        Assert.Equal(20, drawn.Length);
        Assert.Equal(drawn, Draw([.. s_rows.Reverse()], Seed, 20));
        Assert.NotEqual(drawn, Draw(s_rows, Seed + 1, 20));
    }

    [Fact]
    public void Of_one_specimen_and_analyte_one_row_is_drawn_so_that_no_change_is_shown()
    {
        var drawn = Draw(s_rows, Seed, 1000);

        Assert.Equal(60, drawn.Length);
        Assert.Equal(60, drawn.Select(row => row.Specimen).Distinct().Count());
        Assert.Contains(drawn, row => row.Occasion.IsBaseline);
        Assert.Contains(drawn, row => !row.Occasion.IsBaseline);
    }

    [Fact]
    public void Rows_tested_later_are_left_out_and_change_nothing_of_an_earlier_sheet()
    {
        var upTo = new DateTimeOffset(2026, 3, 5, 23, 0, 0, TimeSpan.Zero);
        var before = s_rows.Where(row => row.TestedAt <= upTo).ToImmutableArray();

        Assert.Equal(
            TranscriptionSample.Draw(before, Seed, 10, upTo),
            TranscriptionSample.Draw(s_rows, Seed, 10, upTo)
        );
        Assert.All(
            TranscriptionSample.Draw(s_rows, Seed, 1000, upTo),
            row => Assert.True(row.TestedAt <= upTo)
        );
    }

    /// <summary>
    /// Drawing one of three rows from each of 60 specimens by 400 seeds: each row is expected 400/3 times, with a standard
    /// deviation of √(400 · 1/3 · 2/3) = 9.4; none lies further away than five of them.
    /// </summary>
    [Fact]
    public void Every_row_of_a_specimen_is_drawn_as_often()
    {
        var counts = Enumerable
            .Range(1, 400)
            .SelectMany(seed => Draw(s_rows, seed, 1000))
            .CountBy(row => row.SourceRow)
            .ToDictionary(item => item.Key, item => item.Value);

        Assert.Equal(s_rows.Length, counts.Count);
        Assert.All(counts.Values, count => Assert.InRange(count, 400 / 3 - 47, 400 / 3 + 47));
    }

    /// <summary>Closed form of the exact bound without a difference: 1 − 0.05^(1/n); 13.9 % for 20 rows (rule of three: 15 %).</summary>
    [Theory]
    [InlineData(1, 95.0)]
    [InlineData(20, 13.91)]
    [InlineData(59, 4.95)]
    public void The_share_that_no_difference_leaves_open_is_the_exact_bound(
        int rows,
        double percent
    ) => Assert.Equal(percent, TranscriptionSample.LargestSharePercent(rows), 0.01);

    private static ImmutableArray<ResultRow> Draw(
        ImmutableArray<ResultRow> rows,
        int seed,
        int count
    ) => TranscriptionSample.Draw(rows, seed, count, s_end);
}
