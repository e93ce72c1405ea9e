using CsCheck;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Statistics.Tests.Location;

/// <summary>What must not change, or change along, when values are shifted, scaled, turned or listed otherwise, with days, runs of both kinds and persons.</summary>
public sealed class ClusteredMeanPropertyTests
{
    private static readonly Gen<Row[]> s_rows = Gen.Select(
            Gen.Int[-300, 300],
            Gen.Int[-2, 4],
            Gen.Int[1, 4],
            Gen.Int[1, 4],
            Gen.Int[1, 6],
            (tenths, day, baseline, delayed, person) =>
                new Row(tenths / 10.0, day, baseline, delayed, person)
        )
        .Array[2, 30]
        .Where(rows => rows.Select(row => row.Value).Distinct().Count() > 1);

    [Fact]
    public void Shifted_values_shift_the_interval() =>
        Gen.Select(s_rows, Gen.Int[-1000, 1000])
            .Sample(
                (rows, shift) =>
                    RequireAlike(rows, row => row with { Value = row.Value + shift }, 1, shift)
            );

    [Fact]
    public void Scaled_values_scale_the_interval() =>
        Gen.Select(s_rows, Gen.Double[0.01, 100])
            .Sample(
                (rows, scale) =>
                    RequireAlike(rows, row => row with { Value = scale * row.Value }, scale, 0)
            );

    [Fact]
    public void The_other_sign_swaps_the_ends() =>
        s_rows.Sample(rows =>
        {
            var found = Of(rows);
            var turned = Of([.. rows.Select(row => row with { Value = -row.Value })]);
            RequireClose(rows, found, -found.Upper, turned.Lower);
            RequireClose(rows, found, -found.Lower, turned.Upper);
        });

    [Fact]
    public void Another_order_of_values_and_other_numbers_of_clusters_change_nothing() =>
        Gen.Select(s_rows, Gen.Int[1, 1_000_000])
            .Sample(
                (rows, seed) =>
                {
                    var found = Of(rows);
                    var shuffled = rows.OrderBy(_ =>
                        seed = unchecked((seed * 1_103_515_245) + 12_345)
                    );
                    var other = Of([
                        .. shuffled.Select(row =>
                            row with
                            {
                                Day = (row.Day * -17) + 3,
                                BaselineRun = 9 - row.BaselineRun,
                                DelayedRun = row.DelayedRun * 1000,
                                Person = -row.Person,
                            }
                        ),
                    ]);
                    RequireClose(rows, found, found.Lower, other.Lower);
                    RequireClose(rows, found, found.Upper, other.Upper);
                    Assert.Equal(
                        found.ByCluster.Select(item => (item.Source, item.Clusters)),
                        other.ByCluster.Select(item => (item.Source, item.Clusters))
                    );
                }
            );

    [Fact]
    public void Order_of_the_clusterings_does_not_matter() =>
        s_rows.Sample(rows =>
        {
            var found = Of(rows);
            var backward = Computed.Value(
                ClusteredMean.WithInterval(Values(rows), [.. Clusterings(rows).Reverse()], 0.9)
            );
            Assert.Equal((found.Lower, found.Upper), (backward.Lower, backward.Upper));
            // Of two intervals equally wide the first is named; their errors then differ in the last digit at most.
            Close.Relative(found.StandardError, backward.StandardError, 1e-12);
            Assert.Equal(
                found.ByCluster.OrderBy(item => item.Source),
                backward.ByCluster.OrderBy(item => item.Source)
            );
        });

    [Fact]
    public void No_interval_reaches_beyond_the_one_that_spans_them() =>
        s_rows.Sample(rows =>
        {
            var found = Of(rows);
            var parts = found
                .ByCluster.Select(item => (item.Mean, item.Lower, item.Upper))
                .Append((found.Mean, found.BySpecimen.Lower, found.BySpecimen.Upper))
                .ToArray();
            Assert.All(
                parts,
                part => Assert.True(found.Lower <= part.Lower && part.Upper <= found.Upper)
            );

            // And no farther than the farthest, lengthened.
            RequireClose(
                rows,
                found,
                parts.Min(part => part.Mean - (found.Stretch.Downward * (part.Mean - part.Lower))),
                found.Lower
            );
            RequireClose(
                rows,
                found,
                parts.Max(part => part.Mean + (found.Stretch.Upward * (part.Upper - part.Mean))),
                found.Upper
            );
        });

    [Fact]
    public void One_more_clustering_never_narrows_the_interval() =>
        s_rows.Sample(rows =>
        {
            var without = Computed.Value(
                ClusteredMean.WithInterval(Values(rows), [Clusterings(rows)[0]], 0.9)
            );
            var found = Of(rows);
            Assert.True(found.Lower <= without.Lower && without.Upper <= found.Upper);
        });

    [Fact]
    public void Input_is_left_as_it_was() =>
        s_rows.Sample(rows =>
        {
            var values = Values(rows);
            Computed.Value(ClusteredMean.WithInterval(values, Clusterings(rows), 0.9));
            Assert.Equal(Values(rows), values);
        });

    private static void RequireAlike(Row[] rows, Func<Row, Row> changed, double scale, double shift)
    {
        var found = Of(rows);
        var other = Of([.. rows.Select(changed)]);
        RequireClose(rows, other, (scale * found.Lower) + shift, other.Lower);
        RequireClose(rows, other, (scale * found.Upper) + shift, other.Upper);
        RequireClose(rows, other, (scale * found.Mean) + shift, other.Mean);
    }

    /// <summary>To 10⁻⁹ of the size of the numbers; the flat point of the transformation for skewness, beside which rounding shows as its cube root, is passed over.</summary>
    private static void RequireClose(
        Row[] rows,
        ClusteredMeanInterval found,
        double expected,
        double actual
    )
    {
        var n = rows.Length;
        var q = StudentT.Quantile(0.95, n - 1) / Math.Sqrt(n);
        var g = found.Stretch.Skewness;
        if (new[] { q, -q }.Any(x => Math.Abs(1 + (g * (x - (g / (6 * n))))) < 1e-3))
        {
            return;
        }

        var size = new[] { 1, Math.Abs(found.Lower), Math.Abs(found.Upper) }.Max();
        Close.Absolute(expected, actual, 1e-9 * size * Math.Max(1, 1000 / size));
    }

    private static ClusteredMeanInterval Of(Row[] rows) =>
        Computed.Value(ClusteredMean.WithInterval(Values(rows), Clusterings(rows), 0.9));

    private static double[] Values(Row[] rows) => [.. rows.Select(row => row.Value)];

    private static ImmutableArray<Clustering> Clusterings(Row[] rows) =>
        [
            new(IntervalSource.CollectionDays, [.. rows.Select(row => row.Day)]),
            new(IntervalSource.BaselineRuns, [.. rows.Select(row => row.BaselineRun)]),
            new(IntervalSource.DelayedRuns, [.. rows.Select(row => row.DelayedRun)]),
            new(IntervalSource.Persons, [.. rows.Select(row => row.Person)]),
        ];

    private sealed record Row(double Value, int Day, int BaselineRun, int DelayedRun, int Person);
}
