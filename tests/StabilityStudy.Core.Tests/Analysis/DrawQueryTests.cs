using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Analysis;

/// <summary>How specimens were drawn and brought to the laboratory. What is asked for is common practice.</summary>
public sealed class DrawQueryTests
{
    private static readonly SmallStudy s_silent = SmallStudy.Quiet(40);

    /// <summary>Drawn as the protocol plans it, and recorded.</summary>
    private static readonly SmallStudy s_study = s_silent
        .Protocol(protocol => protocol with { Draw = Rules() })
        .Tubes(tube =>
            tube with
            {
                Device = "straight needle",
                DrawPosition = 1,
                Inversions = 4,
                DiscardTube = DiscardTube.None,
                DrawnAfter = DrawnBefore.Nothing,
                Transport = TransportState.RoomTemperature,
                Material = SpecimenMaterial.Citrate,
            }
        );

    private static readonly string[] s_codes = [.. DrawQueries.Kinds.Select(kind => kind.Code)];

    private static DrawRules Rules() =>
        new(
            "2.7 mL",
            3.2m,
            DiscardTubeRule.BeforeWingedSet,
            DrawOrder.FirstOrAfterBloodCulture,
            3,
            5,
            "common practice"
        );

    private static DataQuery[] Of(SmallStudy study) =>
        [.. study.Analyze().Queries.Where(query => s_codes.Contains(query.Code))];

    private static SmallStudy Planned(Func<DrawRules, DrawRules> change) =>
        s_study.Protocol(protocol => protocol with { Draw = change(Rules()) });

    private static void Raises(string code, string column, string says, SmallStudy study)
    {
        var query = Assert.Single(Of(study));
        Assert.Equal((code, column), (query.Code, query.Source.Column));
        Assert.Equal(Severity.Attention, query.Severity);
        Assert.Contains(says, query.Message, StringComparison.Ordinal);
    }

    private static SmallStudy One(Func<TubeRow, TubeRow> change) => s_study.Tube(3, 6, change);

    [Fact]
    public void Drawn_as_planned_nothing_is_asked() => Assert.Empty(Of(s_study));

    /// <summary>A study of an earlier version recorded six inversions and a winged set, and nothing was asked of them.</summary>
    [Fact]
    public void Without_a_plan_and_the_later_columns_nothing_is_asked() =>
        Assert.Empty(
            Of(s_silent.Tubes(tube => tube with { Device = "winged set", Inversions = 9 }))
        );

    [Theory]
    [InlineData("winged set")]
    [InlineData("Winged infusion set")]
    [InlineData("21 G butterfly")]
    public void A_winged_set_needs_a_discard_tube_even_without_a_plan(string device)
    {
        Raises(
            "discard-tube-not-drawn",
            "discard_tube",
            "1 tube drawn with a winged set and no discard tube first",
            One(tube => tube with { Device = device })
        );
        Assert.Contains(
            "discard-tube-not-drawn",
            Of(
                    s_silent.Tube(
                        3,
                        6,
                        tube => tube with { Device = device, DiscardTube = DiscardTube.None }
                    )
                )
                .Select(query => query.Code)
        );
        foreach (var drawn in new[] { DiscardTube.Citrate, DiscardTube.Plain })
        {
            Assert.Empty(Of(One(tube => tube with { Device = device, DiscardTube = drawn })));
        }
    }

    [Fact]
    public void A_discard_tube_that_is_always_planned_is_asked_for() =>
        Raises(
            "discard-tube-not-drawn",
            "discard_tube",
            "80 tubes drawn without the discard tube that the protocol wants first",
            Planned(rules => rules with { DiscardTube = DiscardTubeRule.Always })
        );

    [Fact]
    public void A_discard_tube_has_no_other_additive() =>
        Raises(
            "discard-tube-of-other-additive",
            "discard_tube",
            "can be carried over",
            One(tube => tube with { DiscardTube = DiscardTube.OtherAdditive })
        );

    [Fact]
    public void Citrate_tubes_come_first_or_after_a_blood_culture()
    {
        var afterCulture = One(tube => tube with { DrawnAfter = DrawnBefore.BloodCulture });

        Assert.Empty(Of(afterCulture));
        Raises(
            "drawn-after-other-tube",
            "drawn_after",
            "after other tubes",
            afterCulture.Protocol(protocol =>
                protocol with
                {
                    Draw = Rules() with { Order = DrawOrder.First },
                }
            )
        );
        Raises(
            "drawn-after-other-tube",
            "drawn_after",
            "after other tubes",
            One(tube => tube with { DrawnAfter = DrawnBefore.OtherTube })
        );
    }

    [Fact]
    public void Only_the_devices_of_the_protocol_may_be_used()
    {
        Assert.Empty(Of(Planned(rules => rules with { Devices = ["straight needle"] })));
        Raises(
            "device-not-planned",
            "device",
            "80 tubes drawn with a device that the protocol does not name",
            Planned(rules => rules with { Devices = ["winged set"] })
        );
    }

    [Theory]
    [InlineData(2, true)]
    [InlineData(3, false)]
    [InlineData(5, false)]
    [InlineData(6, true)]
    public void Tubes_are_inverted_as_often_as_planned(int inversions, bool isAsked)
    {
        var study = One(tube => tube with { Inversions = inversions });

        if (isAsked)
        {
            Raises(
                "inversions-not-as-planned",
                "inversions",
                "1 tube inverted less than 3 or more than 5 times",
                study
            );
        }
        else
        {
            Assert.Empty(Of(study));
        }
    }

    [Theory]
    [InlineData(TransportState.OnIce)]
    [InlineData(TransportState.Refrigerated)]
    public void Tubes_travel_at_room_temperature(TransportState transport) =>
        Raises(
            "transported-cold",
            "transport",
            "refrigerated or on ice",
            One(tube => tube with { Transport = transport })
        );

    [Fact]
    public void Ice_is_asked_about_even_where_cold_blood_is_studied()
    {
        var cold = s_study.Storage(storage =>
            storage with
            {
                LowestCelsius = 2,
                HighestCelsius = 8,
            }
        );

        Assert.Empty(
            Of(cold.Tube(3, 6, tube => tube with { Transport = TransportState.Refrigerated }))
        );
        Raises(
            "transported-cold",
            "transport",
            "on ice",
            cold.Tube(3, 6, tube => tube with { Transport = TransportState.OnIce })
        );
    }

    [Theory]
    [InlineData(SpecimenMaterial.Serum, "serum")]
    [InlineData(SpecimenMaterial.OtherAnticoagulant, "another anticoagulant")]
    public void Serum_never_counts(SpecimenMaterial material, string says)
    {
        var study = One(tube => tube with { Material = material });

        Raises("not-citrated", "material", "they do not count", study);
        var pair = study.Cell().Pairs.Single(item => item.Specimen == "S003");
        Assert.Equal(Core.Pairing.PairStatus.Ineligible, pair.Status);
        Assert.Contains(says, pair.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_planned_and_not_recorded_is_asked_for_once()
    {
        var study = s_silent.Protocol(protocol => protocol with { Draw = Rules() });

        Raises(
            "draw-not-recorded",
            "device",
            "80 tubes: device, discard_tube, drawn_after, draw_position, transport, material",
            study
        );
    }

    [Fact]
    public void A_discard_tube_that_is_not_planned_need_not_be_recorded() =>
        Assert.Empty(
            Of(
                s_study
                    .Protocol(protocol =>
                        protocol with
                        {
                            Draw = Rules() with { DiscardTube = DiscardTubeRule.Never },
                        }
                    )
                    .Tubes(tube => tube with { DiscardTube = DiscardTube.NotRecorded })
            )
        );

    /// <summary>They are asked while specimens are being collected, when a draw can still be done better.</summary>
    [Fact]
    public void They_are_asked_by_the_check_that_shows_no_results() =>
        Assert.Contains(
            StudyChecks.Of(One(tube => tube with { Transport = TransportState.OnIce }).Inputs, ""),
            query => query.Code == "transported-cold"
        );
}
