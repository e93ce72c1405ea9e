using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Core.Tests.Conclusions;

/// <summary>Decision levels, changes of side and class, drift.</summary>
public sealed class CriterionKindTests
{
    private static readonly LimitChoice s_held = new("aPTT", "bias");
    private static readonly LimitChoice s_counted = new("aPTT", null);

    private static DecisionLevelCriterion Levels(params decimal[] levels) =>
        new("levels", [s_held], [], 0.90, [.. levels]);

    private static ReclassificationCriterion Sides(decimal percent, params decimal[] levels) =>
        new("sides", [s_counted], [], 0.95, percent, [.. levels]);

    private static ClassificationCriterion Classes(int weakPositives, params decimal[] cutoffs) =>
        new("classes", [s_counted], [], 0.95, 85, [.. cutoffs], weakPositives);

    private static DriftCriterion Drift(params DriftShape[] shapes) =>
        new("drift", [s_held], [], 0.90, [.. shapes]);

    /// <summary>Forty baselines from 25 to 64 s, each with a change that alternates.</summary>
    private static SmallStudy Spread(decimal percent) =>
        SmallStudy.Of(
            [6],
            Enumerable
                .Range(0, 40)
                .Select(i =>
                    FormattableString.Invariant(
                        $"{25 + i}.0 | {(25 + i) * (1 + percent / 100) + (i % 2 == 0 ? 0.2m : -0.2m):0.0}"
                    )
                )
        );

    private static CriterionResult Result(SmallStudy study) => study.Cell().Criteria[0];

    [Theory]
    [InlineData(0, Verdict.Met)]
    [InlineData(12, Verdict.NotMet)]
    [InlineData(7.5, Verdict.Inconclusive)]
    public void A_predicted_change_is_held_to_the_limit_at_the_level(
        double percent,
        Verdict expected
    ) => Assert.Equal(expected, Result(Spread((decimal)percent).Criteria(Levels(40, 50))).Verdict);

    [Fact]
    public void A_level_outside_the_baselines_is_inconclusive()
    {
        var result = (DecisionLevelResult)Result(Spread(0).Criteria(Levels(40, 63)));

        Assert.Equal(Verdict.Inconclusive, result.Verdict);
        Assert.Equal(Verdict.Met, result.Levels[0].Verdict);
        Assert.Equal("level-outside-coverage", result.Levels[1].Reason.Name());
        Assert.Equal(1, result.Levels[1].BaselinesAbove);
    }

    [Fact]
    public void Baselines_that_hardly_spread_do_not_cover_a_level()
    {
        var study = Spread(0).Analyte(analyte => analyte with { BetweenRunCvPercent = 6m });

        Assert.Equal(
            "level-outside-coverage",
            Result(study.Criteria(Levels(50))).Reasons[0].Name()
        );
    }

    [Fact]
    public void Another_line_is_asked_for_beside_a_decision_level_criterion_only()
    {
        var line = Assert.Single(
            Spread(0).Criteria(Levels(40, 50)).Cell().Robustness,
            item => item.Question.Kind == RobustnessKind.OtherRegression
        );

        Assert.Equal(Conclusion.Supported, line.Conclusion);
        Assert.DoesNotContain(
            Spread(0).Cell().Robustness,
            item => item.Question.Kind == RobustnessKind.OtherRegression
        );
    }

    [Fact]
    public void Decision_levels_on_few_days_are_inconclusive()
    {
        var study = Spread(0).Protocol(protocol => protocol with { MinimumDays = 11 });

        Assert.Equal("too-few-days", Result(study.Criteria(Levels(40))).Reasons[0].Name());
    }

    [Fact]
    public void A_result_at_the_level_is_on_its_upper_side()
    {
        var study = SmallStudy.Of(
            [6],
            ["38.0 | 40.0", "40.0 | 38.0", "40.0 | 41.0", "39.0 | 39.9"]
        );

        var level = ((ReclassificationResult)Result(study.Criteria(Sides(10, 40)))).Levels[0];

        Assert.Equal((1, 1, 4), (level.MovedUp, level.MovedDown, level.Counted));
        Assert.Equal(["S000", "S001"], level.ChangedSpecimens);
    }

    [Theory]
    [InlineData(0, Verdict.Met)]
    [InlineData(12, Verdict.NotMet)]
    [InlineData(4, Verdict.Inconclusive)]
    public void The_share_that_changes_side_decides(int changed, Verdict expected)
    {
        var study = SmallStudy.Of(
            [6],
            Enumerable
                .Range(0, 40)
                .Select(i =>
                    i < changed ? "38.0 | 42.0"
                    : i < 37 ? "38.0 | 38.2"
                    : "44.0 | 44.2"
                )
        );

        Assert.Equal(expected, Result(study.Criteria(Sides(10, 40))).Verdict);
    }

    [Fact]
    public void Failed_tubes_count_as_changed_for_what_is_met_and_not_for_what_is_refuted()
    {
        var study = SmallStudy.Quiet(40);
        for (var i = 0; i < 20; i++)
        {
            study = study.Result(i, 6, "CLOT");
        }

        var result = (ReclassificationResult)Result(study.Criteria(Sides(10, 60)));

        Assert.Equal(20, result.Levels[0].Failed);
        Assert.Equal(Verdict.Inconclusive, result.Verdict);
    }

    [Fact]
    public void Half_of_the_specimens_at_a_level_are_expected_to_change_side_by_noise()
    {
        var study = SmallStudy.Of([6], Enumerable.Range(0, 40).Select(_ => "40.0 | 40.0"));

        var level = ((ReclassificationResult)Result(study.Criteria(Sides(10, 40)))).Levels[0];

        Assert.Equal(20, level.ExpectedFromNoise!.Value, 9);
    }

    [Fact]
    public void Classes_that_stay_are_met_and_too_few_weak_positives_leave_it_open()
    {
        var study = SmallStudy.Of(
            [6],
            Enumerable.Range(0, 40).Select(i => i < 8 ? "45.0 | 45.2" : "30.0 | 30.1")
        );

        Assert.Equal(Verdict.Met, Result(study.Criteria(Classes(8, 40, 60))).Verdict);
        var few = Result(study.Criteria(Classes(9, 40, 60)));
        Assert.Equal(
            (Verdict.Inconclusive, "too-few-weak-positives"),
            (few.Verdict, few.Reasons[0].Name())
        );
    }

    [Fact]
    public void The_table_counts_who_went_where()
    {
        var study = SmallStudy.Of(
            [6],
            ["30.0 | 41.0", "45.0 | 30.0", "70.0 | 71.0", "60.0 | CLOT"]
        );

        var result = (ClassificationResult)Result(study.Criteria(Classes(0, 40, 60)));

        Assert.Equal(["below 40", "40 to below 60", "60 or above"], result.Classes);
        Assert.Equal(
            [new ClassChange(0, 1, 1), new ClassChange(1, 0, 1), new ClassChange(2, 2, 1)],
            result.Table
        );
        Assert.Equal((4, 1, 1), (result.Counted, result.Kept, result.Failed));
    }

    [Fact]
    public void A_result_beyond_a_limit_has_a_class_when_the_limit_decides()
    {
        var study = SmallStudy.Of([6], [">180 | >180", "<20 | <20"]);

        var result = (ClassificationResult)Result(study.Criteria(Classes(0, 40)));

        Assert.Equal((2, 0), (result.Kept, result.Undecidable));
    }

    [Theory]
    [InlineData("30.0 | 30.2 | 30.5", "30.0 | 30.0 | 30.1", Verdict.Met)]
    [InlineData("30.0 | 34.2 | 36.9", "30.0 | 32.0 | 35.7", Verdict.NotMet)]
    public void Drift_is_held_to_the_limit_at_the_planned_delay(
        string even,
        string odd,
        Verdict expected
    )
    {
        var study = SmallStudy
            .Of([6, 12], Enumerable.Range(0, 40).Select(i => i % 2 == 0 ? even : odd))
            .Criteria(Drift(DriftShape.Linear));

        Assert.Equal(expected, study.Cell(12).Criteria[0].Verdict);
    }

    [Fact]
    public void A_shape_that_the_means_do_not_follow_is_inconclusive()
    {
        // Nothing happens until 6 h, and then a change that a logarithm puts mostly before.
        var study = SmallStudy
            .Of(
                [6, 12],
                Enumerable
                    .Range(0, 40)
                    .Select(i => i % 2 == 0 ? "30.0 | 30.0 | 31.6" : "30.0 | 30.1 | 31.4")
            )
            .Criteria(Drift(DriftShape.Logarithmic));

        var misfit = Assert.IsType<ShapeMisfitReason>(study.Cell(12).Criteria[0].Reasons[0]);

        Assert.Equal([SmallProtocol.At(6), SmallProtocol.At(12)], misfit.TimePoints);
        Assert.Equal(Verdict.Inconclusive, study.Cell(12).Criteria[0].Verdict);
    }

    [Fact]
    public void Shapes_that_disagree_are_inconclusive()
    {
        // Changes so scattered that both shapes fit: a line carries more of the change to 12 h than a logarithm does.
        decimal[] scatter = [-2.4m, -1.6m, -0.8m, 0, 0, 0.8m, 1.6m, 2.4m];
        var study = SmallStudy
            .Of(
                [6, 12],
                Enumerable
                    .Range(0, 40)
                    .Select(i => scatter[i % 8])
                    .Select(by =>
                        FormattableString.Invariant($"30.0 | {30.9m + by:0.0} | {31.8m + by:0.0}")
                    )
            )
            .Criteria(Drift(DriftShape.Linear, DriftShape.Logarithmic));

        var result = (DriftCriterionResult)study.Cell(12).Criteria[0];

        Assert.NotEqual(result.Shapes[0].Verdict, result.Shapes[1].Verdict);
        Assert.Equal(
            (Verdict.Inconclusive, "shapes-disagree"),
            (result.Verdict, result.Reasons[0].Name())
        );
    }

    [Fact]
    public void Two_draws_of_one_person_widen_the_interval()
    {
        var pairs = Enumerable
            .Range(0, 40)
            .Select(i =>
                SmallPairs.Compared(
                    i,
                    "30.0",
                    FormattableString.Invariant($"{30 + (i / 2 % 4 - 1.5m) / 2 + i % 2 * 0.1m}"),
                    i % 10
                )
            )
            .ToArray();
        var protocol = SmallProtocol.For(40, 6);
        ClusterInterval Of(PairRecord[] some) =>
            new(
                (BiasResult)
                    CellEvaluation.Evaluate(
                        [.. some],
                        new CellContext(
                            protocol,
                            protocol.Analytes[0],
                            protocol.Groups[0],
                            protocol.Storages[0],
                            protocol.TimePoints[0],
                            []
                        )
                    )[0]
            );

        var independent = Of(pairs);
        var repeated = Of([
            .. pairs.Select(
                (pair, i) =>
                    pair with
                    {
                        Collected = pair.Collected with { Subject = SmallRows.Code(i / 2) },
                    }
            ),
        ]);

        Assert.True(repeated.Width > independent.Width);
    }

    private sealed record ClusterInterval(BiasResult Result)
    {
        public double Width => Result.Mean.Value!.Upper - Result.Mean.Value.Lower;
    }

    /// <summary>Dropping tubes that failed would manufacture support.</summary>
    [Fact]
    public void Failed_tubes_leave_a_drift_criterion_open()
    {
        var study = SmallStudy.Quiet(40, 6, 12).Criteria(Drift(DriftShape.Linear));
        var failed = study.Result(3, 12, "CLOT").Result(4, 6, "CLOT");

        Assert.Equal(Verdict.Met, study.Cell(12).Criteria[0].Verdict);
        Assert.Equal(Verdict.Inconclusive, failed.Cell(12).Criteria[0].Verdict);
        Assert.Equal("uncounted-pairs", failed.Cell(12).Criteria[0].Reasons[0].Name());
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(2)]
    public void Pairs_on_one_line_leave_a_decision_level_open_whatever_rounding_leaves(double ratio)
    {
        var study = SmallStudy
            .Of(
                [6],
                Enumerable
                    .Range(0, 40)
                    .Select(i => FormattableString.Invariant($"{25 + i}.0 | {25 + i}.5"))
            )
            .Analyte(analyte => analyte with { ErrorVarianceRatio = (decimal)ratio })
            .Criteria(Levels(40));

        Assert.Equal(
            (Verdict.Inconclusive, "pairs-on-one-line"),
            (Result(study).Verdict, Result(study).Reasons[0].Name())
        );
    }

    [Fact]
    public void Persons_with_several_specimens_widen_the_intervals_of_lines_and_slopes()
    {
        // Four specimens a person, whose changes are alike.
        SmallStudy Of(Func<int, string> subject) =>
            SmallStudy
                .Of(
                    [6],
                    Enumerable
                        .Range(0, 40)
                        .Select(i =>
                            FormattableString.Invariant(
                                $"{25 + i}.0 | {25 + i + (i / 4 % 2 == 0 ? 0.5m : -0.5m) + (i % 2 * 0.1m):0.0}"
                            )
                        )
                )
                .Protocol(protocol => protocol with { RepeatDraws = RepeatDraws.OneCluster })
                .Tubes(tube =>
                    tube with
                    {
                        Subject = subject(
                            int.Parse(tube.Specimen[1..], CultureInfo.InvariantCulture)
                        ),
                    }
                );
        double WidthOfLine(Func<int, string> subject)
        {
            var levels = (DecisionLevelResult)Result(Of(subject).Criteria(Levels(40)));
            return levels.Levels[0].Change.Value!.Upper - levels.Levels[0].Change.Value!.Lower;
        }

        double WidthOfSlope(Func<int, string> subject)
        {
            var drift = (DriftCriterionResult)Result(
                Of(subject).Criteria(Drift(DriftShape.Linear))
            );
            return drift.Shapes[0].Predicted!.UpperBound - drift.Shapes[0].Predicted!.LowerBound;
        }

        string Own(int i) => "P" + i;
        string Shared(int i) => "P" + (i / 4);
        Assert.True(WidthOfLine(Shared) > WidthOfLine(Own));
        Assert.True(WidthOfSlope(Shared) > WidthOfSlope(Own));
    }
}
