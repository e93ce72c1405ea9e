using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Pairing;

public sealed class PlanTests
{
    private static readonly SmallStudy s_study = SmallStudy.Of(
        [6, 8, 12],
        ["30.0 | 30.5 | 30.6 | 30.7", "31.0 | 31.2 | - | 31.3", "31.5 | 31.6 | - | -"]
    );

    private static PairStatus[] Statuses(SmallStudy study, int specimen) =>
        [.. study.Sequence().Cells.Select(cell => cell.Pairs[specimen].Status)];

    [Fact]
    public void An_analyte_may_have_fewer_time_points_than_the_protocol()
    {
        var study = s_study.Analyte(analyte =>
            analyte with
            {
                TimePoints = [SmallProtocol.At(12), SmallProtocol.At(6)],
            }
        );

        Assert.Equal(
            [SmallProtocol.At(6), SmallProtocol.At(12)],
            study.Sequence().Cells.Select(cell => cell.Key.TimePoint)
        );
        Assert.Contains(study.Analyze().Queries, query => query.Code == "result-not-planned");
    }

    [Fact]
    public void An_analyte_may_be_studied_in_some_groups_and_storages_only()
    {
        var study = s_study.Protocol(protocol =>
            protocol with
            {
                Groups = [.. protocol.Groups, protocol.Groups[0] with { Id = "ufh" }],
                Storages = [.. protocol.Storages, protocol.Storages[0] with { Id = "cold" }],
            }
        );

        Assert.Equal(4, study.Analyze().Sequences.Length);
        Assert.Equal(
            ["aPTT none cold", "aPTT ufh cold"],
            study
                .Analyte(analyte => analyte with { Storages = ["cold"] })
                .Analyze()
                .Sequences.Select(item => $"{item.Analyte} {item.Group} {item.Storage}")
        );
        Assert.Equal(
            ["aPTT ufh wb-rt", "aPTT ufh cold"],
            study
                .Analyte(analyte => analyte with { Groups = ["ufh"] })
                .Analyze()
                .Sequences.Select(item => $"{item.Analyte} {item.Group} {item.Storage}")
        );
    }

    [Fact]
    public void A_specimen_tested_at_as_many_times_as_planned_is_not_assigned_to_the_others()
    {
        var study = s_study.Protocol(protocol => protocol with { DelaysPerSpecimen = 2 });

        Assert.Equal(
            [PairStatus.Compared, PairStatus.NotAssigned, PairStatus.Compared],
            Statuses(study, 1)
        );
        var pair = study.Cell(8).Pairs[1];
        Assert.False(pair.CountsForAgreement);
        Assert.Equal(1, study.Cell(8).Disposition.Count(PairStatus.NotAssigned));
    }

    [Fact]
    public void A_specimen_tested_at_fewer_times_than_planned_has_missing_results()
    {
        var study = s_study.Protocol(protocol => protocol with { DelaysPerSpecimen = 2 });

        Assert.Equal(
            [PairStatus.Compared, PairStatus.NoDelayedResult, PairStatus.NoDelayedResult],
            Statuses(study, 2)
        );
        Assert.True(study.Cell(8).Pairs[2].CountsForAgreement);
    }

    [Fact]
    public void Repeat_draws_of_a_person_count_when_they_share_a_cluster()
    {
        var study = s_study
            .Tubes(tube => tube with { Subject = "P1" })
            .Protocol(protocol => protocol with { RepeatDraws = RepeatDraws.OneCluster });

        Assert.All(study.Cell().Pairs, pair => Assert.Equal(PairStatus.Compared, pair.Status));
    }

    [Fact]
    public void The_times_before_and_after_spinning_are_those_of_the_delayed_tube()
    {
        var pair = s_study.Cell().Pairs[0];

        Assert.Equal(new TimeSpan(5, 40, 0), pair.TimeBeforeSpinning);
        Assert.Equal(TimeSpan.FromMinutes(20), pair.TimeAfterSpinning);
        var unknown = s_study.Tube(0, 6, tube => tube with { SpunAt = null }).Cell().Pairs[0];
        Assert.Null(unknown.TimeBeforeSpinning);
        Assert.Null(unknown.TimeAfterSpinning);
    }

    [Fact]
    public void The_times_outside_the_freezer_are_those_of_the_delayed_portion()
    {
        static TubeRow Frozen(TubeRow tube) =>
            tube with
            {
                FrozenAt = tube.CollectedAt.AddMinutes(70),
                ThawedAt = tube.CollectedAt.AddHours(6).AddMinutes(-15),
            };

        var frozen = s_study.Tube(0, 6, Frozen).Cell().Pairs[0].Frozen;

        Assert.Equal(TimeSpan.FromMinutes(70), frozen?.BeforeFreezing);
        Assert.Equal(TimeSpan.FromMinutes(15), frozen?.AfterThawing);
        Assert.Null(s_study.Cell().Pairs[0].Frozen);
        Assert.Null(
            s_study.Tube(0, 6, tube => Frozen(tube) with { ThawedAt = null }).Cell().Pairs[0].Frozen
        );
    }

    [Fact]
    public void Categories_are_compared_and_have_no_numbers()
    {
        var pair = new PairRecord(
            new("S", "P", new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero)),
            PairStatus.Compared,
            "",
            Category("negative", 0),
            Category("positive", 1),
            false
        );

        Assert.True(pair.CountsForAgreement);
        Assert.Null(pair.ChangePercent);
        Assert.Throws<InvalidOperationException>(() => pair.Values());
    }

    private static Measurement Category(string text, int category) =>
        new("T", new CategoryResult(text, category), null, null, TestConditions.OfRun(""), null);
}
