using StabilityStudy.Core.Bench;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Bench;

public sealed class DrawPlanTests
{
    private static readonly StudyProtocol s_protocol = SmallProtocol.For(12, [6, 8, 12]);
    private static readonly string s_group = s_protocol.Groups[0].Id;

    [Fact]
    public void Tubes_are_lettered_in_the_order_of_time_and_the_spare_comes_last()
    {
        var specimen = Plan(1)[0];

        Assert.Equal(
            ["A baseline", "B 6 h", "C 8 h", "D 12 h"],
            specimen.Tubes.Select(tube => $"{tube.Letter} {tube.Occasion}")
        );
        Assert.Equal(("X-001-E", 5), (specimen.Spare!.Code, specimen.Spare.DrawPosition));
    }

    [Fact]
    public void Each_time_has_every_place_at_the_draw_equally_often()
    {
        var specimens = Plan(12);

        Assert.All(
            specimens,
            specimen =>
                Assert.Equal(
                    [1, 2, 3, 4],
                    specimen.Tubes.Select(tube => tube.DrawPosition).Order().Cast<int>()
                )
        );
        Assert.All(
            Enumerable.Range(0, 4),
            tube =>
                Assert.All(
                    specimens.CountBy(specimen => specimen.Tubes[tube].DrawPosition ?? 0),
                    place => Assert.Equal(3, place.Value)
                )
        );
    }

    /// <summary>The first specimens of the model page: 2, 3, 4, 1, then 3, 4, 1, 2.</summary>
    [Fact]
    public void The_first_specimen_begins_with_the_tube_that_waits_longest()
    {
        var specimens = Plan(2);

        Assert.Equal([2, 3, 4, 1], specimens[0].Tubes.Select(tube => tube.DrawPosition ?? 0));
        Assert.Equal([3, 4, 1, 2], specimens[1].Tubes.Select(tube => tube.DrawPosition ?? 0));
    }

    [Fact]
    public void Portions_have_no_place_at_the_draw_and_are_spun_once()
    {
        var portions = DrawPlan
            .Of(
                s_protocol with
                {
                    TubePlan = TubePlan.Aliquots,
                    Storages =
                    [
                        s_protocol.Storages[0] with
                        {
                            State = StorageState.SeparatedPlasma,
                        },
                    ],
                },
                [new("X-001", s_group)],
                1,
                withSpare: false
            )[0]
            .Tubes;

        Assert.All(portions, portion => Assert.Null(portion.DrawPosition));
        Assert.Equal(
            [SpinMoment.AtOnce, SpinMoment.Already, SpinMoment.Already, SpinMoment.Already],
            portions.Select(portion => portion.Spin.Moment)
        );
    }

    [Fact]
    public void What_the_protocol_does_not_say_stays_open()
    {
        var spin = SpinTime.Of(
            s_protocol,
            s_protocol.Groups[0],
            s_protocol.Storages[0] with
            {
                SpinToTest = null,
            },
            s_protocol.TimePoints[0]
        );

        Assert.Equal(new SpinTime(SpinMoment.NotStated, null, null), spin);
    }

    [Theory]
    [InlineData("N-001..N-003", "N-001 N-002 N-003")]
    [InlineData("F-98..F-99", "F-98 F-99")]
    [InlineData("N-007", "N-007")]
    [InlineData("07..09", "07 08 09")]
    public void A_range_of_codes_is_read(string text, string codes) =>
        Assert.Equal(
            codes,
            string.Join(' ', SpecimenCode.Range(text, "none")!.Value.Select(code => code.Code))
        );

    [Theory]
    [InlineData("")]
    [InlineData("N/001")]
    [InlineData("N-003..N-001")]
    [InlineData("N-001..H-003")]
    [InlineData("N-01..N-003")]
    [InlineData("N-001..N-002..N-003")]
    [InlineData("N..N")]
    [InlineData("N-0001..N-9999")]
    [InlineData("N 001")]
    public void What_is_no_range_of_codes_is_not_read(string text) =>
        Assert.Null(SpecimenCode.Range(text, "none"));

    [Fact]
    public void The_days_together_draw_each_planned_specimen_once()
    {
        var protocol = s_protocol with { PlannedDays = 5 };

        var codes = Enumerable
            .Range(1, 6)
            .SelectMany(day => SpecimenCode.OfDay(protocol, day, []))
            .Select(code => code.Code)
            .ToImmutableArray();

        Assert.Equal(12, codes.Length);
        Assert.Equal(codes, codes.Distinct());
    }

    [Fact]
    public void Codes_go_on_as_those_of_the_specimens_that_came()
    {
        var tubes = SmallStudy
            .Quiet(2)
            .Inputs.Tubes.Select(tube => tube with { Specimen = tube.Specimen.Replace("S0", "F-") })
            .ToImmutableArray();

        Assert.Equal(
            "F-01",
            SpecimenCode.OfDay(s_protocol with { PlannedDays = 12 }, 1, tubes).Single().Code
        );
    }

    private static ImmutableArray<BenchSpecimen> Plan(int count) =>
        DrawPlan.Of(
            s_protocol,
            [.. Enumerable.Range(1, count).Select(i => new SpecimenCode($"X-{i:000}", s_group))],
            1,
            withSpare: true
        );
}
