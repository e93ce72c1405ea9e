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

    [Fact]
    public void Levels_with_too_few_baselines_on_a_side_reassure_nobody()
    {
        var analysis = OddStudies.All["40 pairs"];
        var cell = analysis.Sequences[0].Cells[0] with
        {
            SideChanges =
            [
                .. analysis
                    .Protocol.Analytes[0]
                    .DecisionLevels.Select(at => new SideChange(at, 40, [], [], 0.1)
                    {
                        BaselinesBelow = 0,
                    }),
            ],
        };
        var section = ConsequenceSection.Of(
            analysis with
            {
                Sequences = [analysis.Sequences[0] with { Cells = [cell] }],
            }
        );

        Assert.Equal(
            [
                "No decision level has enough baselines on both sides: nothing is known about changes of side.",
            ],
            section.Blocks.OfType<Bullets>().Single().Items
        );
    }

    [Fact]
    public void The_largest_share_is_said_in_a_sentence_beside_what_imprecision_predicts()
    {
        var analysis = OddStudies.All["40 pairs"];
        var level = analysis.Protocol.Analytes[0].DecisionLevels.Order().ToArray();
        var cell = analysis.Sequences[0].Cells[0] with
        {
            Conclusion = Core.Conclusions.Conclusion.Supported,
            SideChanges =
            [
                .. level.Select(at => new SideChange(at, 40, ["S1", "S2"], ["S3"], 1.234)
                {
                    BaselinesBelow = 20,
                }),
            ],
        };
        var section = ConsequenceSection.Of(
            analysis with
            {
                Sequences = [analysis.Sequences[0] with { Cells = [cell] }],
            }
        );

        Assert.Contains(
            section.Blocks.OfType<Bullets>().SelectMany(block => block.Items),
            item =>
                item.StartsWith("Most at supported time points:", StringComparison.Ordinal)
                && item.Contains(
                    $"3 of 40 specimens across {level[0]} s (imprecision alone: 1.2)",
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void A_level_without_baselines_on_both_sides_is_not_tested_and_no_zero_is_shown()
    {
        var analysis = OddStudies.All["40 pairs"];
        var cell = analysis.Sequences[0].Cells[0] with
        {
            SideChanges =
            [
                .. analysis
                    .Protocol.Analytes[0]
                    .DecisionLevels.Select(at => new SideChange(at, 40, [], [], 0)
                    {
                        BaselinesBelow = 38,
                    }),
            ],
        };
        var table = ConsequenceSection
            .Of(analysis with { Sequences = [analysis.Sequences[0] with { Cells = [cell] }] })
            .Blocks.OfType<KeepTogether>()
            .SelectMany(block => block.Blocks)
            .OfType<Table>()
            .Single();

        Assert.All(
            table.Rows,
            row => Assert.Equal("not tested: 38 baselines below, 2 at or above", row.Cells[1].Text)
        );
    }

    [Fact]
    public void Without_a_level_it_says_so() =>
        Assert.Contains(
            "No specimen has two results",
            Assert
                .IsType<Paragraph>(ConsequenceSection.Of(OddStudies.All["no pair"]).Blocks.Single())
                .Text,
            StringComparison.Ordinal
        );
}
