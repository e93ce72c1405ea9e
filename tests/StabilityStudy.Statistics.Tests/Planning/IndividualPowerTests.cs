using StabilityStudy.Statistics.Planning;

namespace StabilityStudy.Statistics.Tests.Planning;

public sealed class IndividualPowerTests
{
    [Fact]
    public void Agrees_with_R()
    {
        var table = ReferenceTable.Read("computed/individual_power.csv");
        for (var row = 0; row < table.Count; row++)
        {
            Close.Absolute(
                table.Number(row, "power"),
                IndividualPower.Of(
                    table.Whole(row, "n"),
                    table.Number(row, "true"),
                    table.Number(row, "required"),
                    table.Number(row, "level")
                ),
                1e-12
            );
        }
    }

    [Fact]
    public void At_the_required_share_the_power_is_at_most_one_minus_the_level()
    {
        for (var n = 1; n <= 200; n++)
        {
            Assert.InRange(IndividualPower.Of(n, 0.85, 0.85, 0.95), 0, 0.05 + 1e-12);
        }
    }

    [Fact]
    public void Too_few_pairs_have_no_power_and_a_full_share_is_always_shown()
    {
        Assert.Equal(0, IndividualPower.Of(18, 1, 0.85, 0.95));
        Assert.Equal(1, IndividualPower.Of(19, 1, 0.85, 0.95));
        Assert.Equal(0, IndividualPower.Of(19, 0, 0.85, 0.95));
    }

    [Fact]
    public void Arguments_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>(
            "trueShare",
            () => IndividualPower.Of(20, 1.1, 0.85, 0.95)
        );
        Assert.Throws<ArgumentException>(
            "requiredShare",
            () => IndividualPower.Of(20, 0.9, 1, 0.95)
        );
        Assert.Throws<ArgumentException>("trials", () => IndividualPower.Of(0, 0.9, 0.8, 0.95));
    }
}
