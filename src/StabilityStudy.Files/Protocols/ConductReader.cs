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
    ChangeOrigin ChangeSince,
    TimeOrigin TimeOrigin,
    int? PlannedDays,
    TimeSpan? ReviewAfter,
    Part<DrawRules>? Draw,
    Part<SpinRules>? Spin,
    Part<FreezingRules>? Freezing,
    RepeatOf? Repeat
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
            ChangeSince: root.Read(ProtocolKeys.ChangeSince),
            TimeOrigin: root.Read(ProtocolKeys.TimeCountsFrom),
            PlannedDays: root.Read(ProtocolKeys.PlannedDays),
            ReviewAfter: root.Read(ProtocolKeys.ReviewAfter),
            Draw: Part<DrawRules>.Optional(root, ProtocolKeys.Draw, DrawKeys.Read),
            Spin: Part<SpinRules>.Optional(root, ProtocolKeys.Spin, SpinKeys.Read),
            Freezing: Part<FreezingRules>.Optional(root, ProtocolKeys.Freezing, FreezingKeys.Read),
            Repeat: Part<RepeatOf>.Optional(root, ProtocolKeys.Repeat, RepeatKeys.Read)?.Value
        );

    /// <summary>Checks that time after thawing is studied as such: in plasma that is no longer frozen, with changes that count from the baseline, which is thawed too.</summary>
    public static void CheckOrigin(ProtocolDraft draft)
    {
        if (draft.Conduct.TimeOrigin != TimeOrigin.Thawing)
        {
            return;
        }

        if (draft.Conduct.ChangeSince != ChangeOrigin.Baseline)
        {
            draft.Root.Fault(
                ProtocolKeys.TimeCountsFrom,
                ProtocolQueries.TimeOriginDoesNotFit,
                "thawing",
                "Time counts from thawing, and changes from collection: no result tells what freezing did.",
                "Write change_since = \"baseline\", or count time from collection."
            );
        }

        foreach (
            var (table, storage) in draft.Storages.Items.Where(item =>
                item.Table.IsSound(StorageKeys.State)
                && item.Table.IsSound(StorageKeys.Celsius)
                && (
                    item.Value.State != StorageState.SeparatedPlasma
                    || item.Value.HighestCelsius < 0
                )
            )
        )
        {
            table.Remark(
                StorageKeys.State,
                ProtocolQueries.TimeOriginDoesNotFit,
                storage.Id,
                $"Time counts from thawing, and the storage \"{storage.Id}\" is no thawed plasma."
            );
        }
    }

    /// <summary>Checks that enough days are planned for a criterion to be met.</summary>
    public static void CheckDays(ProtocolDraft draft)
    {
        if (
            draft.Root.IsSound(ProtocolKeys.MinimumDays)
            && draft.Conduct.PlannedDays is { } planned
            && planned < draft.MinimumDays
        )
        {
            draft.Root.Fault(
                ProtocolKeys.PlannedDays,
                FileQueries.OutOfRange,
                FormattableString.Invariant($"{planned}"),
                FormattableString.Invariant(
                    $"On {planned} days no criterion can be met, as {draft.MinimumDays} are the fewest."
                ),
                "Plan more days: 8 to 10, so that a run out of control costs no more than its own pairs."
            );
        }
    }

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
