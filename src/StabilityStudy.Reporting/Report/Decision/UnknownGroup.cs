namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>
/// What holds for a specimen of which nobody knows the patient group, or whose group was not studied: never more than
/// today's shortest window, since it may be of the group that bears a delay worst.
/// </summary>
internal static class UnknownGroup
{
    /// <summary>The same as short as page 1 needs it: "aPTT 1 h; PT, INR 8 h".</summary>
    public static string InBrief(StudyAnalysis analysis) =>
        string.Join(
            "; ",
            analysis
                .Sequences.GroupBy(sequence => (sequence.Analyte, sequence.Storage))
                .Select(groups =>
                    (
                        Name: SequenceNames.Of(analysis, groups.First()).Analyte.Id
                            + (
                                analysis.Protocol.Storages.Length > 1
                                    ? $" ({groups.Key.Storage})"
                                    : ""
                            ),
                        Longest: Longest(analysis, [.. groups])
                    )
                )
                .GroupBy(item => item.Longest)
                .OrderBy(same => same.Key)
                .Select(same =>
                    $"{string.Join(", ", same.Select(item => item.Name))} {DurationText.FormatWindow(same.Key)}"
                )
        );

    private static TimeSpan Longest(StudyAnalysis analysis, ImmutableArray<Sequence> groups)
    {
        var analyte = SequenceNames.Of(analysis, groups[0]).Analyte;
        var today = groups.Min(sequence => Today(analyte, sequence));
        var supported = groups.Min(sequence => sequence.Window?.Time ?? Today(analyte, sequence));
        return supported < today ? supported : today;
    }

    /// <summary>One piece for each analyte and storage: "aPTT at most 1 h (today's window, not confirmed here)".</summary>
    public static ImmutableArray<string> Windows(StudyAnalysis analysis) =>
        [
            .. analysis
                .Sequences.GroupBy(sequence => (sequence.Analyte, sequence.Storage))
                .Select(groups => Words(analysis, [.. groups])),
        ];

    private static string Words(StudyAnalysis analysis, ImmutableArray<Sequence> groups)
    {
        var names = SequenceNames.Of(analysis, groups[0]);
        var storage =
            analysis.Protocol.Storages.Length > 1 ? $" ({TradeWords.Of(names.Storage)})" : "";
        var today = groups.Min(sequence => Today(names.Analyte, sequence));
        var supported = groups.Min(sequence =>
            sequence.Window?.Time ?? Today(names.Analyte, sequence)
        );
        var isConfirmed = groups.All(sequence => sequence.Window?.Time >= today);
        var why =
            supported < today ? "the shortest supported"
            : isConfirmed ? "today's window"
            : "today's window, not confirmed here";
        return $"{names.Analyte.Id}{storage} at most {DurationText.FormatWindow(Longest(analysis, groups))} ({why})";
    }

    private static TimeSpan Today(Analyte analyte, Sequence sequence) =>
        analyte.StandardWindowOf(sequence.Group, sequence.Storage).Time;
}
