namespace StabilityStudy.Core.Collecting;

/// <summary>At which times tubes of a patient group are tested in a storage.</summary>
internal static class PlannedOccasions
{
    /// <summary>Each planned delay with the analytes that are tested then.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="analytes">The analytes that are tested of the specimen.</param>
    /// <param name="group">Patient group.</param>
    /// <param name="storage">Storage.</param>
    public static ILookup<TimePoint, string> Of(
        StudyProtocol protocol,
        ImmutableArray<Analyte> analytes,
        string group,
        string storage
    ) =>
        analytes
            .Where(analyte => analyte.Storages.IsEmpty || analyte.Storages.Contains(storage))
            .SelectMany(analyte =>
                protocol
                    .TimePointsOf(analyte, group)
                    .Select(timePoint => (TimePoint: timePoint, analyte.Id))
            )
            .ToLookup(item => item.TimePoint, item => item.Id);
}
