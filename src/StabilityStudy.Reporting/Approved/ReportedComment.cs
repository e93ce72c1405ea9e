using StabilityStudy.Core.Register;

namespace StabilityStudy.Reporting.Approved;

/// <summary>What goes to the chart in place of a result: what was not done, why in numbers, what to send.</summary>
public static class ReportedComment
{
    /// <summary>The comment; null where something may still be tested.</summary>
    public static string? Of(BenchAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return answer.Verdict == BenchVerdict.DoNotTest
            ? $"{answer.Question.Analyte} not tested: {Why(answer)}"
            : null;
    }

    private static string Why(BenchAnswer answer) =>
        answer switch
        {
            { Reason: BenchReason.TimeUnknown } =>
                "collection time not known. Please send a new tube.",
            { Reason: BenchReason.TubeUnfit } =>
                $"tube unsuitable ({answer.Question.Unfit}). Please send a new tube.",
            { KnowsGroup: false } =>
                $"{Tube(answer)}, anticoagulant not known. Please send a new tube and name the anticoagulant.",
            _ when answer.From[0].Window.Anticoagulant == Anticoagulant.Heparin =>
                $"on heparin, {Tube(answer)}. Please send a new tube.",
            _ => $"over {Limit(answer)} from {Origin(answer)}. Please send a new tube.",
        };

    private static string Tube(BenchAnswer answer) =>
        answer.IsSecondStep
            ? $"plasma over {Limit(answer)} from {Origin(answer)}"
            : $"{StorageWords.Of(answer.From[0].Window.State)} over {Limit(answer)} old";

    private static string Origin(BenchAnswer answer) =>
        answer.From[0].Window.Handling?.TimeOrigin == TimeOrigin.Thawing ? "thawing" : "collection";

    private static string Limit(BenchAnswer answer) =>
        answer.Limit is { } limit ? DurationText.FormatWindow(limit) : "what any rule allows";
}
