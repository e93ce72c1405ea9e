namespace StabilityStudy.Core.Conclusions;

/// <summary>One thing that could be otherwise, with its numbers; the words are the report's.</summary>
/// <param name="Kind">What is changed.</param>
/// <param name="Count">Of how many subjects, outliers, pairs or further specimens; null where nothing is counted.</param>
public sealed record RobustnessQuestion(RobustnessKind Kind, int? Count = null)
{
    /// <summary>Of the subjects left out in turn, those without whom the conclusion would be another.</summary>
    public int? Changing { get; init; }

    /// <summary>Which criterion is decided otherwise without one of those subjects; null where none changes the conclusion.</summary>
    public CriterionOtherwise? Otherwise { get; init; }

    /// <summary>The level whose side further specimens would have changed; null where they would have changed class.</summary>
    public decimal? Level { get; init; }

    /// <summary>The scale in place of the criterion's own.</summary>
    public ChangeScale? Scale { get; init; }

    /// <summary>Of the pairs put back, those that a person excluded; null where there is none, or no limit to hold them to.</summary>
    public ExcludedPairs? Excluded { get; init; }

    /// <summary>Whether further specimens are taken to have turned out otherwise.</summary>
    public bool IsOfFurtherSpecimens =>
        Kind
            is RobustnessKind.OneMoreOutside
                or RobustnessKind.FewestMoreOutside
                or RobustnessKind.FewestMoreChanged;
}

/// <summary>A criterion that is decided otherwise without a subject.</summary>
/// <param name="Subject">Code of the subject.</param>
/// <param name="Criterion">Key of the criterion.</param>
/// <param name="Reason">Why it then says what it says.</param>
public sealed record CriterionOtherwise(string Subject, string Criterion, VerdictReason Reason);

/// <summary>Excluded pairs that were measured.</summary>
/// <param name="Count">How many.</param>
/// <param name="Outside">How many of them were outside the allowable difference.</param>
public sealed record ExcludedPairs(int Count, int Outside);

/// <summary>What could be otherwise; the words of files are made from the names.</summary>
public enum RobustnessKind
{
    /// <summary>Each subject is left out of the mean in turn.</summary>
    OneSubjectLeftOut,

    /// <summary>One more specimen is outside the limit.</summary>
    OneMoreOutside,

    /// <summary>As many more specimens are outside the limit as change the conclusion.</summary>
    FewestMoreOutside,

    /// <summary>As many more specimens change the side of a level, or class, as change the conclusion.</summary>
    FewestMoreChanged,

    /// <summary>Flagged outliers are left out of the mean.</summary>
    WithoutFlaggedOutliers,

    /// <summary>Pairs left out count as outside.</summary>
    LeftOutCountedOutside,

    /// <summary>Pairs left out are put back at what was measured.</summary>
    LeftOutAtMeasuredValues,

    /// <summary>Results beyond a limit of measurement are taken as that limit.</summary>
    BeyondIntervalAtTheLimit,

    /// <summary>The mean is taken on another scale.</summary>
    OtherScale,

    /// <summary>The median stands in place of the mean.</summary>
    MedianInPlaceOfMean,

    /// <summary>The Hodges–Lehmann estimate stands in place of the mean.</summary>
    HodgesLehmannInPlaceOfMean,

    /// <summary>Deming regression of constant error stands in place of weighted Deming regression.</summary>
    OtherRegression,
}
