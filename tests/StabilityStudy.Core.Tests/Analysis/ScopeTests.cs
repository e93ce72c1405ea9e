using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Scope;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Analysis;

/// <summary>A study over several instruments or sites states a window for all of them only where each supports it by itself.</summary>
public sealed class ScopeTests
{
    private const int Each = 40;

    [Fact]
    public void One_instrument_has_no_parts() =>
        Assert.Empty(SmallStudy.Quiet(Each).Sequence().Parts);

    [Fact]
    public void Two_instruments_that_each_support_it_support_it_for_both()
    {
        var sequence = Two(slope: 0).Sequence();

        Assert.Equal(Conclusion.Supported, sequence.Cells[0].Conclusion);
        Assert.Equal(["AN1", "AN2"], sequence.Parts.Select(part => part.Code));
        Assert.All(sequence.Parts, part => Assert.Equal(sequence.Window!.Time, part.Window!.Time));
        Assert.All(sequence.Parts, part => Assert.Equal(Each, part.TimePoints[0].Counted));
    }

    [Fact]
    public void A_change_on_one_of_them_that_the_mean_of_all_hides_is_not_supported_for_both()
    {
        var study = Two(slope: 0.10m);
        var sequence = study.Sequence();
        var together = study.Rows(row => row with { Instrument = "AN1" }).Sequence();

        // Of all 80 specimens the mean changes by 5 %, and all are within 15 %.
        Assert.Equal(Conclusion.Supported, together.Cells[0].Conclusion);
        Assert.Equal(Conclusion.Inconclusive, sequence.Cells[0].Conclusion);
        Assert.Null(sequence.Window);
        var doubt = Assert.IsType<PartsNotSupportedReason>(Assert.Single(sequence.Cells[0].Doubts));
        Assert.Equal([new PartStanding("AN2", Conclusion.NotSupported)], doubt.Parts);
        Assert.NotNull(sequence.Parts[0].Window);
        Assert.Null(sequence.Parts[1].Window);
        Assert.Null(sequence.Cells[0].MoreSpecimens);
    }

    [Fact]
    public void A_few_specimens_on_a_second_instrument_leave_the_window_to_the_first()
    {
        var sequence = On(SmallStudy.Quiet(Each + 3), i => i < Each ? "AN1" : "AN2").Sequence();

        Assert.Null(sequence.Window);
        Assert.NotNull(sequence.Parts[0].Window);
        Assert.Equal(3, sequence.Parts[1].TimePoints[0].Received);
        Assert.NotEqual(Conclusion.Supported, sequence.Parts[1].TimePoints[0].Conclusion);
    }

    [Fact]
    public void Specimens_without_an_instrument_are_a_part_of_their_own() =>
        Assert.Equal(
            ["", "AN1"],
            On(SmallStudy.Quiet(Each), i => i % 10 == 0 ? "" : "AN1")
                .Sequence()
                .Parts.Select(part => part.Code)
        );

    [Fact]
    public void Instruments_of_one_site_are_one_part_where_sites_are_planned()
    {
        var study = On(SmallStudy.Quiet(3 * Each), i => $"AN{1 + (i / 10 % 3)}");
        study = new(
            study.Inputs with
            {
                Facts = study.Inputs.Facts with
                {
                    Instruments =
                    [
                        new("AN1", "one") { Site = "North" },
                        new("AN2", "two") { Site = "North" },
                        new("AN3", "three") { Site = "South" },
                    ],
                },
            }
        );

        var parts = study.Protocol(Per(PlannedPer.Site, 2 * Each)).Sequence().Parts;

        Assert.Equal(["North", "South"], parts.Select(part => part.Code));
        Assert.All(parts, part => Assert.Equal(ScopeKind.Site, part.Kind));
        Assert.Equal([2 * Each, Each], parts.Select(part => part.TimePoints[0].Received));
    }

    [Fact]
    public void The_planned_number_holds_for_each_instrument_where_the_protocol_says_so()
    {
        var group = Two(slope: 0).Protocol(Per(PlannedPer.Group, Each)).Sequence();
        var instrument = Two(slope: 0).Protocol(Per(PlannedPer.Instrument, Each)).Sequence();

        Assert.Equal(Each, group.Cells[0].Disposition.Count(PairStatus.BeyondPlanned));
        Assert.Equal(0, instrument.Cells[0].Disposition.Count(PairStatus.BeyondPlanned));
        Assert.Equal(
            new CollectionStanding(2 * Each, 2 * Each, CollectionState.Complete),
            instrument.Collection
        );
        Assert.Equal(Conclusion.Supported, instrument.Cells[0].Conclusion);
    }

    [Fact]
    public void All_are_as_far_as_the_one_that_is_least_far()
    {
        var sequence = On(SmallStudy.Quiet(Each + 20), i => i < Each ? "AN1" : "AN2")
            .Protocol(Per(PlannedPer.Instrument, Each))
            .Collecting()
            .Sequence();

        Assert.Equal(CollectionState.Incomplete, sequence.Collection.State);
        Assert.All(sequence.Parts, part => Assert.Null(part.Window));
    }

    [Fact]
    public void An_amendment_that_plans_the_number_for_each_instrument_adds_no_places()
    {
        var study = Two(slope: 0).Protocol(Per(PlannedPer.Instrument, Each));
        var before = Per(PlannedPer.Group, Each)(study.Inputs.Protocol);
        var cell = new SmallStudy(
            study.Inputs with
            {
                Locks =
                [
                    new(1, "", new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero), "LS1", null)
                    {
                        Protocol = before,
                    },
                    new(
                        2,
                        "",
                        new DateTimeOffset(2026, 1, 2, 0, 0, 0, TimeSpan.Zero),
                        "LS1",
                        "two instruments"
                    )
                    {
                        Protocol = study.Inputs.Protocol,
                    },
                ],
            }
        ).Cell();

        Assert.Equal(Each, cell.Disposition.Count(PairStatus.BeyondPlanned));
    }

    [Fact]
    public void Several_instruments_that_were_planned_as_one_are_an_attention()
    {
        Assert.Contains(
            Two(slope: 0).Analyze().Queries,
            query => query.Code == "several-instruments"
        );
        Assert.DoesNotContain(
            Two(slope: 0).Protocol(Per(PlannedPer.Instrument, Each)).Analyze().Queries,
            query => query.Code == "several-instruments"
        );
    }

    [Fact]
    public void An_instrument_without_a_site_stops_where_sites_are_planned()
    {
        var study = SmallStudy.Quiet(Each).Protocol(Per(PlannedPer.Site, Each));
        var inputs = study.Inputs with
        {
            Facts = study.Inputs.Facts with { Instruments = [new("AN1", "one")] },
        };

        Assert.Contains(InputQueries.Of(inputs), query => query.Code == "site-not-stated");
    }

    private static Func<StudyProtocol, StudyProtocol> Per(PlannedPer per, int specimens) =>
        protocol =>
            protocol with
            {
                SpecimensPer = per,
                Groups = [.. protocol.Groups.Select(group => group with { Specimens = specimens })],
            };

    /// <summary>Forty specimens on each of two instruments; on the second every delayed result is raised by a share.</summary>
    private static SmallStudy Two(decimal slope)
    {
        var study = On(SmallStudy.Quiet(2 * Each), i => i / 10 % 2 == 0 ? "AN1" : "AN2");
        return study.Rows(row =>
            row is { Instrument: "AN2", Occasion.IsBaseline: false, Result: MeasuredResult result }
                ? row with
                {
                    Result = SmallRows.Reported(
                        SmallRows.Text(decimal.Round(result.Value * (1 + slope), 1))
                    ),
                }
                : row
        );
    }

    /// <summary>Both results of each specimen on an instrument, in a run of that instrument.</summary>
    private static SmallStudy On(SmallStudy study, Func<int, string> instrument) =>
        study.Rows(row =>
        {
            var code = instrument(int.Parse(row.Specimen[1..], CultureInfo.InvariantCulture));
            return row with { Instrument = code, Run = row.Run + code };
        });
}
