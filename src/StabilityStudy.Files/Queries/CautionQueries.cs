using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about a protocol that can be carried out and asks for less than is usual.</summary>
internal static class CautionQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind WindowsOverlap = Kinds.Add("windows-overlap", Stop, "with the tolerance a test can belong to two time points", "shorten the tolerance, or move the time points apart");
    internal static readonly QueryKind BaselineBeyondStandardWindow = Kinds.Add("baseline-beyond-standard-window", Stop, "the baseline may be tested as late as today's window ends, so that it shows nothing fresh", "make baseline_within shorter than every standard window");
    internal static readonly QueryKind WindowStepTooLong = Kinds.Add("window-step-too-long", Stop, "the step to which a window is rounded down is longer than the first time point", "shorten window_step");
    internal static readonly QueryKind WideTolerance = Kinds.Add("wide-tolerance", LaxConduct, "the tolerance is more than a quarter of the time to the neighboring time point", "shorten the tolerance, or give the reason in a deviation of study.toml");
    internal static readonly QueryKind LateBaseline = Kinds.Add("late-baseline", LaxConduct, "the baseline may be tested more than an hour after collection (blood, plasma on cells), or later than a quarter of the first delay, which hides the change before it", "ask for the baseline within an hour, or give the reason in a deviation of study.toml");
    internal static readonly QueryKind MuchMayBeLeftOut = Kinds.Add("much-may-be-left-out", LaxConduct, "more than a quarter of the specimens may be left out of a time point", "lower left_out_percent_max, or give the reason in a deviation of study.toml");
    internal static readonly QueryKind LowConfidence = Kinds.Add("low-confidence", LaxCriterion, "the confidence is below 0.90 for a mean or below 0.95 for a share of specimens", "raise it, or have the medical director give the reason");
    internal static readonly QueryKind LooksNeedConfidence = Kinds.Add("looks-need-confidence", Stop, "two looks at the data are planned, and the confidence is below 0.95 for a mean or below 0.975 for a share of specimens", "raise it, or plan one look");
    internal static readonly QueryKind LowShare = Kinds.Add("low-share", LaxCriterion, "more than 15 of 100 specimens may disagree", "ask for more, or have the medical director give the reason");
    internal static readonly QueryKind BiasLimitNotBelowIndividual = Kinds.Add("bias-limit-not-below-individual", LaxCriterion, "the allowable bias is as large as the allowable difference of single specimens", "give waiting only the share that the other errors leave over");
    internal static readonly QueryKind BiasLimitIsIndividual = Kinds.Add("bias-limit-is-individual", LaxCriterion, "one limit serves the mean and single specimens; a regulatory or total limit must not serve as allowable bias", "give the mean a limit of its own");
    internal static readonly QueryKind DecidedByEstimateAlone = Kinds.Add("decided-by-estimate-alone", LaxCriterion, "a criterion looks at the estimate alone, which controls no error", "use rule = \"confidence\", or keep a criterion with confidence beside it");
    internal static readonly QueryKind ManufacturerLimitNotStated = Kinds.Add("manufacturer-limit-not-stated", WithoutEffect, "the protocol does not say what the manufacturer allows", "look it up in the instructions for use and add manufacturer_limit");
    internal static readonly QueryKind BetweenRunCvNotStated = Kinds.Add("between-run-cv-not-stated", LaxConduct, "the protocol does not say how much the test varies between runs, so that changes smaller than measurements can be are not seen", "add cv_percent from the laboratory's own controls");
    internal static readonly QueryKind LevelNotJudged = Kinds.Add("level-not-judged", LaxCriterion, "a criterion leaves out a decision level that the protocol states for the analyte", "name every level, or have the medical director give the reason");
    internal static readonly QueryKind TemperatureRangeWide = Kinds.Add("temperature-range-wide", LaxConduct, "a storage allows more than 10 °C between its lowest and highest temperature above freezing", "name the temperatures at which tubes will wait");
    internal static readonly QueryKind EligibilityLax = Kinds.Add("eligibility-lax", LaxConduct, "the protocol lets in tubes that are usually rejected: filled below 90 % of nominal, a hematocrit above 55 % without corrected citrate, or clotted", "reject them, or have the medical director give the reason");
    internal static readonly QueryKind HandlingLax = Kinds.Add("handling-lax", LaxConduct, "the protocol allows what laboratories usually do not: another citrate than 3.2 %, fewer than 3 or more than 6 inversions, a winged set without a discard tube, transport in the cold, or more residual platelets than 10 × 10⁹/L", "plan as is usual, or have the medical director give the reason");
    internal static readonly QueryKind LoincContradictsUnit = Kinds.Add("loinc-contradicts-unit", Measurement, "the LOINC code of an analyte is that of another kind of quantity than its unit", "look both up in the instructions for use, and correct the one that is wrong before the protocol is locked");
    internal static readonly QueryKind SourceTooShort = Kinds.Add("source-too-short", Source, "a source has fewer than eight characters, so that nobody can look it up", "name the document, edition and place");
    internal static readonly QueryKind SourceFromMemory = Kinds.Add("source-from-memory", Source, "a source is given from memory", "look it up and name the document, edition and place");
    internal static readonly QueryKind SourceIsExample = Kinds.Add("source-is-an-example", Source, "a source is an example", "name your own document");
    // csharpier-ignore-end
}
