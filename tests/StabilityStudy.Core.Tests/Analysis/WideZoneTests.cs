using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Analysis;

/// <summary>A zone wide enough hides every change of side.</summary>
public sealed class WideZoneTests
{
    [Theory]
    [InlineData(5.0, true)]
    [InlineData(0.1, false)]
    [InlineData(null, false)]
    public void A_zone_wider_than_imprecision_explains_is_an_attention(double? zone, bool wide) =>
        Assert.Equal(
            wide,
            SmallStudy
                .Quiet(40)
                .Criteria(
                    new ReclassificationCriterion("sides", [new("aPTT", null)], [], 0.95, 15, [33])
                    {
                        ZoneInUnit = (decimal?)zone,
                    }
                )
                .Analyze()
                .Queries.Any(query => query.Code == "wide-zone")
        );
}
