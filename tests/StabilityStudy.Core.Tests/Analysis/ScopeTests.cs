using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Scope;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Analysis;

/// <summary>A study over several instruments states a window for all of them only where each supports it by itself.</summary>
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
    public void Specimens_without_an_instrument_take_every_window_of_the_others()
    {
        var sequence = On(SmallStudy.Quiet(Each + 10), i => i < 10 ? "" : "AN1").Sequence();

        Assert.Equal(["", "AN1"], sequence.Parts.Select(part => part.Code));
        Assert.All(sequence.Parts, part => Assert.Null(part.Window));
        Assert.Contains(
            new InstrumentNotRecordedReason(10),
            sequence.Parts[1].TimePoints[0].Doubts
        );
    }

    [Fact]
    public void Pairs_on_two_instruments_show_nothing_of_either_alone()
    {
        var sequence = Two(slope: 0)
            .Row(0, 6, row => row with { Instrument = "AN2", Run = "x" })
            .Sequence();

        Assert.All(sequence.Parts, part => Assert.Null(part.Window));
        Assert.Null(sequence.Window);
        var doubt = sequence.Parts[0].TimePoints[0].Doubts.OfType<TestedOnTwoInstrumentsReason>();
        Assert.Equal(["S000"], Assert.Single(doubt).Specimens);
    }

    [Fact]
    public void What_was_left_out_of_all_holds_for_each()
    {
        var study = Two(slope: 0);
        for (var i = 0; i < 30; i++)
        {
            study = study.WithoutRow(i, 0);
        }

        var sequence = study.Sequence();

        Assert.All(sequence.Parts, part => Assert.Null(part.Window));
    }

    [Fact]
    public void Who_looked_before_one_instrument_was_complete_cannot_fill_up_with_another()
    {
        var before = On(SmallStudy.Quiet(30), _ => "AN1")
            .Protocol(Planned(Each, "AN1", "AN2"))
            .Collecting();
        var after = On(SmallStudy.Quiet(30 + Each), i => i < 30 ? "AN1" : "AN2")
            .Protocol(Planned(Each, "AN1", "AN2"));

        var sequence = after
            .LookedAt(before, new DateTimeOffset(2026, 4, 1, 0, 0, 0, TimeSpan.Zero))
            .Sequence();

        Assert.All(sequence.Parts, part => Assert.Null(part.Window));
    }

    [Fact]
    public void The_planned_number_holds_for_each_instrument_where_the_protocol_says_so()
    {
        var group = Two(slope: 0).Protocol(Planned(Each)).Sequence();
        var instrument = Two(slope: 0).Protocol(Planned(Each, "AN1", "AN2")).Sequence();

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
            .Protocol(Planned(Each, "AN1", "AN2"))
            .Collecting()
            .Sequence();

        Assert.Equal(CollectionState.Incomplete, sequence.Collection.State);
        Assert.All(sequence.Parts, part => Assert.Null(part.Window));
    }

    [Fact]
    public void An_amendment_that_plans_the_number_for_each_instrument_adds_no_places()
    {
        var study = Two(slope: 0).Protocol(Planned(Each, "AN1", "AN2"));
        var before = Planned(Each)(study.Inputs.Protocol);
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
            Two(slope: 0).Protocol(Planned(Each, "AN1", "AN2")).Analyze().Queries,
            query => query.Code == "several-instruments"
        );
    }

    [Fact]
    public void Specimens_on_an_instrument_that_was_not_planned_are_not_counted()
    {
        var study = On(SmallStudy.Quiet(Each + 20), i => i < Each ? "AN1" : "AN3")
            .Protocol(Planned(Each, "AN1"));
        var cell = study.Cell();

        Assert.Equal(20, cell.Disposition.Count(PairStatus.BeyondPlanned));
        Assert.Contains(study.Analyze().Queries, query => query.Code == "instrument-not-planned");
    }

    [Fact]
    public void A_planned_instrument_without_specimens_leaves_the_collection_incomplete() =>
        Assert.Equal(
            CollectionState.Incomplete,
            On(SmallStudy.Quiet(Each), _ => "AN1")
                .Protocol(Planned(Each, "AN1", "AN2"))
                .Collecting()
                .Sequence()
                .Collection.State
        );

    [Fact]
    public void A_run_code_on_two_instruments_stops() =>
        Assert.Contains(
            InputQueries.Of(
                SmallStudy
                    .Quiet(Each)
                    .Row(0, 6, row => row with { Instrument = "AN2" })
                    .Protocol(protocol => protocol with { Controls = ControlRule.EveryRun })
                    .Inputs
            ),
            query => query.Code == "run-on-two-instruments"
        );

    private static Func<StudyProtocol, StudyProtocol> Planned(
        int specimens,
        params ImmutableArray<string> instruments
    ) =>
        protocol =>
            protocol with
            {
                Instruments = instruments,
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
