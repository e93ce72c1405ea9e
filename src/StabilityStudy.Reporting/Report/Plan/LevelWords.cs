using StabilityStudy.Core.Planning;

namespace StabilityStudy.Reporting.Report.Plan;

/// <summary>The baselines that are wanted beside decision levels, in words.</summary>
internal static class LevelWords
{
    /// <summary>A sentence a level.</summary>
    public static IEnumerable<string> Of(StudyPlan plan) =>
        plan
            .Rows.SelectMany(row => row.Levels.Select(level => Of(plan, row, level)))
            .Distinct(StringComparer.Ordinal);

    private static string Of(StudyPlan plan, PlannedRow row, LevelRange level)
    {
        var at = $"{NumberText.Plain(level.Level)} {row.Analyte.ShownUnit}".TrimEnd();
        var group = plan.Protocol.Groups.Length > 1 ? $", {row.Group.Name}" : "";
        var wanted =
            $"{row.Analyte.Id}{group}: at least {NumberText.Count(level.EachSide)} baselines on either side of {at}, better 8";
        return (level.PlannedBelow, level.PlannedAbove, level.IsInRange) switch
        {
            ({ } below, { } above, _) =>
                $"{wanted}; planned are {NumberText.Count(below)} below and {NumberText.Count(above)} at or above it.",
            (_, _, false) =>
                $"{wanted}; the planned range does not reach beyond it, so that this level will stay open.",
            (_, _, true) => $"{wanted}; the planned range reaches beyond it on both sides.",
            _ => $"{wanted}; the protocol plans no range.",
        };
    }
}
