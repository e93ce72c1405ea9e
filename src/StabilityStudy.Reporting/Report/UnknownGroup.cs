using System.Collections.Immutable;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Reporting.Report;

/// <summary>What holds for a specimen of which nobody knows the patient group: the shortest of what the groups may have.</summary>
internal static class UnknownGroup
{
    /// <summary>One piece for each analyte and storage studied in several groups: "aPTT at most 1 h (Unfractionated heparin; today's window, not confirmed)".</summary>
    public static ImmutableArray<string> Windows(StudyAnalysis analysis) =>
        [
            .. analysis
                .Sequences.GroupBy(sequence => (sequence.Analyte, sequence.Storage))
                .Where(groups => groups.Count() > 1)
                .Select(groups => groups.MinBy(sequence => Longest(analysis, sequence))!)
                .Select(sequence => Words(analysis, sequence)),
        ];

    private static TimeSpan Longest(StudyAnalysis analysis, Sequence sequence) =>
        sequence.Window?.Time
        ?? SequenceNames.Of(analysis, sequence).Analyte.StandardWindowOf(sequence.Group).Time;

    private static string Words(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var storage =
            analysis.Protocol.Storages.Length > 1 ? $" ({TradeWords.Of(names.Storage)})" : "";
        var why = sequence.Window is null
            ? "; today's window, which this study does not confirm"
            : "";
        return $"{names.Analyte.Id}{storage} at most {DurationText.FormatWindow(Longest(analysis, sequence))} ({names.Group.Name}{why})";
    }
}
