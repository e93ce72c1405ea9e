using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report.Certainty;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class ConsequenceTests
{
    [Fact]
    public void Specimens_on_two_sides_of_a_level_are_counted_by_hand()
    {
        foreach (var analysis in OddStudies.All.Values)
        {
            foreach (var cell in analysis.Sequences.SelectMany(sequence => sequence.Cells))
            {
                foreach (var change in cell.SideChanges)
                {
                    var pairs = cell.Pairs.Where(pair => pair.IsOfNumbers).ToArray();
                    string[] Where(Func<decimal, decimal, bool> moved) =>
                        [
                            .. pairs
                                .Where(pair => moved(pair.Values().Baseline, pair.Values().Delayed))
                                .Select(pair => pair.Specimen),
                        ];
                    if (cell.Pairs.Any(pair => pair.Status == PairStatus.BeyondInterval))
                    {
                        continue;
                    }

                    Assert.Equal(pairs.Length, change.Counted);
                    Assert.Equal(Where((x, y) => x < change.Level && y >= change.Level), change.Up);
                    Assert.Equal(
                        Where((x, y) => x >= change.Level && y < change.Level),
                        change.Down
                    );
                }
            }
        }
    }

    [Theory]
    [InlineData(0, 0, 0, "not tested (0 below, 40 above)", Emphasis.Muted)]
    [InlineData(38, 0, 0, "not tested (38 below, 2 above)", Emphasis.Muted)]
    [InlineData(20, 0, 0, "0 of 40; imprecision alone 1.2", Emphasis.None)]
    [InlineData(20, 2, 1, "3 of 40, up: U1, U2; down: D1; imprecision alone 1.2", Emphasis.Strong)]
    [InlineData(1, 0, 1, "hardly tested; 1 of 40, down: D1; imprecision alone 1.2", Emphasis.None)]
    public void A_cell_counts_who_changed_side_beside_what_imprecision_moves_and_no_zero_reassures(
        int below,
        int up,
        int down,
        string expected,
        object emphasis
    )
    {
        var analysis = OddStudies.All["40 pairs"];
        var cell = analysis.Sequences[0].Cells[0] with
        {
            SideChanges =
            [
                .. analysis
                    .Protocol.Analytes[0]
                    .DecisionLevels.Select(at => new SideChange(
                        at,
                        40,
                        [.. Enumerable.Range(1, up).Select(i => $"U{i}")],
                        [.. Enumerable.Range(1, down).Select(i => $"D{i}")],
                        1.234
                    )
                    {
                        BaselinesBelow = below,
                    }),
            ],
        };
        var table = ConsequenceSection
            .Of(analysis with { Sequences = [analysis.Sequences[0] with { Cells = [cell] }] })!
            .Blocks.OfType<KeepTogether>()
            .SelectMany(block => block.Blocks)
            .OfType<Table>()
            .Single();

        Assert.All(
            table.Rows[1].Cells[1..],
            found =>
            {
                Assert.Equal(expected, found.Text);
                Assert.Equal((Emphasis)emphasis, found.Emphasis);
            }
        );
    }

    [Fact]
    public void Without_a_level_there_is_nothing_to_cross()
    {
        var analysis = OddStudies.All["40 pairs"];
        Assert.Null(
            ConsequenceSection.Of(
                analysis with
                {
                    Protocol = analysis.Protocol with
                    {
                        Analytes =
                        [
                            .. analysis.Protocol.Analytes.Select(analyte =>
                                analyte with
                                {
                                    DecisionLevels = [],
                                }
                            ),
                        ],
                    },
                }
            )
        );
    }

    [Fact]
    public void Without_a_pair_it_says_so() =>
        Assert.Contains(
            "No specimen has two results",
            Assert
                .IsType<Paragraph>(
                    ConsequenceSection.Of(OddStudies.All["no pair"])!.Blocks.Single()
                )
                .Text,
            StringComparison.Ordinal
        );
}
