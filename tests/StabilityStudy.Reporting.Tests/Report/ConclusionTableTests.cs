using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class ConclusionTableTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    [Fact]
    public void Counted_of_received_and_left_out_stand_in_the_table_and_by_reason_below()
    {
        var analysis = OddStudies.All["a group without an eligible pair"];

        Assert.Contains(
            FirstPageParts.Rows(analysis),
            row => row.StartsWith("6 h|0 of 30|", Comparison)
        );
        Assert.Contains(
            "Left out: 6 h 30 of 30 (not eligible); 8 h 30 of 30 (not eligible).",
            string.Join(
                "\n",
                FirstPageParts.Decisions(analysis).Rows.SelectMany(row => row.Remarks)
            ),
            Comparison
        );
    }

    [Fact]
    public void A_tube_without_a_result_counts_with_and_without_a_stated_reason()
    {
        var analysis = FirstPageParts.WithCell(
            OddStudies.All["40 pairs"],
            0,
            cell =>
                cell with
                {
                    Pairs = cell
                        .Pairs.SetItem(0, NotTested(cell.Pairs[0]))
                        .SetItem(1, Deleted(cell.Pairs[1])),
                }
        );
        var remarks = string.Join("\n", FirstPageParts.Decisions(analysis).Rows[0].Remarks);

        Assert.Contains(
            FirstPageParts.Rows(analysis),
            row => row.StartsWith("6 h|40 of 40", Comparison)
        );
        Assert.DoesNotContain("Left out", remarks, Comparison);
        Assert.Contains(
            "Counted as outside the limit: 6 h S001, S002 (no delayed result)",
            remarks,
            Comparison
        );
        Assert.DoesNotContain("failed", remarks, Comparison);
    }

    [Fact]
    public void Every_criterion_of_a_cell_has_its_figure()
    {
        var bounds = ClopperPearson.Bounds(38, 40, 0.95);
        var reason = new ShareShownReason(85);
        var analysis = FirstPageParts.WithCell(
            OddStudies.All["40 pairs"],
            0,
            cell =>
                cell with
                {
                    Criteria =
                    [
                        .. cell.Criteria,
                        new ReclassificationResult(
                            "sides",
                            Verdict.Met,
                            [reason],
                            0.95,
                            0.15,
                            [
                                new LevelReclassification(
                                    40m,
                                    40,
                                    1,
                                    1,
                                    0,
                                    0,
                                    null,
                                    ["S001", "S002"],
                                    Estimate.Of(ClopperPearson.Bounds(2, 40, 0.95)),
                                    Verdict.Met,
                                    reason
                                )
                                {
                                    Zone = 1.2m,
                                    OnOtherSide = 3,
                                },
                            ]
                        ),
                        new ClassificationResult(
                            "classes",
                            Verdict.Inconclusive,
                            [reason],
                            0.95,
                            0.9,
                            ["negative", "positive"],
                            [],
                            40,
                            38,
                            0,
                            0,
                            0,
                            0,
                            null,
                            [],
                            Estimate.Of(bounds)
                        ),
                    ],
                }
        );
        var rows = FirstPageParts.Rows(analysis);

        Assert.Contains(
            rows,
            row =>
                row.Contains(
                    "2 of 40 clearly change side of 40 (≤\u00A014.9 %); 3 at all|at most 15 %",
                    Comparison
                )
        );
        Assert.Contains(
            rows,
            row => row.Contains("38 of 40 keep class (≥\u00A085.1 %)|90 %", Comparison)
        );
        Assert.Equal(4, rows.Length);
    }

    [Fact]
    public void A_criterion_on_the_estimate_alone_is_labeled()
    {
        var protocol = StudyRows.Protocol();
        var analysis = OddStudies.All["40 pairs"] with
        {
            Protocol = protocol with
            {
                Criteria =
                [
                    (BiasCriterion)protocol.Criteria[0] with
                    {
                        Rule = DecisionRule.PointOnly,
                    },
                    protocol.Criteria[1],
                ],
            },
        };

        Assert.All(
            FirstPageParts.Rows(analysis),
            row => Assert.Contains("|±7.5 %, no error control|", row, Comparison)
        );
        Assert.Contains("No error control", FirstPageParts.Table(analysis).Note, Comparison);
    }

    [Fact]
    public void The_limit_of_a_single_specimen_stands_in_the_heading_of_its_group() =>
        Assert.Contains(
            FirstPageParts.Table(OddStudies.All["40 pairs"]).Rows,
            row =>
                row.Kind == RowKind.GroupHeading
                && row.Cells[0]
                    .Text.Contains("limit of a single specimen ±15 % · baselines ", Comparison)
        );

    private static PairRecord NotTested(PairRecord pair) =>
        pair with
        {
            Status = PairStatus.NoDelayedResult,
            Reason = "not tested",
            Delayed = pair.Delayed! with
            {
                Result = new MissingResult("NT", MissingReason.NotTested),
            },
        };

    private static PairRecord Deleted(PairRecord pair) =>
        pair with
        {
            Status = PairStatus.NoDelayedResult,
            Reason = "no row",
            Delayed = null,
        };
}
