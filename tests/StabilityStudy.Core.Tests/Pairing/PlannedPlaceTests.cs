using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Core.Tests.Pairing;

/// <summary>At most the planned number counts, in the order of collection; a reserve fills only a place that stayed free for a reason that says nothing of the change.</summary>
public sealed class PlannedPlaceTests
{
    private static readonly SmallStudy s_study = SmallStudy.Quiet(12, 6, 8);

    [Fact]
    public void Specimens_collected_after_the_planned_number_are_shown_and_not_counted()
    {
        var cell = Planned(s_study, 10).Cell();

        // S010 and S011 are of the first two days again, so the last by collection are those of the tenth.
        Assert.Equal(["S008", "S009"], Beyond(cell));
        Assert.Equal(10, cell.Estimates.Compared);
        Assert.Equal(12, cell.Disposition.Received);
        Assert.All(
            cell.Pairs.Where(pair => pair.Status == PairStatus.BeyondPlanned),
            pair => Assert.False(pair.CountsForAgreement || pair.IsLeftOut)
        );
    }

    [Fact]
    public void Specimens_of_one_time_take_places_in_the_order_of_their_codes()
    {
        var at = new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
        var pairs = new[] { "S3", "S1", "S2" }
            .Select(code => new PairRecord(
                new(code, code, at),
                PairStatus.Compared,
                "",
                null,
                null,
                false
            )
            {
                HasValidBaseline = true,
            })
            .ToImmutableArray();

        Assert.Equal(
            [PairStatus.BeyondPlanned, PairStatus.Compared, PairStatus.Compared],
            PlannedPlaces.Mark(pairs, _ => "", _ => 2).Select(pair => pair.Status)
        );
    }

    [Fact]
    public void A_reserve_fills_the_place_of_one_without_a_valid_baseline()
    {
        var cell = Planned(s_study.WithoutRow(0, 0), 10).Cell();

        Assert.Equal(["S009"], Beyond(cell));
        Assert.Equal(10, cell.Estimates.Compared);
    }

    [Fact]
    public void A_reserve_fills_the_place_of_a_second_specimen_of_a_person()
    {
        var study = s_study.Tubes(tube =>
            tube.Specimen == "S010" ? tube with { Subject = "PS000" } : tube
        );

        Assert.Equal(["S009"], Beyond(Planned(study, 10).Cell()));
    }

    [Fact]
    public void A_reserve_fills_the_place_of_a_tube_not_drawn_at_its_time_point_alone()
    {
        var study = Planned(s_study.WithoutRow(0, 6).NotDrawn(0, 6), 10);

        Assert.Equal(["S009"], Beyond(study.Cell()));
        Assert.Equal(["S008", "S009"], Beyond(study.Cell(8)));
    }

    [Theory]
    [InlineData("CLOT")]
    [InlineData("QNS")]
    [InlineData("NT")]
    [InlineData("NA")]
    public void Nothing_that_became_of_a_delayed_tube_makes_place_for_a_reserve(string result) =>
        Assert.Equal(["S008", "S009"], Beyond(Planned(s_study.Result(0, 6, result), 10).Cell()));

    [Fact]
    public void An_exclusion_makes_no_place_for_a_reserve() =>
        Assert.Equal(["S008", "S009"], Beyond(Planned(s_study.Exclude(0, 6), 10).Cell()));

    [Fact]
    public void A_tube_of_another_time_point_takes_its_place_where_it_was_not_assigned()
    {
        var study = Planned(
            s_study.WithoutRow(0, 8).Protocol(protocol => protocol with { DelaysPerSpecimen = 1 }),
            10
        );

        Assert.Equal(["S008", "S009"], Beyond(study.Cell(8)));
    }

    [Fact]
    public void Later_specimens_change_no_figure_and_no_conclusion()
    {
        var planned = SmallStudy.Quiet(40);
        var later = SmallStudy.Quiet(60);
        var kept = later.Inputs.Tubes.Where(tube => !IsLater(tube.Specimen)).ToImmutableArray();
        var alone = new SmallStudy(
            planned.Inputs with
            {
                Tubes = [.. kept],
                Results = [.. later.Inputs.Results.Where(row => !IsLater(row.Specimen))],
            }
        );
        var extended = Planned(
            later
                .Tubes(tube =>
                    IsLater(tube.Specimen)
                        ? tube with
                        {
                            CollectedAt = tube.CollectedAt.AddDays(30),
                            SpunAt = tube.SpunAt?.AddDays(30),
                        }
                        : tube
                )
                .Rows(row =>
                    IsLater(row.Specimen)
                        ? row with
                        {
                            TestedAt = row.TestedAt?.AddDays(30),
                            Result = row.Occasion.IsBaseline
                                ? row.Result
                                : SmallRows.Reported("60.0"),
                        }
                        : row
                ),
            40
        );

        var (before, after) = (alone.Cell(), extended.Cell());

        Assert.Equal(Conclusion.Supported, after.Conclusion);
        Assert.Equal(
            Ends(before.Estimates.MeanPercent.Value!),
            Ends(after.Estimates.MeanPercent.Value!)
        );
        Assert.Equal(20, after.Disposition.Count(PairStatus.BeyondPlanned));
        Assert.Equal(
            alone.Sequence().Drift.Curve.AsEnumerable(),
            extended.Sequence().Drift.Curve.AsEnumerable()
        );
    }

    private static (double, double, double) Ends(ClusteredMeanInterval mean) =>
        (mean.Mean, mean.Lower, mean.Upper);

    private static bool IsLater(string specimen) =>
        string.CompareOrdinal(specimen, SmallRows.Code(40)) >= 0;

    private static SmallStudy Planned(SmallStudy study, int specimens) =>
        study.Protocol(protocol =>
            protocol with
            {
                Groups = [.. protocol.Groups.Select(group => group with { Specimens = specimens })],
            }
        );

    private static IEnumerable<string> Beyond(Cell cell) =>
        cell
            .Pairs.Where(pair => pair.Status == PairStatus.BeyondPlanned)
            .Select(pair => pair.Specimen);
}
