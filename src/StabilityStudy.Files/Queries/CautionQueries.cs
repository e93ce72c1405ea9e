using System.Collections.Immutable;
using StabilityStudy.Core.Queries;
using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about a protocol that can be carried out and asks for less than is usual.</summary>
public static class CautionQueries
{
    /// <summary>Two time points cannot be told apart.</summary>
    public static readonly QueryKind WindowsOverlap = new(
        "windows-overlap",
        Stop,
        "with the tolerance a test can belong to two time points",
        "shorten the tolerance, or move the time points apart"
    );

    /// <summary>The baseline may itself be too late.</summary>
    public static readonly QueryKind BaselineBeyondStandardWindow = new(
        "baseline-beyond-standard-window",
        Stop,
        "the baseline may be tested as late as today's window ends, so that it shows nothing fresh",
        "make baseline_within shorter than every standard window"
    );

    /// <summary>No window could be given.</summary>
    public static readonly QueryKind WindowStepTooLong = new(
        "window-step-too-long",
        Stop,
        "the step to which a window is rounded down is longer than the first time point",
        "shorten window_step"
    );

    /// <summary>The tolerance is wide.</summary>
    public static readonly QueryKind WideTolerance = new(
        "wide-tolerance",
        LaxConduct,
        "the tolerance is more than a quarter of the time to the neighboring time point",
        "shorten the tolerance, or give the reason in a deviation of study.toml"
    );

    /// <summary>The baseline may be late.</summary>
    public static readonly QueryKind LateBaseline = new(
        "late-baseline",
        LaxConduct,
        "the baseline may be tested more than an hour after collection (blood, plasma on cells), or later than a quarter of the first delay, which hides the change before it",
        "ask for the baseline within an hour, or give the reason in a deviation of study.toml"
    );

    /// <summary>Many specimens may be left out.</summary>
    public static readonly QueryKind MuchMayBeLeftOut = new(
        "much-may-be-left-out",
        LaxConduct,
        "more than a quarter of the specimens may be left out of a time point",
        "lower left_out_percent_max, or give the reason in a deviation of study.toml"
    );

    /// <summary>The confidence is low.</summary>
    public static readonly QueryKind LowConfidence = new(
        "low-confidence",
        LaxCriterion,
        "the confidence is below 0.90 for a mean or below 0.95 for a share of specimens",
        "raise it, or have the medical director give the reason"
    );

    /// <summary>Two looks, each with the confidence of one.</summary>
    public static readonly QueryKind LooksNeedConfidence = new(
        "looks-need-confidence",
        Stop,
        "two looks at the data are planned, and the confidence is below 0.95 for a mean or below 0.975 for a share of specimens",
        "raise it, or plan one look"
    );

    /// <summary>The required share is low.</summary>
    public static readonly QueryKind LowShare = new(
        "low-share",
        LaxCriterion,
        "more than 15 of 100 specimens may disagree",
        "ask for more, or have the medical director give the reason"
    );

    /// <summary>A limit is wide.</summary>
    public static readonly QueryKind WideLimit = SharedKinds.WideLimit;

    /// <summary>The mean may move as far as one specimen.</summary>
    public static readonly QueryKind BiasLimitNotBelowIndividual = new(
        "bias-limit-not-below-individual",
        LaxCriterion,
        "the allowable bias is as large as the allowable difference of single specimens",
        "give waiting only the share that the other errors leave over"
    );

    /// <summary>One limit serves mean and single specimens.</summary>
    public static readonly QueryKind BiasLimitIsIndividual = new(
        "bias-limit-is-individual",
        LaxCriterion,
        "one limit serves the mean and single specimens; a regulatory or total limit must not serve as allowable bias",
        "give the mean a limit of its own"
    );

    /// <summary>An estimate alone decides.</summary>
    public static readonly QueryKind DecidedByEstimateAlone = new(
        "decided-by-estimate-alone",
        LaxCriterion,
        "a criterion looks at the estimate alone, which controls no error",
        "use rule = \"confidence\", or keep a criterion with confidence beside it"
    );

    /// <summary>The manufacturer's limit is not stated.</summary>
    public static readonly QueryKind ManufacturerLimitNotStated = new(
        "manufacturer-limit-not-stated",
        WithoutEffect,
        "the protocol does not say what the manufacturer allows",
        "look it up in the instructions for use and add manufacturer_limit"
    );

    /// <summary>The imprecision of the test is not stated.</summary>
    public static readonly QueryKind BetweenRunCvNotStated = new(
        "between-run-cv-not-stated",
        LaxConduct,
        "the protocol does not say how much the test varies between runs, so that changes smaller than measurements can be are not seen",
        "add cv_percent from the laboratory's own controls"
    );

    /// <summary>A decision level is not judged.</summary>
    public static readonly QueryKind LevelNotJudged = new(
        "level-not-judged",
        LaxCriterion,
        "a criterion leaves out a decision level that the protocol states for the analyte",
        "name every level, or have the medical director give the reason"
    );

    /// <summary>A storage with hardly a temperature.</summary>
    public static readonly QueryKind TemperatureRangeWide = new(
        "temperature-range-wide",
        LaxConduct,
        "a storage allows more than 10 °C between its lowest and highest temperature above freezing",
        "name the temperatures at which tubes will wait"
    );

    /// <summary>Specimens that are usually rejected may be used.</summary>
    public static readonly QueryKind EligibilityLax = new(
        "eligibility-lax",
        LaxConduct,
        "the protocol lets in tubes that are usually rejected: filled below 90 % of nominal, a hematocrit above 55 % without corrected citrate, or clotted",
        "reject them, or have the medical director give the reason"
    );

    /// <summary>A source says nothing.</summary>
    public static readonly QueryKind SourceTooShort = new(
        "source-too-short",
        Source,
        "a source has fewer than eight characters, so that nobody can look it up",
        "name the document, edition and place"
    );

    /// <summary>A source is from memory.</summary>
    public static readonly QueryKind SourceFromMemory = new(
        "source-from-memory",
        Source,
        "a source is given from memory",
        "look it up and name the document, edition and place"
    );

    /// <summary>A source is an example.</summary>
    public static readonly QueryKind SourceIsExample = new(
        "source-is-an-example",
        Source,
        "a source is an example",
        "name your own document"
    );

    internal static ImmutableArray<QueryKind> All { get; } =
    [
        WindowsOverlap,
        BaselineBeyondStandardWindow,
        WindowStepTooLong,
        WideTolerance,
        LateBaseline,
        MuchMayBeLeftOut,
        LowConfidence,
        LooksNeedConfidence,
        LowShare,
        WideLimit,
        BiasLimitNotBelowIndividual,
        BiasLimitIsIndividual,
        DecidedByEstimateAlone,
        ManufacturerLimitNotStated,
        BetweenRunCvNotStated,
        LevelNotJudged,
        TemperatureRangeWide,
        EligibilityLax,
        SourceTooShort,
        SourceFromMemory,
        SourceIsExample,
    ];
}
