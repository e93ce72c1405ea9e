using StabilityStudy.Core.Planning;

namespace StabilityStudy.Reporting.Report.Plan;

/// <summary>The time points that will hardly be supported, in words.</summary>
internal static class PlanReservations
{
    private const int MostNamed = 10;

    /// <summary>A sentence a kind; none where every chance is good enough.</summary>
    public static ImmutableArray<string> Of(StudyPlan plan) =>
        [
            .. LowChances
                .Of(plan)
                .GroupBy(item => item.Kind)
                .OrderBy(kind => kind.Key)
                .Select(kind => Sentence(kind.Key, Named(plan, [.. kind]))),
        ];

    private static string Sentence(LowChanceKind kind, string named) =>
        kind switch
        {
            LowChanceKind.OutOfReachWithoutChange =>
                $"Out of reach even if nothing changes: {named}.",
            LowChanceKind.OutOfReachAsPublished =>
                $"Out of reach if specimens change as published: {named}.",
            LowChanceKind.LowWithoutChange =>
                $"Less likely than not even if nothing changes: {named}.",
        };

    private static string Named(StudyPlan plan, ImmutableArray<LowChance> low)
    {
        var named = low.GroupBy(item => ChanceTable.Name(plan, item.Row))
            .Select(row =>
                $"{row.Key} {string.Join(", ", row.Select(item => $"{item.TimePoint.TimePoint} ({ChanceWords.Percent(item.Chance)})"))}"
            )
            .ToArray();
        return string.Join("; ", named.Take(MostNamed))
            + (
                named.Length > MostNamed
                    ? $"; and {NumberText.Count(named.Length - MostNamed)} more"
                    : ""
            );
    }
}
