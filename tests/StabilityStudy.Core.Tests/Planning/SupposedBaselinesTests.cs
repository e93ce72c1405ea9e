using StabilityStudy.Core.Planning;

namespace StabilityStudy.Core.Tests.Planning;

/// <summary>Baselines that are supposed by parts of their range.</summary>
public sealed class SupposedBaselinesTests
{
    private static readonly SupposedResults s_supposed = new(
        SupposedConduct.Even(10, 5),
        SameRun: false,
        40,
        0.2,
        3,
        1,
        1
    )
    {
        Parts = [new(20, 30, 3), new(60, 90, 4)],
    };

    [Theory]
    [InlineData(0, 20)]
    [InlineData(2, 20)]
    [InlineData(3, 60)]
    [InlineData(6, 60)]
    [InlineData(7, null)]
    public void Specimens_belong_to_the_parts_in_turn(int specimen, int? lowest) =>
        Assert.Equal(lowest, s_supposed.PartOf(specimen)?.Lowest);
}
