using StabilityStudy.Core.Planning;

namespace StabilityStudy.Files.Tests.ReadyProtocols;

/// <summary>The chance of all criteria together is found with fewer computations where nobody asks for each criterion, and is the same.</summary>
[Trait("lane", "slow")]
public sealed class QuickChanceTests
{
    private const int Studies = 40;

    /// <summary>Between them they have every kind of criterion that is simulated, one level and several, and changes within the limit, near it and beyond.</summary>
    [Theory]
    [InlineData("aptt-whole-blood-room-temperature")]
    [InlineData("d-dimer-whole-blood")]
    [InlineData("anti-xa-ufh-whole-blood")]
    [InlineData("inr-vka-whole-blood")]
    [InlineData("factor-viii-whole-blood")]
    [InlineData("lupus-anticoagulant-plasma")]
    public void A_study_that_is_over_with_its_first_unmet_criterion_is_the_same_study(string name)
    {
        var protocol = ReadyProtocolFile.Read(name).Protocol;
        var request = new PlanRequest(Studies, 7);

        Assert.Equal(
            Chances(StudyPlanner.Of(protocol, request with { ByCriterion = true })),
            Chances(StudyPlanner.Of(protocol, request))
        );

        static IEnumerable<(string, TimeSpan, double, int)> Chances(StudyPlan plan) =>
            from row in plan.Rows
            from point in row.TimePoints
            from chance in point.Chances
            select (
                row.Analyte.Id + row.Group.Id,
                point.TimePoint.Delay,
                chance.ShareOfExpected,
                chance.Together.Accepted
            );
    }
}
