namespace StabilityStudy.Files.Protocols;

/// <summary>
/// Looks for analytes that are tested in a group for the first time beyond twice what today's rule allows there. Such a
/// protocol is not locked; one that was locked before concludes at most inconclusive.
/// </summary>
internal static class FirstTimePointCheck
{
    public static void Check(ProtocolDraft draft)
    {
        if (!draft.Root.IsSound(ProtocolKeys.TimePoints))
        {
            return;
        }

        var protocol = draft.ToProtocol();
        foreach (var (table, analyte) in draft.Analytes.Items)
        {
            foreach (
                var group in protocol.Groups.Where(group =>
                    (analyte.Groups.IsEmpty || analyte.Groups.Contains(group.Id))
                    && TooLateIn(protocol, analyte, group.Id) is not null
                )
            )
            {
                var first = protocol.TimePointsOf(analyte, group.Id)[0];
                var standard = analyte
                    .StandardWindowOf(group.Id, TooLateIn(protocol, analyte, group.Id) ?? "")
                    .Time;
                table.Remark(
                    AnalyteKeys.StandardWindow,
                    ProtocolQueries.FirstTimePointTooLate,
                    first.ToString(),
                    $"{analyte.Id}, group {group.Id}: first tested at {first}, beyond twice today's window of {DurationText.Format(standard)}; nobody would look at the stretch between.",
                    $"Add a time point of at most {DurationText.Format(StudyProtocol.FirstTestWithinWindows * standard)}, where it is for this group alone as time_points in group_windows."
                );
            }
        }
    }

    /// <summary>The storage whose window is the shortest of those that are passed; null where none is.</summary>
    private static string? TooLateIn(StudyProtocol protocol, Analyte analyte, string group) =>
        protocol
            .Storages.Where(storage =>
                (analyte.Storages.IsEmpty || analyte.Storages.Contains(storage.Id))
                && protocol.FirstTestIsTooLate(analyte, group, storage.Id)
            )
            .MinBy(storage => analyte.StandardWindowOf(group, storage.Id).Time)
            ?.Id;
}
