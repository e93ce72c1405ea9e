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
        var outOfReach = ChancesOfSupport.From(ChanceOfSupport.Unlikely);
        return none < outOfReach
                ? new(row, point, LowChanceKind.OutOfReachWithoutChange, none.Value)
            : all < outOfReach ? new(row, point, LowChanceKind.OutOfReachAsPublished, all.Value)
            // With no true change the study is more likely to fail than not.
            : none < ChancesOfSupport.From(ChanceOfSupport.Open)
                ? new(row, point, LowChanceKind.LowWithoutChange, none.Value)
            : null;
    }
}
