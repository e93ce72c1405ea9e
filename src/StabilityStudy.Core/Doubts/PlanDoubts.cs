namespace StabilityStudy.Core.Doubts;

/// <summary>What the plan itself does not allow to conclude.</summary>
internal static class PlanDoubts
{
    /// <summary>The doubts about a time point.</summary>
    public static IEnumerable<VerdictReason> Of(CellContext context)
    {
        var (protocol, analyte, group, storage, timePoint, _) = context;
        if (
            protocol.FirstTestIsTooLate(analyte, group.Id, storage.Id)
            && timePoint == protocol.TimePointsOf(analyte, group.Id)[0]
        )
        {
            yield return new FirstTestTooLateReason(
                timePoint,
                analyte.StandardWindowOf(group.Id, storage.Id).Time
            );
        }
    }
}
