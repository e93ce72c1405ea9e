using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Collecting;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Pairing;

public sealed class StudyRowsTests
{
    private static readonly SmallStudy s_study = SmallStudy.Of(
        [6, 24],
        ["30.0 | 30.4 | 31.0", "- | 35.1 | 34.0", "41.0 | CLOT | 4.11", "41.0 | 44.0 | -"]
    );

    [Fact]
    public void Rows_in_order_are_not_moved()
    {
        var rows = new StudyRows(s_study.Inputs);

        Assert.True(rows.IsInOrder);
        Assert.Equal(["S000", "S001", "S002", "S003"], rows.Specimens.Select(Code));
        Assert.Equal(s_study.Inputs.Results, rows.Of("aPTT").ToArray());
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Rows_in_any_order_are_put_together_by_specimen_and_analyte_and_keep_their_order(
        int seed
    )
    {
        var inputs = Shuffled(TwoAnalytes(), seed);
        var rows = new StudyRows(inputs);

        Assert.False(rows.IsInOrder);
        Assert.Equal(
            inputs.Tubes.Select(tube => tube.Specimen).Distinct(),
            rows.Specimens.Select(Code)
        );
        Assert.All(
            rows.Specimens,
            specimen =>
            {
                Assert.Equal(
                    inputs.Tubes.Where(tube => tube.Specimen == specimen.Specimen),
                    specimen.Tubes.ToArray()
                );
                Assert.Equal(
                    inputs.Results.Where(row => row.Specimen == specimen.Specimen),
                    specimen.Results.ToArray()
                );
                Assert.All(
                    new[] { "aPTT", "PT" },
                    analyte =>
                        Assert.Equal(
                            inputs.Results.Where(row =>
                                row.Specimen == specimen.Specimen && row.Analyte == analyte
                            ),
                            rows.Of(analyte, specimen).ToArray()
                        )
                );
            }
        );
    }

    [Fact]
    public void A_specimen_without_tubes_comes_last_and_an_analyte_without_results_has_none()
    {
        var rows = new StudyRows(
            s_study.Inputs with
            {
                Tubes = s_study.Inputs.Tubes.RemoveAll(tube => tube.Specimen == "S001"),
            }
        );

        Assert.Equal(["S000", "S002", "S003", "S001"], rows.Specimens.Select(Code));
        Assert.True(rows.Specimens[^1].Tubes.IsEmpty);
        Assert.Equal(2, rows.Specimens[^1].Results.Length);
        Assert.True(rows.Of("PT").IsEmpty);
        Assert.True(rows.Of("PT", rows.Specimens[0]).IsEmpty);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    public void The_order_of_rows_changes_nothing_that_is_asked_or_counted(int seed)
    {
        var inputs = TwoAnalytes();
        var at = inputs.Tubes[0].CollectedAt.AddHours(9);
        var (queries, inventory) = StudyChecks.WhileCollecting(inputs, "", at);
        var (ofOther, other) = StudyChecks.WhileCollecting(Shuffled(inputs, seed), "", at);

        Assert.NotEmpty(queries);
        Assert.Equal(
            queries.Select(query => $"{query}").Order(StringComparer.Ordinal),
            ofOther.Select(query => $"{query}").Order(StringComparer.Ordinal)
        );
        Assert.Equal(Words(inventory), Words(other));
    }

    [Fact]
    public void The_check_counts_what_is_counted_without_it()
    {
        var at = s_study.Inputs.Tubes[0].CollectedAt.AddHours(9);

        Assert.Equal(
            Words(CollectionCount.Of(s_study.Inputs, at, ImmutableHashSet<int>.Empty)),
            Words(StudyChecks.WhileCollecting(s_study.Inputs, "", at).Inventory)
        );
    }

    private static string Code(SpecimenRows specimen) => specimen.Specimen;

    private static string[] Words(CollectionInventory inventory) =>
        [
            .. inventory.Tests.Select(test => $"{test} {string.Join(' ', test.Analytes)}"),
            .. inventory.Groups.Select(item => $"{item.Specimens} {item.Usable} of {item.Planned}"),
            .. inventory.Ranges.Select(range =>
                $"{range.Analyte} {range.Count} {range.Lowest} {range.Highest}"
            ),
        ];

    /// <summary>The study with the same results for a second analyte.</summary>
    private static StudyInputs TwoAnalytes() =>
        s_study.Inputs with
        {
            Protocol = s_study.Inputs.Protocol with
            {
                Analytes =
                [
                    s_study.Inputs.Protocol.Analytes[0],
                    s_study.Inputs.Protocol.Analytes[0] with
                    {
                        Id = "PT",
                    },
                ],
            },
            Results =
            [
                .. s_study.Inputs.Results,
                .. s_study.Inputs.Results.Select(row =>
                    row with
                    {
                        Analyte = "PT",
                        SourceRow = row.SourceRow + 100,
                    }
                ),
            ],
        };

    private static StudyInputs Shuffled(StudyInputs inputs, int seed)
    {
        var random = new Random(seed);
        var (tubes, results) = (inputs.Tubes.ToArray(), inputs.Results.ToArray());
        random.Shuffle(tubes);
        random.Shuffle(results);
        return inputs with { Tubes = [.. tubes], Results = [.. results] };
    }
}
