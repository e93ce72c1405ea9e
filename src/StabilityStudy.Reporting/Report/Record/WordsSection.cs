namespace StabilityStudy.Reporting.Report.Record;

/// <summary>The statistical words of the report in plain language, those that it uses.</summary>
internal static class WordsSection
{
    /// <summary>The words used.</summary>
    /// <param name="text">The texts of all other sections.</param>
    public static Section Of(string text) =>
        new(
            "Words",
            StartsOnNewPage: false,
            [new DefinitionList([.. All.Where(word => IsUsed(word.Term, text))]) { IsRunIn = true }]
        );

    /// <summary>A term names several words between commas; a letter at its end is a symbol.</summary>
    private static bool IsUsed(string term, string text) =>
        term.Split(", ")
            .Select(word => word.Length > 2 && word[^2] == ' ' ? word[..^2] : word)
            .Any(word => text.Contains(word, StringComparison.OrdinalIgnoreCase));

    /// <summary>Every word that can be explained.</summary>
    public static ImmutableArray<Definition> All { get; } =
    [
        new(
            "Baseline, delayed",
            "the result soon after collection; the result after the delay. Both together are a pair."
        ),
        new(
            "Mean change",
            "the average of the changes from baseline to delayed result: the systematic effect of waiting."
        ),
        new(
            "Interval",
            "the range of true values that the data are compatible with, at the stated confidence."
        ),
        new(
            "Allowable bias",
            "the largest systematic change that is acceptable; stated in the protocol, with its source."
        ),
        new("Allowable difference", "the largest change of a single specimen that is acceptable."),
        new(
            "Lower bound",
            "the smallest true share of specimens within the limit that the data are compatible with."
        ),
        new(
            "Limits of agreement",
            "the range in which about 95 % of single changes lie, if they spread evenly about their mean."
        ),
        new(
            "Skewness",
            "how lopsided the changes are; 0 is even, beyond 1 the interval of a mean is not to be trusted."
        ),
        new(
            "Weighted Deming",
            "a straight line through the pairs that allows for error in both results, in proportion to their size."
        ),
        new(
            "Passing–Bablok",
            "a straight line from the median of all slopes between pairs of points; single outliers hardly move it."
        ),
        new(
            "Two one-sided tests",
            "the tests behind \"the interval lies inside the limits\"; their p value is shown and never decides."
        ),
        new(
            "Hodges–Lehmann change",
            "the median of the averages of all pairs of changes (each with itself too); like a mean that single outliers hardly move."
        ),
        new(
            "Correlation r",
            "how closely the points lie to a straight line, −1 to 1; it says nothing about agreement."
        ),
        new(
            "ln(1 + t / 1 h)",
            "natural logarithm of 1 plus the hours since collection: change that is fast at first and slows down."
        ),
        new(
            "Mixed model",
            "a fit in which every specimen has a level and a slope of its own, scattered about common ones."
        ),
        new(
            "AICc",
            "a figure for how well a curve follows the results, with a charge for its freedom; the smaller the better."
        ),
        new(
            "Percentile",
            "the value below which that share of the changes lies, whatever their distribution."
        ),
        new(
            "Tolerance interval",
            "a range that holds at least the stated share of all specimens, with the stated confidence, if changes are normal."
        ),
        new("Bootstrap", "an interval from drawing pairs again and again out of those measured."),
        new(
            "Shapiro–Wilk W",
            "how close the changes are to a normal distribution, 1 at best; a small p speaks against it."
        ),
        new(
            "Signed-rank test",
            "a test of no change by ranks; no significance is not equivalence."
        ),
        new(
            "Theil–Sen",
            "a straight line from the median of all slopes, with errors in the delayed result only."
        ),
        new(
            "Kendall's τ-b, Lin's concordance",
            "how far two results order specimens alike, and how close they lie to being equal; 1 at best."
        ),
        new("Decision level", "a value at which care changes; stated in the protocol."),
        new(
            "Reclassification",
            "a specimen whose delayed result lies on the other side of a decision level than its baseline."
        ),
        new(
            "Bridging plasma",
            "stable plasma tested in the runs of baselines and in those of delayed tubes; its shift shows what the runs, not the delay, add."
        ),
        new(
            "Undecidable",
            "a specimen whose result beyond the measuring interval, or missing without a stated reason, leaves open whether it stayed within the limit; it counts as outside."
        ),
        new(
            "Left out",
            "not counted for a time point, with the reason stated: not eligible, time wrong or unknown, no valid baseline, not tested, excluded by a person."
        ),
        new(
            "Not reached",
            "not judged, since an earlier time point is not supported; the tubes were tested and their figures are shown."
        ),
        new(
            "Doubt",
            "a reason why a figure cannot be trusted to decide, such as too few collection days; it makes the verdict inconclusive."
        ),
        new(
            "Outlier",
            "a change that stands out from the others (generalized extreme Studentized deviate test); flagged, never removed."
        ),
    ];
}
