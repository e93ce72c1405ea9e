using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Controls;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report.Conduct;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Figures;
using StabilityStudy.Reporting.Report.TimePoints;
using StabilityStudy.Reporting.Report.Wording;
using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Proportions;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>The tables of the further criteria and of the controls, from results put together by hand.</summary>
public sealed class CellTableTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static readonly VerdictReason s_reason = new NotComputableReason(
        new(Refusal.WeightsDidNotSettle)
    );
    private static readonly Limit s_limit = new("level", 5m, null, "invented");

    [Fact]
    public void A_decision_level_shows_its_baselines_and_a_change_that_does_not_round_across_the_limit()
    {
        var covered = new LevelResult(
            60m,
            12,
            28,
            3,
            Estimate.Of(new BiasAtLevel(60, 62.4, 2.4, 4, 0.3, 1.8, 2.9996, 0.9)),
            Estimate.Of(new ChangeBesideLevel(true, 4.1, 3.3, 4.9)),
            Verdict.Met,
            s_reason
        );
        var uncovered = covered with
        {
            Level = 90m,
            Change = Estimate.Refused<BiasAtLevel>(Refusal.LevelOutsideCoverage),
            Beside = Estimate.Refused<ChangeBesideLevel>(Refusal.LevelOutsideCoverage),
            Verdict = Verdict.Inconclusive,
        };
        var table = DecisionLevelTable.Of(
            new DecisionLevelResult(
                "levels",
                s_limit,
                Verdict.Inconclusive,
                [s_reason],
                0.9,
                [covered, uncovered]
            ),
            Names
        );

        Assert.Equal(
            [
                "60",
                "12, 28",
                "+2.40",
                "+1.80 to +2.9996",
                "+4.1 (+3.3 to +4.9), above",
                "±3.00",
                "met",
            ],
            Texts(table.Rows[0])
        );
        Assert.Equal("not computable", table.Rows[1].Cells[2].Text);
    }

    [Fact]
    public void Changes_of_side_stand_beside_those_expected_from_imprecision_alone()
    {
        var table = ReclassificationTable.Of(Sides(ChangedAt(60m)), Names);

        Assert.Equal("3, 1", table.Rows[0].Cells[2].Text);
        Assert.Equal("S001, S002, S003, S004", table.Rows[0].Cells[9].Text);
        Assert.Equal("40", table.Rows[0].Cells[4].Text);
        Assert.Equal("5", table.Rows[0].Cells[6].Text);
        Assert.Equal("1.2", table.Rows[0].Cells[7].Text);
    }

    [Fact]
    public void Specimens_that_change_side_are_named_in_a_figure_with_the_levels()
    {
        var analysis = OddStudies.All["40 pairs"];
        var cell = CriterionTextTests.FirstCell(analysis);
        var axes = new CellAxes(analysis.Sequences[0], Names);
        var plot = SideChangePlot.Of(Sides(ChangedAt(35m)), cell, Names, axes);

        Assert.NotNull(plot);
        var named = plot
            .Chart.Layers.OfType<PointLayer>()
            .SelectMany(layer => layer.Points)
            .Where(point => point.Label is not null);
        Assert.Equal(
            ["S001", "S002", "S003", "S004"],
            named.Select(point => point.Label).Order(StringComparer.Ordinal)
        );
        Assert.Equal(35, Assert.Single(plot.Chart.Layers.OfType<ReferenceLine>()).Value);
        Assert.Equal(
            cell.Pairs.Count(pair => pair.IsOfNumbers),
            plot.Chart.Layers.OfType<TrajectoriesLayer>().Single().Lines.Length
        );
        Assert.Contains("S001, S002, S003, S004", plot.AlternativeText, Comparison);
        Assert.Null(
            SideChangePlot.Of(Sides(ChangedAt(35m)), cell with { Pairs = [] }, Names, axes)
        );
    }

    [Fact]
    public void Classes_are_shown_from_and_to()
    {
        var table = ClassificationTable.Of(
            new ClassificationResult(
                "classes",
                Verdict.Met,
                [s_reason],
                0.95,
                0.8,
                ["negative", "positive"],
                [new(0, 0, 18), new(0, 1, 2), new(1, 1, 20)],
                41,
                38,
                1,
                0,
                20,
                10,
                0.4,
                ["S001", "S002", "S009"],
                Estimate.Of(ClopperPearson.Bounds(38, 41, 0.95))
            )
        );

        Assert.Equal(["negative", "18", "2", "20"], Texts(table.Rows[0]));
        Assert.Equal(["positive", "0", "20", "20"], Texts(table.Rows[1]));
        Assert.Contains("38 of 41 specimens keep their class", table.Note, Comparison);
        Assert.Contains("1 failed", table.Note, Comparison);
    }

    [Fact]
    public void Every_declared_shape_of_drift_has_a_row()
    {
        var shape = new ShapeResult(
            DriftShape.Logarithmic,
            Estimate.Refused<DriftEstimate>(Refusal.TooFewForDrift),
            new DriftPoint(6, 4.2, 3.1, 7.4996),
            7.5,
            Verdict.Met,
            s_reason
        );
        var table = DriftCriterionTable.Of(
            new DriftCriterionResult(
                "drift",
                s_limit,
                Verdict.Met,
                [s_reason],
                0.9,
                [shape, shape with { Shape = DriftShape.Linear, Predicted = null }]
            )
        );

        Assert.Equal("+4.20 (+3.10 to +7.4996)", table.Rows[0].Cells[2].Text);
        Assert.Equal(["t", "", "not computable"], Texts(table.Rows[1]).Take(3));
    }

    [Fact]
    public void Runs_without_control_and_the_shift_of_bridging_plasma_are_shown()
    {
        var evidence = new ControlEvidence(
            10,
            8,
            ["run-3"],
            ["run-7"],
            new BridgingShift(
                2,
                20,
                18,
                Estimate.Of(new MeanInterval(10, 0.8, 1.1, 0.35, 9, 0.95, 0.01, 1.59))
            )
        );
        var table = ControlTable.Of(
            FirstPageParts.WithCell(
                OddStudies.All["40 pairs"],
                0,
                cell => cell with { Controls = evidence }
            )
        );

        Assert.NotNull(table);
        Assert.Equal(RowKind.GroupHeading, table.Rows[0].Kind);
        Assert.Equal(
            ["6 h", "10", "8", "run-3", "run-7", "+0.80 (+0.01 to +1.59) %", "2; 20 + 18"],
            Texts(table.Rows[1])
        );
        Assert.Contains("95 % interval", table.Note, Comparison);
    }

    [Fact]
    public void Control_results_stand_beside_the_imprecision_that_the_protocol_states()
    {
        var analysis = OddStudies.All["40 pairs"];
        var summary = new ControlSummary(
            analysis.Protocol.Analytes[0].Id,
            "QC-1",
            ControlKind.Control,
            20,
            10,
            30m,
            28.1m,
            31.9m,
            1,
            Estimate.Of(new SpreadSummary(20, 30.12, 0.75, 0.1, 28.9, 32.0))
        );
        var table = ControlResultTable.Of(
            analysis with
            {
                Controls =
                [
                    summary,
                    summary with
                    {
                        Kind = ControlKind.BridgingPlasma,
                        Target = null,
                    },
                ],
            }
        );

        Assert.NotNull(table);
        Assert.Contains("CV", table.Rows[0].Cells[0].Text, Comparison);
        Assert.Equal(
            ["QC-1", "20; 10", "30.12", "0.75", "2.49", "30", "28.1 to 31.9", "1"],
            Texts(table.Rows[1])
        );
        Assert.StartsWith("QC-1 (bridging plasma)", table.Rows[2].Cells[0].Text, Comparison);
        Assert.Null(ControlResultTable.Of(analysis));
    }

    [Theory]
    [InlineData(64, false, "a new study with 64 specimens")]
    [InlineData(null, false, "The figures are too close to their limits")]
    [InlineData(null, true, "More specimens are unlikely to help")]
    public void An_inconclusive_time_point_says_whether_more_specimens_would_decide(
        int? specimens,
        bool unlikely,
        string expected
    ) =>
        Assert.Contains(
            expected,
            MoreSpecimensWords.Of(
                new MoreSpecimens(specimens, unlikely)
                {
                    Deciding = new(CriterionKind.Bias, "mean"),
                }
            ),
            Comparison
        );

    [Fact]
    public void What_holds_a_time_point_back_stands_on_its_page()
    {
        var analysis = OddStudies.All["40 pairs"];
        var cell = CriterionTextTests.FirstCell(analysis) with
        {
            Doubts = [new TooManyLeftOutReason(11, 50, 20)],
            MoreSpecimens = new MoreSpecimens(64, false)
            {
                Deciding = new(CriterionKind.Bias, "mean"),
            },
        };
        var sequence = analysis.Sequences[0] with { Cells = [cell] };
        var page = GroupSections.Of(analysis with { Sequences = [sequence] }).Single();

        Assert.Contains(
            Assert
                .Single(page.Blocks.OfType<KeepTogether>())
                .Blocks.OfType<Bullets>()
                .SelectMany(list => list.Items),
            text =>
                text.Contains(
                    "11 of 50 specimens left out (22 %), at most 20 % allowed: what is left out may be what speaks against the window.",
                    Comparison
                ) && text.Contains("64 specimens", Comparison)
        );
    }

    private static LevelReclassification ChangedAt(decimal level) =>
        new(
            level,
            40,
            3,
            1,
            0,
            0,
            1.2,
            ["S001", "S002", "S003", "S004"],
            Estimate.Of(ClopperPearson.Bounds(4, 40, 0.95)),
            Verdict.Inconclusive,
            s_reason
        )
        {
            Zone = 1.2m,
            OnOtherSide = 5,
        };

    private static ReclassificationResult Sides(LevelReclassification level) =>
        new("sides", Verdict.Inconclusive, [s_reason], 0.95, 0.1, [level]);

    private static SequenceNames Names => CriterionTextTests.Names(OddStudies.All["40 pairs"]);

    private static IEnumerable<string> Texts(Row row) => row.Cells.Select(cell => cell.Text);
}
