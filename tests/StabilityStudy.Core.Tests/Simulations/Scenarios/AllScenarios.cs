namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>Every scenario of the printed table, in its order.</summary>
internal static class AllScenarios
{
    public static ImmutableArray<Scenario> InOrder { get; } =
    [
        .. MeanScenarios.All,
        .. RunScenarios.All,
        .. SharedErrorScenarios.All,
        .. ShareScenarios.All,
        .. LevelScenarios.All,
        .. BentScenarios.All,
        .. SideScenarios.All,
        .. DriftScenarios.All,
        .. SequenceScenarios.All,
        .. LookScenarios.All,
        .. ScopeScenarios.All,
        .. PowerScenarios.All,
    ];
}
