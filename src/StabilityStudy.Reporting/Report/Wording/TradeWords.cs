using StabilityStudy.Core.Queries;
using StabilityStudy.Statistics.Agreement;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>The words and shapes that stand for the members of the trade's enumerations, in one place.</summary>
internal static class TradeWords
{
    public static string Of(Conclusion conclusion) =>
        conclusion switch
        {
            Conclusion.Supported => "supported",
            Conclusion.NotSupported => "not supported",
            Conclusion.NotReached => "not reached",
            Conclusion.NotAssessed => "not assessed",
            Conclusion.Inconclusive => "inconclusive",
        };

    public static VerdictShape ShapeOf(Conclusion conclusion) =>
        conclusion switch
        {
            Conclusion.Supported => VerdictShape.Supported,
            Conclusion.NotSupported => VerdictShape.NotSupported,
            Conclusion.NotReached => VerdictShape.NotReached,
            Conclusion.NotAssessed => VerdictShape.NotAssessed,
            Conclusion.Inconclusive => VerdictShape.Inconclusive,
        };

    public static string Of(Verdict verdict) =>
        verdict switch
        {
            Verdict.Met => "met",
            Verdict.NotMet => "not met",
            Verdict.Inconclusive => "inconclusive",
        };

    public static VerdictShape ShapeOf(Verdict verdict) =>
        verdict switch
        {
            Verdict.Met => VerdictShape.Supported,
            Verdict.NotMet => VerdictShape.NotSupported,
            Verdict.Inconclusive => VerdictShape.Inconclusive,
        };

    public static string Of(Severity severity) =>
        severity switch
        {
            Severity.Stop => "stop",
            Severity.Attention => "attention",
            Severity.Note => "note",
        };

    public static string Of(PairStatus status) =>
        status switch
        {
            PairStatus.Compared => "compared",
            PairStatus.BeyondInterval => "beyond the measuring interval",
            PairStatus.Failed => "delayed tube failed, counted as outside",
            PairStatus.Excluded => "excluded, documented",
            PairStatus.NoDelayedResult => "no delayed result, counted as outside",
            PairStatus.RunNotInControl => "run not in control",
            PairStatus.BaselineInvalid => "no valid baseline",
            PairStatus.OutsideTiming => "time wrong or not recorded",
            PairStatus.NotAssigned => "not meant to be tested at this time point",
            PairStatus.NotDrawn => "tube not drawn, as stated at collection",
            PairStatus.AddedAfterLook => "added after a look: shown, not counted",
            PairStatus.BeyondPlanned => "beyond the planned number: shown, not counted",
            PairStatus.Ineligible => "specimen or tube not eligible",
        };

    /// <summary>What became of a pair.</summary>
    public static string Of(PairRecord pair) =>
        pair.IsExcludedKnowing
            ? "excluded when its result could be known, counted as outside"
            : Of(pair.Status);

    /// <summary>How demanding a goal is.</summary>
    public static string Of(GoalGrade grade) =>
        grade switch
        {
            GoalGrade.Desirable => "desirable",
            GoalGrade.Minimum => "minimum",
            GoalGrade.Optimum => "optimum",
        };

    /// <summary>Which goal a limit is.</summary>
    public static string Of(GoalKind goal) => goal == GoalKind.Bias ? "bias" : "total error";

    /// <summary>The same in a word or two.</summary>
    public static string Short(PairRecord pair) =>
        pair.IsExcludedKnowing ? "excluded: outside" : Short(pair.Status);

    private static string Short(PairStatus status) =>
        status switch
        {
            PairStatus.Compared => "compared",
            PairStatus.BeyondInterval => "beyond interval",
            PairStatus.Failed => "failed: outside",
            PairStatus.Excluded => "excluded",
            PairStatus.NoDelayedResult => "no result: outside",
            PairStatus.RunNotInControl => "run not in control",
            PairStatus.BaselineInvalid => "no valid baseline",
            PairStatus.OutsideTiming => "time wrong or unknown",
            PairStatus.NotAssigned => "not assigned",
            PairStatus.NotDrawn => "not drawn",
            PairStatus.AddedAfterLook => "after a look",
            PairStatus.BeyondPlanned => "beyond plan",
            PairStatus.Ineligible => "not eligible",
        };

    public static string Of(Storage storage) => StorageWords.Of(storage);

    public static string Of(TubePlan plan) =>
        plan switch
        {
            TubePlan.Aliquots => "a portion of separated plasma for each time point",
            TubePlan.OneTubeRetested => "one tube tested again at each time point",
            TubePlan.TubePerTimePoint =>
                "a tube of its own for each time point, unopened until then",
        };

    /// <summary>The course of a change in words.</summary>
    public static string CourseOf(DriftShape shape) =>
        shape switch
        {
            DriftShape.Logarithmic => "fast, then slower",
            DriftShape.Quadratic => "slow, then faster",
            DriftShape.Linear => "straight line",
        };

    public static string Of(DriftShape shape) =>
        shape switch
        {
            DriftShape.Logarithmic => "ln(1 + t / 1 h)",
            DriftShape.Quadratic => "t²",
            DriftShape.Linear => "t",
        };

    public static string Of(ChangeScale scale, string unit) =>
        scale switch
        {
            ChangeScale.Absolute => unit,
            ChangeScale.Share => "of the allowance",
            ChangeScale.LogRatio => "(100 ln ratio)",
            ChangeScale.Percent => "%",
        };

    /// <summary>The same word at the start of a sentence.</summary>
    public static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];

    /// <summary>A name inside a sentence: "no anticoagulant"; an abbreviation stays as it is.</summary>
    public static string InSentence(string name) =>
        name.Length > 1 && char.IsLower(name[1])
            ? char.ToLowerInvariant(name[0]) + name[1..]
            : name;

    /// <summary>A limit in words: "±7.5 %", "±2 s", "±15 % or ±2 s, whichever is greater".</summary>
    public static string Of(Limit limit, string unit) =>
        (limit.Percent, limit.AbsoluteInUnit) switch
        {
            ({ } percent, { } amount) =>
                $"±{NumberText.Plain(percent)} % or ±{NumberText.Plain(amount)} {unit}, whichever is greater",
            ({ } percent, null) => $"±{NumberText.Plain(percent)} %",
            (null, { } amount) => $"±{NumberText.Plain(amount)} {unit}",
            _ => "none",
        };
}
