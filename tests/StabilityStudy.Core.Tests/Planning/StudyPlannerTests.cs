using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Core.Tests.Planning;

[Trait("lane", "slow")]
public sealed class StudyPlannerTests
{
    private const int Studies = 2000;

    /// <summary>The limits are 7.5 % for the mean and 15 % for each; forty specimens, each on a day of its own, so that nothing is shared.</summary>
    private static StudyProtocol Protocol(
        int specimens,
        double expected,
        double sd,
        decimal cv = 0.001m,
        params int[] hours
    )
    {
        var protocol = SmallProtocol.For(specimens, hours is [] ? [6] : hours);
        return protocol with
        {
            PlannedDays = specimens,
            Analytes =
            [
                protocol.Analytes[0] with
                {
                    Decimals = 3,
                    BetweenRunCvPercent = cv,
                    // So narrow that no doubt of a change that depends on the level arises.
                    PlannedRanges = [new("none", 45, 60)],
                    ExpectedChanges =
                    [
                        .. protocol.TimePoints.Select(point => new ExpectedChange(
                            "none",
                            point,
                            (decimal)expected,
                            "invented",
                            null,
                            ChanceOfSupport.Doubtful
                        )
                        {
                            SpecimenSdPercent = (decimal)sd,
                        }),
                    ],
                },
            ],
        };
    }

    private static StudyPlan Plan(StudyProtocol protocol, PlanRequest? request = null) =>
        StudyPlanner.Of(
            protocol,
            (request ?? new PlanRequest(Studies, 1)) with
            {
                ByCriterion = true,
            }
        );

    /// <summary>Where nothing is shared the share has an exact power, and the simulated one agrees within three standard errors; so does that of the mean with the studies that skewness alone costs, of which the formula knows nothing.</summary>
    [Theory]
    [InlineData(20, 6, 3)]
    [InlineData(40, 6, 3)]
    [InlineData(40, 4, 6)]
    [InlineData(50, 8, 6)]
    public void Simulated_chances_agree_with_the_exact_ones(int specimens, double mean, double sd)
    {
        var all = Plan(Protocol(specimens, mean, sd), new(Studies, 1))
            .Rows[0]
            .TimePoints[0]
            .WithAll!;
        var exactMean = EquivalencePower.Of(specimens, mean, sd, -7.5, 7.5, 0.90);
        var inside = Normal.Cdf((15 - mean) / sd) - Normal.Cdf((-15 - mean) / sd);
        var exactShare = IndividualPower.Of(specimens, inside, 0.85, 0.95);

        var (ofMean, ofShare) = (all.ByCriterion[0], all.ByCriterion[1]);

        // The spread stated for single changes has the CV of both results in it.
        Assert.Equal(exactMean, ofMean.Exact!.Value, 3);
        Assert.Equal(exactShare, ofShare.Exact!.Value, 3);
        var skewness =
            all.Costs.FirstOrDefault(item => item.Cost == ChanceCost.Skewness)?.Rate ?? 0;
        Assert.InRange(
            ofMean.Simulated.Probability + skewness,
            exactMean - ThreeErrors(exactMean, ofMean.Simulated.Studies),
            exactMean + ThreeErrors(exactMean, ofMean.Simulated.Studies)
        );
        Assert.InRange(
            ofShare.Simulated.Probability,
            exactShare - ThreeErrors(exactShare, ofShare.Simulated.Studies),
            exactShare + ThreeErrors(exactShare, ofShare.Simulated.Studies)
        );
    }

    /// <summary>The plan and the power that analyze --simulate computes are drawn and judged by the same code.</summary>
    [Fact]
    public void Agrees_with_the_operating_characteristic_on_data_of_the_same_kind()
    {
        var protocol = Protocol(40, 5, 3, cv: 2) with { PlannedDays = 10 };
        var point = Plan(protocol, new(1000, 9)).Rows[0].TimePoints[0].WithAll!.Together;

        var curve = CriterionSetCharacteristic.Curve(
            protocol,
            "aPTT",
            "none",
            SmallProtocol.At(6),
            new SupposedResults(
                SupposedConduct.Even(40, 10),
                SameRun: false,
                Math.Sqrt(45 * 60),
                Math.Log(60 / 45.0) / 3.29,
                3,
                Math.Sqrt(2),
                Math.Sqrt(2)
            ),
            [5],
            point.Studies,
            9
        )[0];

        Assert.Equal(curve.Accepted, point.Accepted);
    }

    /// <summary>Smallest numbers for 0 to 4 failures: NIST/SEMATECH style tables of zero-failure plans extended; 19/30/40/50/59, 29/46/61/76/89 and 59/93/124/153/181 were computed in another language.</summary>
    [Theory]
    [InlineData(85, 19, 30, 40, 50, 59)]
    [InlineData(90, 29, 46, 61, 76, 89)]
    [InlineData(95, 59, 93, 124, 153, 181)]
    public void Allowed_failures_are_those_of_the_tables(int share, params int[] numbers)
    {
        for (var allowed = 0; allowed < numbers.Length; allowed++)
        {
            foreach (
                var (specimens, most) in new[]
                {
                    (numbers[allowed], allowed),
                    (numbers[allowed] - 1, allowed - 1),
                }
            )
            {
                var protocol = SmallProtocol.For(specimens, 6) with
                {
                    Criteria = [SmallProtocol.EachCriterion with { SharePercentMinimum = share }],
                };

                var found = Assert.Single(Plan(protocol, new(1, 1)).Rows[0].Shares);

                Assert.Equal(most < 0 ? null : most, found.Allowed);
                Assert.Equal(
                    numbers.First(number => number > specimens || number == numbers[^1]),
                    Math.Min(found.NextSpecimens, numbers[^1])
                );
            }
        }
    }

    [Fact]
    public void The_same_request_gives_the_same_plan_and_another_seed_another_one()
    {
        var protocol = Protocol(30, 6, 4, cv: 2) with { PlannedDays = 6 };
        double Chance(ulong seed) =>
            Plan(protocol, new(500, seed)).Rows[0].TimePoints[0].WithAll!.Together.Probability;

        Assert.Equal(Chance(1), Chance(1));
        Assert.NotEqual(Chance(1), Chance(2));
    }

    /// <summary>A later time together with every earlier one is never more likely than the earlier ones, and the first is its own chance.</summary>
    [Fact]
    public void Chances_of_the_sequence_fall_and_begin_with_the_first_time()
    {
        var row = Plan(
            Protocol(40, 6, 3, 2, 6, 8, 12) with
            {
                PlannedDays = 10,
            },
            new PlanRequest(500, 1) { Joint = true }
        ).Rows[0];

        var all = row.Joint.Where(item => item.ShareOfExpected == 1).ToArray();
        Assert.Equal(3, all.Length);
        Assert.True(all[0].Chance.Probability >= all[1].Chance.Probability);
        Assert.True(all[1].Chance.Probability >= all[2].Chance.Probability);
        Assert.True(all[2].Chance.Probability > 0);
        Assert.InRange(
            row.TimePoints[0].WithAll!.Together.Probability,
            all[0].Chance.Lower - 0.05,
            all[0].Chance.Upper + 0.05
        );
    }

    [Fact]
    public void What_costs_the_chance_is_found()
    {
        // A mean change near its limit; single specimens far inside theirs.
        Assert.Equal(ChanceCost.Change, Costs(Protocol(40, 7.2, 2))[0].Cost);
        // Wide changes around none: the share fails first.
        Assert.Equal(ChanceCost.Share, Costs(Protocol(40, 0, 9))[0].Cost);
        // Runs that differ by far more than specimens do.
        Assert.Equal(
            ChanceCost.Days,
            Costs(Protocol(40, 5, 0.1, cv: 3) with { PlannedDays = 5 })[0].Cost
        );
        // Nobody below the level.
        var narrow = Protocol(40, 0, 2);
        Assert.Equal(
            ChanceCost.Range,
            Costs(
                narrow with
                {
                    Analytes =
                    [
                        narrow.Analytes[0] with
                        {
                            PlannedRanges = [new("none", 70, 90)],
                            DecisionLevels = [40],
                        },
                    ],
                    Criteria =
                    [
                        new DecisionLevelCriterion("level", [new("aPTT", "bias")], [], 0.90, []),
                    ],
                }
            )[0].Cost
        );

        static ImmutableArray<CostRate> Costs(StudyProtocol protocol) =>
            Plan(protocol, new(200, 1)).Rows[0].TimePoints[0].WithAll!.Costs;
    }

    [Fact]
    public void Low_chances_are_told_apart()
    {
        LowChanceKind? Kind(StudyProtocol protocol) =>
            LowChances.Of(Plan(protocol, new(250, 1))) is [var only, ..] ? only.Kind : null;

        Assert.Null(Kind(Protocol(40, 2, 2)));
        Assert.Equal(LowChanceKind.OutOfReachAsPublished, Kind(Protocol(40, 12, 2)));
        Assert.Equal(LowChanceKind.OutOfReachWithoutChange, Kind(Protocol(15, 0, 2)));
        // 11 % outside where 15 % are allowed: seldom shown by forty.
        Assert.Equal(LowChanceKind.LowWithoutChange, Kind(Protocol(40, 0, 8.2)));
    }

    [Fact]
    public void More_specimens_raise_a_chance_and_the_smallest_number_reaches_it()
    {
        var protocol = Protocol(20, 6, 3, cv: 1) with { PlannedDays = 10 };

        var detail = Plan(protocol, new PlanRequest(1500, 1) { Detail = true }).Detail!;

        Assert.Equal("6 h", detail.Key.TimePoint.ToString());
        var doubled = detail.Alternatives.Single(item =>
            item is { What: AlternativeKind.Numbers, Specimens: 40, Days: 20 }
        );
        Assert.True(
            doubled.Chance.Probability > detail.Chance.Together.Probability + 0.05,
            $"{doubled} {detail.Chance.Together}"
        );
        Assert.NotNull(detail.For80);
        Assert.True(detail.For90 >= detail.For80, $"{detail.For80} {detail.For90}");
        var reached = Plan(
            Protocol(detail.For80.Value, 6, 3, cv: 1) with
            {
                PlannedDays = detail.For80.Value / 2,
            },
            new(1000, 77)
        );
        Assert.True(
            reached.Rows[0].TimePoints[0].WithAll!.Together.Upper >= 0.80,
            $"{detail.For80} {reached.Rows[0].TimePoints[0].WithAll!.Together}"
        );
    }

    [Fact]
    public void Tubes_spares_and_blood_are_counted()
    {
        var protocol = SmallProtocol.For(40, 6, 8, 12);
        GroupMaterial Of(StudyProtocol of) =>
            Plan(of, new PlanRequest(1, 1) { MillilitersOfTube = 2.7m }).Material[0];

        var tubes = Of(protocol);
        Assert.Equal(
            (40, 160, 40, 13.5m),
            (tubes.Specimens, tubes.Tubes, tubes.Spares, tubes.MillilitersOfSpecimen)
        );
        // Five portions with the spare are the plasma of three tubes.
        var portions = Of(protocol with { TubePlan = TubePlan.Aliquots });
        Assert.Equal(
            (4, 3, 8.1m),
            (portions.PortionsOfSpecimen, portions.TubesOfSpecimen, portions.MillilitersOfSpecimen)
        );
        Assert.Equal(1, Of(protocol with { TubePlan = TubePlan.OneTubeRetested }).TubesOfSpecimen);
        Assert.Equal(80, Of(protocol with { Instruments = ["A", "B"] }).Specimens);
    }

    [Fact]
    public void A_pilot_gives_the_spread_and_not_the_change()
    {
        // Changes of 0 and 8 % in turn: an SD of 4.2 % with twenty.
        ImmutableArray<PilotPair> pairs =
        [
            .. Enumerable
                .Range(0, 20)
                .Select(i => new PilotPair("aPTT", null, null, 50, i % 2 == 0 ? 50 : 54)),
        ];
        var plan = Plan(Protocol(40, 5, 1, cv: 1), new PlanRequest(1, 1) { Pilot = pairs });
        var few = Plan(
            Protocol(40, 5, 1, cv: 1),
            new PlanRequest(1, 1) { Pilot = pairs[..(PilotPair.Fewest - 1)] }
        );

        var expected = plan.Rows[0].TimePoints[0].Expected;
        Assert.Equal(
            (5, SdOrigin.Pilot, 20),
            (expected.Percent, expected.SdFrom, expected.PilotPairs)
        );
        Assert.Equal(Math.Sqrt((16 * 20.0 / 19) - 1), expected.SpecimenSdPercent, 9);
        Assert.Equal(SdOrigin.Protocol, few.Rows[0].TimePoints[0].Expected.SdFrom);
    }

    /// <summary>The curve that is published for the aPTT without anticoagulant: 6.1 % at 6 h and 10 % at 24 h since collection.</summary>
    [Fact]
    public void Without_a_stated_change_the_published_curve_stands()
    {
        var protocol = SmallProtocol.For(40, 6, 24);
        var sinceCollection = Plan(
            protocol with
            {
                ChangeSince = ChangeOrigin.Collection,
            },
            new(1, 1)
        ).Rows[0];
        var sinceBaseline = Plan(protocol, new(1, 1)).Rows[0];

        Assert.Equal(6.1, sinceCollection.TimePoints[0].Expected.Percent!.Value, 9);
        Assert.InRange(sinceCollection.TimePoints[1].Expected.Percent!.Value, 9.9, 10.2);
        // 1.27 % of it come before a baseline at 30 min.
        Assert.Equal(
            100 * ((1.061 / (1 + (0.061 * Math.Log(1.5) / Math.Log(7)))) - 1),
            sinceBaseline.TimePoints[0].Expected.Percent!.Value,
            9
        );
        Assert.True(sinceBaseline.TimePoints[0].RangeIsSupposed);
        Assert.Equal(DaysOrigin.Supposed, Plan(protocol, new(1, 1)).DaysFrom);
    }

    [Fact]
    public void What_cannot_be_simulated_says_why()
    {
        PlanGap? Gap(StudyProtocol protocol) => Plan(protocol, new(1, 1)).Rows[0].TimePoints[0].Gap;
        var usual = Protocol(20, 0, 3);
        StudyProtocol With(Func<Analyte, Analyte> change) =>
            usual with
            {
                Analytes = [change(usual.Analytes[0])],
            };

        Assert.Null(Gap(usual));
        Assert.Equal(
            PlanGap.NoImprecision,
            Gap(With(item => item with { BetweenRunCvPercent = null }))
        );
        Assert.Equal(PlanGap.TooWide, Gap(With(item => item with { BetweenRunCvPercent = 60 })));
        Assert.Equal(
            PlanGap.NoBaselines,
            Gap(
                With(item =>
                    item with
                    {
                        PlannedRanges = [],
                        DecisionLevels = [],
                        MeasuringInterval = null,
                    }
                )
            )
        );
        Assert.Equal(PlanGap.TooMany, Gap(Protocol(SupposedFromPlan.MostSpecimens + 1, 0, 3)));
    }

    private static double ThreeErrors(double probability, int studies) =>
        (3 * Math.Sqrt(probability * (1 - probability) / studies)) + (1.0 / studies);
}
