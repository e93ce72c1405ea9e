using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Pairing;

public sealed class StorageRuleTests
{
    private static readonly SmallStudy s_study = SmallStudy.Of([6], ["30.0 | 30.5", "31.0 | 31.2"]);

    private static PairStatus First(SmallStudy study) => study.Cell().Pairs[0].Status;

    private static SmallStudy Spun(SmallStudy study, int minutesBeforeTest) =>
        study.Tube(
            0,
            6,
            tube =>
                tube with
                {
                    SpunAt = tube.CollectedAt.AddHours(6).AddMinutes(-minutesBeforeTest),
                }
        );

    [Theory]
    [InlineData(60, PairStatus.Compared)]
    [InlineData(61, PairStatus.OutsideTiming)]
    [InlineData(330, PairStatus.OutsideTiming)]
    [InlineData(-1, PairStatus.OutsideTiming)]
    public void Whole_blood_is_spun_shortly_before_its_test(int minutes, PairStatus expected) =>
        Assert.Equal(expected, First(Spun(s_study, minutes)));

    [Fact]
    public void Whole_blood_with_an_unrecorded_time_of_spinning_does_not_count() =>
        Assert.Equal(
            PairStatus.OutsideTiming,
            First(s_study.Tube(0, 6, tube => tube with { SpunAt = null }))
        );

    [Fact]
    public void Without_a_rule_on_spinning_nothing_counts_as_whole_blood() =>
        Assert.Equal(
            PairStatus.OutsideTiming,
            First(s_study.Storage(storage => storage with { SpinToTest = null }))
        );

    [Theory]
    [InlineData(TubePlan.TubePerTimePoint)]
    [InlineData(TubePlan.OneTubeRetested)]
    public void A_whole_blood_tube_tested_twice_does_not_count(TubePlan plan)
    {
        var study = s_study
            .Protocol(protocol => protocol with { TubePlan = plan })
            .Row(0, 0, row => row with { Tube = "S000-6" });

        Assert.Equal(PairStatus.OutsideTiming, First(study));
    }

    [Fact]
    public void A_tube_tested_at_another_time_for_another_analyte_was_opened_then()
    {
        var study = s_study.Again(
            0,
            6,
            row => row with { Analyte = "PT", Occasion = new TestOccasion(null) }
        );

        Assert.Equal(PairStatus.OutsideTiming, First(study));
    }

    [Fact]
    public void Plasma_may_be_tested_twice_when_so_planned()
    {
        var study = Plasma(StorageState.SpunOnCells)
            .Protocol(protocol => protocol with { TubePlan = TubePlan.OneTubeRetested })
            .Row(0, 0, row => row with { Tube = "S000-6" });

        Assert.Equal(PairStatus.Compared, First(study));
    }

    [Theory]
    [InlineData(60, PairStatus.Compared)]
    [InlineData(61, PairStatus.OutsideTiming)]
    public void Plasma_on_cells_was_spun_as_soon_as_the_baseline_had_to_be(
        int minutes,
        PairStatus expected
    ) =>
        Assert.Equal(
            expected,
            First(
                Plasma(StorageState.SpunOnCells)
                    .Tube(0, 6, tube => tube with { SpunAt = tube.CollectedAt.AddMinutes(minutes) })
            )
        );

    [Fact]
    public void The_rule_of_a_group_on_early_spinning_binds_stored_plasma_too()
    {
        var study = Plasma(StorageState.SpunOnCells)
            .Protocol(protocol =>
                protocol with
                {
                    Groups =
                    [
                        protocol.Groups[0] with
                        {
                            BaselineSpunWithin = TimeSpan.FromMinutes(20),
                        },
                    ],
                }
            );

        Assert.Equal(PairStatus.OutsideTiming, First(study));
    }

    [Fact]
    public void Separated_plasma_needs_the_time_at_which_it_was_taken_off()
    {
        var study = Plasma(StorageState.SeparatedPlasma);

        Assert.Equal(PairStatus.Compared, First(study));
        Assert.Equal(
            PairStatus.OutsideTiming,
            First(study.Tube(0, 6, tube => tube with { SeparatedAt = null }))
        );
    }

    [Fact]
    public void Frozen_plasma_needs_times_of_freezing_and_thawing()
    {
        var study = Plasma(StorageState.SeparatedPlasma)
            .Storage(storage => storage with { LowestCelsius = -25, HighestCelsius = -18 });

        Assert.Equal(PairStatus.OutsideTiming, First(study));
        Assert.Equal(
            PairStatus.Compared,
            First(
                study.Tubes(tube =>
                    tube with
                    {
                        FrozenAt = tube.CollectedAt.AddHours(1),
                        ThawedAt = tube.CollectedAt.AddHours(5),
                    }
                )
            )
        );
    }

    [Fact]
    public void A_result_of_a_tube_that_waited_otherwise_is_never_taken()
    {
        var refrigerated = s_study.Inputs.Tubes[1] with { Tube = "S000-cold", Storage = "cold" };
        var study = new SmallStudy(
            s_study.Inputs with
            {
                Tubes = s_study.Inputs.Tubes.Add(refrigerated),
            }
        ).Again(
            0,
            6,
            row =>
                row with
                {
                    Tube = "S000-cold",
                    Result = SmallRows.Reported("45.0"),
                    TestedAt = row.TestedAt?.AddMinutes(-5),
                }
        );

        Assert.Equal("30.5", study.Cell().Pairs[0].Delayed!.Result.Text);
    }

    [Fact]
    public void Storages_of_one_draw_may_share_its_baseline()
    {
        var cold = s_study.Inputs.Protocol.Storages[0] with { Id = "cold" };
        var study = s_study
            .Protocol(protocol => protocol with { Storages = protocol.Storages.Add(cold) })
            .Tube(0, 6, tube => tube with { Storage = "cold" });

        var pair = study.Analyze().Sequences[1].Cells[0].Pairs.Single();

        Assert.Equal(PairStatus.Compared, pair.Status);
        Assert.Equal("S000-0", pair.Baseline!.Tube);
    }

    private static SmallStudy Plasma(StorageState state) =>
        s_study
            .Storage(storage => storage with { State = state, SpinToTest = null })
            .Tubes(tube =>
                tube with
                {
                    SpunAt = tube.CollectedAt.AddMinutes(30),
                    SeparatedAt =
                        state == StorageState.SeparatedPlasma
                            ? tube.CollectedAt.AddMinutes(40)
                            : null,
                }
            );
}
