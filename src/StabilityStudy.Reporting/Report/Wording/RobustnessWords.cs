using StabilityStudy.Reporting.Report.Criteria;

namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>What is asked of a conclusion, as a clause.</summary>
internal static class RobustnessWords
{
    public static string Of(RobustnessQuestion question) =>
        question.Kind switch
        {
            RobustnessKind.OneSubjectLeftOut when question.Changing == 0 =>
                $"with each of {Number(question.Count)} subjects left out of the mean in turn",
            RobustnessKind.OneSubjectLeftOut =>
                $"with one subject left out of the mean: {Number(question.Changing)} of {Number(question.Count)} would change the conclusion",
            RobustnessKind.OneMoreOutside
            or RobustnessKind.FewestMoreOutside
            or RobustnessKind.FewestMoreChanged => $"if {More(question)} had {WouldHave(question)}",
            RobustnessKind.WithoutFlaggedOutliers =>
                $"with the {OneOr(question.Count, "flagged outlier")} left out of the mean; the share keeps every specimen",
            RobustnessKind.LeftOutCountedOutside =>
                $"if {OneOr(question.Count, "pair")} left out at this time point had been outside the allowable difference",
            RobustnessKind.LeftOutAtMeasuredValues =>
                $"with {OneOr(question.Count, "pair")} left out put back at the measured values"
                    + (
                        question.Excluded is { } excluded
                            ? $"; of the excluded, {Number(excluded.Outside)} of {Number(excluded.Count)} were outside the allowable difference"
                            : ""
                    ),
            RobustnessKind.BeyondIntervalAtTheLimit =>
                "with each result beyond a limit of measurement taken as that limit",
            RobustnessKind.OtherScale when question.Scale == ChangeScale.LogRatio =>
                "with the mean on the log-ratio scale in place of percent",
            RobustnessKind.OtherScale =>
                "with the mean on the percent scale in place of the log-ratio",
            RobustnessKind.MedianInPlaceOfMean => "with the median in place of the mean",
            RobustnessKind.HodgesLehmannInPlaceOfMean =>
                "with the Hodges–Lehmann estimate in place of the mean",
            RobustnessKind.OtherRegression =>
                "with Deming regression of constant error in place of weighted Deming regression",
        };

    /// <summary>The question with the criterion that is decided otherwise, where it is one.</summary>
    public static string WithCriterion(RobustnessQuestion question) =>
        question.Otherwise is { } otherwise
            ? $"{Of(question)}; without {otherwise.Subject} criterion {otherwise.Criterion}: {ReasonWords.Of(otherwise.Reason)}"
            : Of(question);

    /// <summary>The question without the numbers in which time points differ; null where it has none.</summary>
    public static string? InGeneral(RobustnessKind kind) =>
        kind switch
        {
            RobustnessKind.OneSubjectLeftOut => "with each subject left out of the mean in turn",
            RobustnessKind.FewestMoreOutside =>
                "if the fewest more that would change it had been outside the limit",
            RobustnessKind.FewestMoreChanged =>
                "if the fewest more that would change it had changed the side of a level",
            RobustnessKind.WithoutFlaggedOutliers =>
                "with the flagged outliers left out of the mean; the share keeps every specimen",
            RobustnessKind.LeftOutAtMeasuredValues =>
                "with the pairs left out put back at the measured values",
            RobustnessKind.LeftOutCountedOutside =>
                "if the pairs left out had been outside the allowable difference",
            RobustnessKind.OneMoreOutside
            or RobustnessKind.BeyondIntervalAtTheLimit
            or RobustnessKind.OtherScale
            or RobustnessKind.MedianInPlaceOfMean
            or RobustnessKind.HodgesLehmannInPlaceOfMean
            or RobustnessKind.OtherRegression => null,
        };

    /// <summary>"one more specimen", "3 more specimens".</summary>
    public static string More(RobustnessQuestion question) =>
        OneOr(question.Count, "more specimen");

    /// <summary>What further specimens would have done, after "had".</summary>
    public static string WouldHave(RobustnessQuestion question) =>
        question switch
        {
            { Kind: not RobustnessKind.FewestMoreChanged } => "been outside the limit",
            { Level: { } level } =>
                $"changed the side of {level.ToString(CultureInfo.InvariantCulture)}",
            _ => "changed class",
        };

    private static string OneOr(int? count, string noun) =>
        count == 1 ? "one " + noun : $"{Number(count)} {noun}s";

    private static string Number(int? count) => NumberText.Count(count ?? 0);
}
