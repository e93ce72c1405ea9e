using System.Collections.Immutable;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Protocols;

/// <summary>Rules of a protocol about how the study is run; each has a cautious value when it is not given.</summary>
internal sealed record ConductRules(
    decimal LeftOutPercentMaximum,
    TimeSpan OneRunWithin,
    ImmutableArray<string> RerunReasons,
    ControlRule Controls,
    RepeatDraws RepeatDraws,
    int? DelaysPerSpecimen,
    int PlannedLooks
);

/// <summary>Reads the rules of a protocol about how the study is run.</summary>
internal static class ConductReader
{
    private const decimal UsualLeftOutPercent = 20;
    private const int MostDelays = 100;
    private const int MostLooks = 2;
    private static readonly TimeSpan UsualRun = TimeSpan.FromHours(1);

    public static ConductRules Read(TomlTable root) =>
        new(
            LeftOutPercentMaximum: root.OptionalDecimal("left_out_percent_max", NumberRange.LeftOut)
                ?? UsualLeftOutPercent,
            OneRunWithin: root.OptionalLongDuration("one_run_within") ?? UsualRun,
            RerunReasons: ReadReasons(root),
            Controls: root.OptionalChoice("controls", FileWords.ControlRules)
                ?? ControlRule.EveryRun,
            RepeatDraws: root.OptionalChoice("repeat_draws", FileWords.RepeatDrawRules)
                ?? RepeatDraws.LeftOut,
            DelaysPerSpecimen: root.OptionalWhole("delays_per_specimen", 1, MostDelays),
            PlannedLooks: root.OptionalWhole("looks", 1, MostLooks) ?? 1
        );

    /// <summary>Checks that no specimen is to be tested at more time points than there are.</summary>
    public static void Check(ProtocolDraft draft)
    {
        if (
            draft.Root.IsSound("delays_per_specimen")
            && draft.Root.IsSound("time_points")
            && draft.Conduct.DelaysPerSpecimen > draft.TimePoints.Length
        )
        {
            draft.Root.Fault(
                "delays_per_specimen",
                FileQueries.OutOfRange,
                FormattableString.Invariant($"{draft.Conduct.DelaysPerSpecimen}"),
                FormattableString.Invariant(
                    $"The protocol has only {draft.TimePoints.Length} time points."
                ),
                "Write how many of its time points each specimen is tested at."
            );
        }
    }

    private static ImmutableArray<string> ReadReasons(TomlTable root)
    {
        var reasons = root.OptionalTexts("rerun_reasons");
        foreach (
            var twice in reasons
                .GroupBy(reason => reason, StringComparer.Ordinal)
                .Where(group => group.Count() > 1)
        )
        {
            root.Fault(
                "rerun_reasons",
                ProtocolQueries.DuplicateId,
                twice.Key,
                $"The reason \"{twice.Key}\" stands twice.",
                "List each once."
            );
        }

        return reasons;
    }
}
