using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Tests.Simulations.Scenarios;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Drift;
using StabilityStudy.Statistics.Location;
using StabilityStudy.Statistics.Planning;
using StabilityStudy.Statistics.Resampling;
using SimulatedStudy = StabilityStudy.Core.Tests.Simulations.Scenarios.SimulatedStudy;

namespace StabilityStudy.Core.Tests.Conclusions;

public sealed class MoreSpecimensTests
{
    private static readonly string[] s_wide = ["33.0", "29.0", "33.6", "28.8"];

    /// <summary>Specimens of 30.0 whose changes are +10, −3.3, +12 and −4 percent in turn, held to the mean alone.</summary>
    private static SmallStudy WideMean(int specimens) =>
        SmallStudy
            .Of([6], Enumerable.Range(0, specimens).Select(i => "30.0 | " + s_wide[i % 4]))
            .Criteria(SmallProtocol.MeanCriterion);

    /// <summary>The power by specimens or by collection days with as many a day, whichever is less: the interval is the wider of the two.</summary>
    private static double LesserPower(
        int specimens,
        double mean,
        ClusteredMeanInterval interval,
        double factor,
        double limit
    )
    {
        double Power(int n, double standardDeviation) =>
            EquivalencePower.Of(n, mean, standardDeviation * factor, -limit, limit, 0.90);
        var days =
            specimens
            * interval.Over(IntervalSource.CollectionDays)!.Clusters
            / interval.BySpecimen.Count;
        return Math.Min(
            Power(specimens, interval.BySpecimen.StandardDeviation),
            Power(
                days,
                interval.Over(IntervalSource.CollectionDays)!.StandardError
                    * Math.Sqrt(interval.Over(IntervalSource.CollectionDays)!.Clusters)
            )
        );
    }

    /// <summary>Quiet specimens of which the first change by a third, held to the share alone.</summary>
    private static SmallStudy Shares(int specimens, int outside) =>
        SmallStudy
            .Of(
                [6],
                Enumerable
                    .Range(0, specimens)
                    .Select(i => i < outside ? "30.0 | 40.0" : "30.0 | 30.0")
            )
            .Criteria(SmallProtocol.EachCriterion);

    [Fact]
    public void A_supported_or_refuted_time_point_has_none()
    {
        Assert.Null(SmallStudy.Quiet(40).Cell().MoreSpecimens);
        Assert.Equal(Conclusion.NotSupported, Shares(40, 20).Cell().OwnConclusion);
        Assert.Null(Shares(40, 20).Cell().MoreSpecimens);
    }

    [Fact]
    public void An_interval_that_reaches_the_limit_gives_the_smallest_number_with_the_power()
    {
        var cell = WideMean(12).Cell();
        var bias = cell.Criteria.OfType<BiasResult>().Single();
        Assert.True(bias.Mean.TryGet(out var mean));
        double PowerOf(int n) => LesserPower(n, mean.Mean, mean, 1, 7.5);

        Assert.Equal(Conclusion.Inconclusive, cell.OwnConclusion);
        var more = Assert.IsType<MoreSpecimens>(cell.MoreSpecimens);
        var specimens = Assert.IsType<int>(more.Specimens);
        Assert.False(more.UnlikelyToHelp);
        Assert.True(PowerOf(specimens) >= 0.80 && PowerOf(specimens - 1) < 0.80);
        Assert.Equal(new JudgedFigure(CriterionKind.Bias, "mean"), more.Deciding);
        Assert.Empty(more.Beside);
    }

    [Fact]
    public void A_mean_at_or_beyond_its_limit_is_unlikely_to_be_helped()
    {
        var changes = new[] { "36.0", "30.0", "36.3", "30.3" };
        var cell = SmallStudy
            .Of([6], Enumerable.Range(0, 12).Select(i => "30.0 | " + changes[i % 4]))
            .Criteria(SmallProtocol.MeanCriterion)
            .Cell();

        Assert.Equal(
            new MoreSpecimens(null, true) { Deciding = new(CriterionKind.Bias, "mean") },
            cell.MoreSpecimens
        );
    }

    [Fact]
    public void Few_specimens_all_within_need_nineteen_for_eighty_five_percent() =>
        Assert.Equal(
            ((int?)19, false, new JudgedFigure(CriterionKind.Individual, "each")),
            Stated(Shares(12, 0).Cell().MoreSpecimens!)
        );

    [Fact]
    public void A_share_below_the_required_one_is_unlikely_to_be_helped() =>
        Assert.Equal(
            new MoreSpecimens(null, true) { Deciding = new(CriterionKind.Individual, "each") },
            Shares(40, 7).Cell().MoreSpecimens
        );

    [Fact]
    public void A_share_just_above_the_required_one_needs_more_than_two_hundred() =>
        Assert.Equal(
            ((int?)null, false, new JudgedFigure(CriterionKind.Individual, "each")),
            Stated(Shares(40, 5).Cell().MoreSpecimens!)
        );

    [Fact]
    public void A_criterion_that_is_met_for_sure_adds_no_specimen()
    {
        var alone = WideMean(12).Cell().MoreSpecimens;
        var both = WideMean(12)
            .Criteria(SmallProtocol.MeanCriterion, SmallProtocol.EachCriterion)
            .Cell()
            .MoreSpecimens;

        // From nineteen on, all specimens within show the share.
        Assert.True(alone!.Specimens >= 19);
        Assert.Equal(alone.Specimens, both!.Specimens);
    }

    [Fact]
    public void Few_collection_days_give_no_number_and_say_so()
    {
        var more = SmallStudy
            .Quiet(40)
            .Protocol(protocol => protocol with { MinimumDays = 11 })
            .Cell()
            .MoreSpecimens;

        Assert.Null(more!.Specimens);
        Assert.True(more.UnlikelyToHelp);
        Assert.Equal(new TooFewDaysReason(10, 11), more.Beside[0]);
    }

    [Fact]
    public void Pairs_left_out_give_no_number_and_say_so()
    {
        var doubt = new TooManyLeftOutReason(11, 50, 20);

        var more = SpecimensStillNeeded.Of(
            Conclusion.Inconclusive,
            SmallStudy.Quiet(40).Cell().Criteria,
            [doubt],
            40,
            10
        );

        Assert.True(more is { Specimens: null, UnlikelyToHelp: true, Deciding: null });
        Assert.Equal(doubt, Assert.Single(more.Beside));
    }

    private static (int? Specimens, bool UnlikelyToHelp, JudgedFigure? Deciding) Stated(
        MoreSpecimens more
    )
    {
        Assert.Empty(more.Beside);
        return (more.Specimens, more.UnlikelyToHelp, more.Deciding);
    }

    /// <summary>Baselines 25 to 64 s in steps; the changes have the mean given and an SD of 7 %.</summary>
    private static SmallStudy Scattered(decimal meanPercent, params Criterion[] criteria) =>
        SmallStudy
            .Of(
                [6],
                Enumerable
                    .Range(0, 20)
                    .Select(i =>
                        FormattableString.Invariant(
                            $"{25 + (2 * i)}.0 | {(25 + (2 * i)) * (1 + (meanPercent / 100) + (((i * 7 % 5) - 2) * 0.05m)):0.0}"
                        )
                    )
            )
            .Criteria([.. criteria]);

    [Fact]
    public void A_share_of_changed_sides_gives_the_smallest_number_with_the_power()
    {
        var more = SmallStudy
            .Of(
                [6],
                Enumerable
                    .Range(0, 40)
                    .Select(i =>
                        i < 1 ? "38.0 | 42.0"
                        : i < 30 ? "38.0 | 38.2"
                        : "44.0 | 44.2"
                    )
            )
            .Criteria(
                new ReclassificationCriterion("sides", [new("aPTT", null)], [], 0.95, 10, [40])
            )
            .Cell()
            .MoreSpecimens;
        double PowerOf(int n) => IndividualPower.Of(n, 39.0 / 40, 0.90, 0.95);

        Assert.Equal(new JudgedFigure(CriterionKind.Reclassification, "sides", 40), more?.Deciding);
        Assert.True(PowerOf(more!.Specimens!.Value) >= 0.80);
        Assert.True(PowerOf(more.Specimens.Value - 1) < 0.80);
    }

    [Fact]
    public void Too_many_changed_sides_are_unlikely_to_be_helped()
    {
        var more = SmallStudy
            .Of([6], Enumerable.Range(0, 20).Select(i => i < 4 ? "38.0 | 42.0" : "44.0 | 44.2"))
            .Criteria(
                new ReclassificationCriterion("sides", [new("aPTT", null)], [], 0.95, 10, [40])
            )
            .Cell()
            .MoreSpecimens;

        Assert.Equal(
            new MoreSpecimens(null, true)
            {
                Deciding = new(CriterionKind.Reclassification, "sides", 40),
            },
            more
        );
    }

    [Fact]
    public void Few_weak_positives_give_no_number_and_say_so()
    {
        var more = SmallStudy
            .Of([6], Enumerable.Repeat("30.0 | 30.2", 40))
            .Criteria(
                new ClassificationCriterion("classes", [new("aPTT", null)], [], 0.95, 85, [40], 5)
            )
            .Cell()
            .MoreSpecimens;

        Assert.True(more is { Specimens: null, UnlikelyToHelp: true });
        Assert.Equal(new TooFewWeakPositivesReason(0, 5), more.Beside[0]);
    }

    [Fact]
    public void A_predicted_change_gives_the_smallest_number_with_the_power()
    {
        var cell = Scattered(
                3,
                new DecisionLevelCriterion("levels", [new("aPTT", "bias")], [], 0.90, [50])
            )
            .Cell();
        var level = cell.Criteria.OfType<DecisionLevelResult>().Single().Levels[0];
        var change = level.Change.Value!;
        double PowerOf(int n) =>
            change.DecidedBy != IntervalSource.Specimens
                ? EquivalencePower.Of(
                    n / 2,
                    change.Bias,
                    change.StandardError * Math.Sqrt(10),
                    -3.75,
                    3.75,
                    0.90
                )
                : EquivalencePower.Of(
                    n,
                    change.Bias,
                    change.StandardError * Math.Sqrt(20),
                    -3.75,
                    3.75,
                    0.90
                );

        var beside = level.Beside.Value!;
        double PowerOfBoth(int n) =>
            Math.Min(
                PowerOf(n),
                EquivalencePower.Of(
                    n,
                    beside.Percent,
                    (beside.UpperPercent - beside.LowerPercent) / 2 / 1.6448536 * Math.Sqrt(20),
                    -7.5,
                    7.5,
                    0.90
                )
            );
        Assert.Equal("interval-reaches-limit", level.Reason.Name());
        var specimens = Assert.IsType<int>(cell.MoreSpecimens?.Specimens);
        Assert.True(specimens > 20, $"{specimens}");
        Assert.True(PowerOfBoth(specimens) >= 0.80 && PowerOfBoth(specimens - 1) < 0.80);
    }

    [Fact]
    public void A_drift_gives_the_smallest_number_with_the_power()
    {
        var cell = Scattered(
                5,
                new DriftCriterion("drift", [new("aPTT", "bias")], [], 0.90, [DriftShape.Linear])
            )
            .Cell();
        var shape = cell.Criteria.OfType<DriftCriterionResult>().Single().Shapes[0];
        var slopes = shape.Slope.Value!;
        var hours = 6 - slopes.BaselineDelayHours;
        double PowerOf(int n) =>
            LesserPower(n, shape.Predicted!.Change, slopes.MeanSlope, hours, 7.5);

        Assert.Equal("interval-reaches-limit", shape.Reason.Name());
        var specimens = Assert.IsType<int>(cell.MoreSpecimens?.Specimens);
        Assert.True(PowerOf(specimens) >= 0.80 && PowerOf(specimens - 1) < 0.80);
    }

    /// <summary>Pilots of twenty whose new studies, drawn as what was observed, meet both criteria about as often as stated.</summary>
    [Fact]
    public void A_new_study_with_the_number_concludes_about_as_often_as_stated()
    {
        const int wanted = 12;
        const int follow = 60;
        var study = SimulatedStudy.Of(
            [SmallProtocol.Bias, SmallProtocol.Each],
            SmallProtocol.MeanCriterion,
            SmallProtocol.EachCriterion
        );
        var random = new SeededRandom(20261129);
        var (pilots, met) = (0, 0);
        while (pilots < wanted)
        {
            var pilot = Drawn(20, 5.5, 4.5, random);
            var criteria = study.Criteria(pilot);
            if (
                SpecimensStillNeeded.Of(Conclusion.Inconclusive, criteria, [], 20, 10)
                    is not { Specimens: { } specimens }
                || criteria.OfType<BiasResult>().Single().Mean.Value is not { } mean
            )
            {
                continue;
            }

            pilots++;
            var sd = mean.BySpecimen.StandardDeviation;
            met += Enumerable
                .Range(0, follow)
                .Count(_ => study.Supports(Drawn(specimens, mean.Mean, sd, random)));
        }

        Assert.InRange(met / (double)(wanted * follow), 0.70, 0.92);

        static ImmutableArray<PairRecord> Drawn(
            int specimens,
            double percent,
            double sd,
            SeededRandom random
        )
        {
            var collection = Collection.On(specimens / 2, specimens);
            return
            [
                .. Enumerable
                    .Range(0, specimens)
                    .Select(i =>
                        SimulatedPairs.Compared(
                            i,
                            40,
                            40 * (1 + ((percent + (sd * random.NextNormal())) / 100)),
                            collection
                        )
                    ),
            ];
        }
    }
}
