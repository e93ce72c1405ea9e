namespace StabilityStudy.Core.Planning;

/// <summary>A time point that the planned study will hardly support.</summary>
/// <param name="Row">Analyte, group and storage.</param>
/// <param name="TimePoint">The time point.</param>
/// <param name="Kind">How low its chance is.</param>
/// <param name="Chance">The chance that is low, 0 to 1.</param>
public sealed record LowChance(
    PlannedRow Row,
    PlannedTimePoint TimePoint,
    LowChanceKind Kind,
    double Chance
);

/// <summary>How low a chance is. The zero member is the worst.</summary>
public enum LowChanceKind
{
    /// <summary>Out of reach even if nothing changes.</summary>
    OutOfReachWithoutChange,

    /// <summary>Out of reach if the published change is true.</summary>
    OutOfReachAsPublished,

    /// <summary>Less likely than not even if nothing changes.</summary>
    LowWithoutChange,
}

/// <summary>Finds the time points that would hardly be supported.</summary>
public static class LowChances
{
    /// <summary>Below this a chance is out of reach.</summary>
    public const double OutOfReach = 0.05;

    /// <summary>Below this with no true change a study is more likely to fail than not.</summary>
    public const double LowWithoutChange = 0.50;

    /// <summary>Those of a plan, in its order.</summary>
    /// <param name="plan">The plan.</param>
    public static ImmutableArray<LowChance> Of(StudyPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return
        [
            .. from row in plan.Rows
            from point in row.TimePoints
            let low = Of(row, point)
            where low is not null
            select low,
        ];
    }

    private static LowChance? Of(PlannedRow row, PlannedTimePoint point)
    {
        var none = point.WithoutChange?.Together.Probability;
        var all = point.WithAll?.Together.Probability;
        return none < OutOfReach
                ? new(row, point, LowChanceKind.OutOfReachWithoutChange, none.Value)
            : all < OutOfReach ? new(row, point, LowChanceKind.OutOfReachAsPublished, all.Value)
            : none < LowWithoutChange ? new(row, point, LowChanceKind.LowWithoutChange, none.Value)
            : null;
    }
}
