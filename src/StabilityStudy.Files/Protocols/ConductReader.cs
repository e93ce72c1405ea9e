namespace StabilityStudy.Files.Protocols;

/// <summary>Rules of a protocol about how the study is run; each has a cautious value when it is not given.</summary>
internal sealed record ConductRules(
    decimal LeftOutPercentMaximum,
    TimeSpan OneRunWithin,
    ImmutableArray<string> RerunReasons,
    ControlRule Controls,
    RepeatDraws RepeatDraws,
    int? DelaysPerSpecimen,
    ImmutableArray<string> Instruments,
    int PlannedLooks,
    ChangeOrigin ChangeSince
);

/// <summary>Reads the rules of a protocol about how the study is run.</summary>
internal static class ConductReader
{
    public static ConductRules Read(TomlTable root) =>
        new(
            LeftOutPercentMaximum: root.Read(ProtocolKeys.LeftOutPercentMaximum),
            OneRunWithin: root.Read(ProtocolKeys.OneRunWithin),
            RerunReasons: root.Read(ProtocolKeys.RerunReasons),
            Controls: root.Read(ProtocolKeys.Controls),
            RepeatDraws: root.Read(ProtocolKeys.RepeatDraws),
            DelaysPerSpecimen: root.Read(ProtocolKeys.DelaysPerSpecimen),
            Instruments: root.Read(ProtocolKeys.Instruments),
            PlannedLooks: root.Read(ProtocolKeys.Looks),
            ChangeSince: root.Read(ProtocolKeys.ChangeSince)
        );

    /// <summary>Checks that no specimen is to be tested at more time points than there are.</summary>
    public static void Check(ProtocolDraft draft)
    {
        if (
            draft.Root.IsSound(ProtocolKeys.DelaysPerSpecimen)
            && draft.Root.IsSound(ProtocolKeys.TimePoints)
            && draft.Conduct.DelaysPerSpecimen > draft.TimePoints.Length
        )
        {
            draft.Root.Fault(
                ProtocolKeys.DelaysPerSpecimen,
                FileQueries.OutOfRange,
                FormattableString.Invariant($"{draft.Conduct.DelaysPerSpecimen}"),
                FormattableString.Invariant(
                    $"The protocol has only {draft.TimePoints.Length} time points."
                ),
                "Write how many of its time points each specimen is tested at."
            );
        }
    }
}
