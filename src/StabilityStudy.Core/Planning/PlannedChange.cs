namespace StabilityStudy.Core.Planning;

/// <summary>The change that a planned time point is expected to show.</summary>
/// <param name="Percent">Mean change, percent of the baseline, counted from where the protocol counts; null where none was published.</param>
/// <param name="SpecimenSdPercent">SD of the change among specimens, percent.</param>
/// <param name="SdFrom">Where that SD comes from.</param>
/// <param name="Source">Where the change was published, as the protocol states it; null where it comes from the program or is not known.</param>
public sealed record PlannedChange(
    double? Percent,
    double SpecimenSdPercent,
    SdOrigin SdFrom,
    string? Source
)
{
    /// <summary>SD of the change among specimens where nothing states one, percent: our own choice, near what the simulations of the rules supposed.</summary>
    public const double UsualSdPercent = 3;

    /// <summary>Pairs of a pilot from which the SD comes; 0 without a pilot.</summary>
    public int PilotPairs { get; init; }

    /// <summary>What the protocol states for a time point, else what a curve known to the program says.</summary>
    internal static PlannedChange Of(CellContext context)
    {
        var stated = context.Analyte.ExpectedChanges.FirstOrDefault(item =>
            item.Group == context.Group.Id
            && item.TimePoint == context.TimePoint
            && (item.Storage is null || item.Storage == context.Storage.Id)
        );
        return stated is not null
            ? new(
                (double)stated.Percent,
                (double)stated.SpecimenSdPercent,
                SdOrigin.Protocol,
                stated.Source
            )
            : new(OfCurve(context), UsualSdPercent, SdOrigin.Supposed, null);
    }

    /// <summary>A change counted from the baseline lacks what came before it.</summary>
    private static double? OfCurve(CellContext context)
    {
        if (
            PublishedDrift.For(
                context.Protocol.TimeOrigin,
                context.Analyte,
                context.Group,
                context.Storage
            )
            is not { } drift
        )
        {
            return null;
        }

        double Level(TimeSpan delay) => 1 + (drift.PercentAfter(delay.TotalHours) / 100);
        var from = context.IsSinceCollection
            ? 1
            : Level(CriterionSetCharacteristic.BaselineDelay(context));
        return 100 * ((Level(context.TimePoint.Delay) / from) - 1);
    }
}

/// <summary>Where a supposed SD comes from.</summary>
public enum SdOrigin
{
    /// <summary>From nobody: a usual one.</summary>
    Supposed,

    /// <summary>From the protocol, stated or by its default.</summary>
    Protocol,

    /// <summary>From pairs of the facility.</summary>
    Pilot,
}
