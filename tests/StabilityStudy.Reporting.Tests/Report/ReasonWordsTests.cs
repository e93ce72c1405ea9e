using System.Diagnostics;
using System.Runtime.CompilerServices;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Reporting.Report.Criteria;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class ReasonWordsTests
{
    public static TheoryData<Type> Reasons =>
        [.. typeof(VerdictReason).Assembly.GetTypes().Where(IsReason)];

    /// <summary>A reason without numbers is enough to tell whether there are words for it.</summary>
    [Theory]
    [MemberData(nameof(Reasons))]
    public void Every_reason_has_words(Type reason) =>
        Assert.NotEqual(
            reason.Name,
            (
                Record.Exception(() =>
                    ReasonWords.Of((VerdictReason)RuntimeHelpers.GetUninitializedObject(reason))
                ) as UnreachableException
            )?.Message
        );

    [Fact]
    public void A_reason_says_its_numbers()
    {
        Assert.Equal(
            "only 1 collection day, at least 5 required: a run's error does not average out over specimens",
            ReasonWords.Of(new TooFewDaysReason(1, 5))
        );
        Assert.Equal(
            "the interval of the change predicted at 60 s reaches beyond the allowable bias",
            ReasonWords.Of(
                new IntervalReason(
                    IntervalPlace.ReachesLimit,
                    new ChangeAtLevelFigure(new(60m, "s"))
                )
            )
        );
    }

    private static bool IsReason(Type type) =>
        type.IsSubclassOf(typeof(VerdictReason)) && !type.IsAbstract;
}
