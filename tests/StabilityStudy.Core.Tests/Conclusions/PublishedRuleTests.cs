using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Conclusions;

/// <summary>Published rules of stability studies, expressed with the criteria there are; the results are invented.</summary>
public sealed class PublishedRuleTests
{
    private static SmallStudy Changes(params string[] delayed) =>
        SmallStudy.Of(
            [6],
            Enumerable.Range(0, 40).Select(i => "30.0 | " + delayed[i % delayed.Length])
        );

    /// <summary>99 % interval of the mean inside ± 10 % (2021).</summary>
    private static Conclusion Rule2021(SmallStudy study) =>
        study
            .Protocol(protocol => protocol with { Limits = [new("bias", 10m, null, "2021 rule")] })
            .Criteria(SmallProtocol.MeanCriterion with { ConfidenceLevel = 0.99 })
            .Cell()
            .Conclusion;

    [Fact]
    public void A_ninety_nine_percent_interval_inside_ten_percent_is_supported() =>
        Assert.Equal(Conclusion.Supported, Rule2021(Changes("30.3", "29.8", "30.4", "29.9")));

    [Fact]
    public void A_ninety_nine_percent_interval_beyond_ten_percent_is_not_supported() =>
        Assert.Equal(Conclusion.NotSupported, Rule2021(Changes("36.0", "35.8", "36.2", "36.1")));
}
