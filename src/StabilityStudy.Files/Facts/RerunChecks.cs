using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Facts;

/// <summary>Checks documented reruns against the protocol and the specimens.</summary>
internal static class RerunChecks
{
    public static void Check(
        FactsDraft facts,
        ProtocolDraft? protocol,
        ImmutableArray<string>? specimens,
        ImmutableArray<string>? analytes,
        ImmutableArray<string>? timePoints
    )
    {
        var reasons =
            protocol is null
            || (
                protocol.Root.Has(ProtocolKeys.RerunReasons)
                && !protocol.Root.IsSound(ProtocolKeys.RerunReasons)
            )
                ? null
                : (ImmutableArray<string>?)protocol.Conduct.RerunReasons;
        foreach (var (table, rerun) in facts.Reruns.Items)
        {
            References.Check(table, RerunKeys.Specimen, rerun.Specimen, "specimen", specimens);
            References.Check(table, RerunKeys.Analyte, rerun.Analyte, "analyte", analytes);
            References.Check(
                table,
                RerunKeys.TimePoint,
                rerun.TimePoint?.ToString() ?? "",
                "time point",
                timePoints
            );
            References.Check(
                table,
                RerunKeys.Reason,
                rerun.Reason,
                "rerun reason in the protocol",
                reasons
            );
        }
    }
}
