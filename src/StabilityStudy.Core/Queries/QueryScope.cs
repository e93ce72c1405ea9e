namespace StabilityStudy.Core.Queries;

/// <summary>The time point, or all time points of an analyte, patient group and storage, that a data query is about.</summary>
/// <param name="Analyte">Key of the analyte.</param>
/// <param name="Group">Key of the patient group.</param>
/// <param name="Storage">Key of the storage.</param>
/// <param name="TimePoint">The time point; null for all.</param>
public sealed record QueryScope(string Analyte, string Group, string Storage, TimePoint? TimePoint)
{
    /// <summary>One time point.</summary>
    public static QueryScope Of(CellKey key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return new(key.Analyte, key.Group, key.Storage, key.TimePoint);
    }

    /// <summary>As it begins a message.</summary>
    public override string ToString() =>
        TimePoint is { } timePoint
            ? new CellKey(Analyte, Group, Storage, timePoint).ToString()
            : $"{Analyte}, group {Group}, storage {Storage}";
}

/// <summary>The one specimen that a data query is about.</summary>
/// <param name="Code">Its code.</param>
/// <param name="TimePoint">The time point; null where it is the baseline or none.</param>
public sealed record QueriedSpecimen(string Code, TimePoint? TimePoint);
