using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about what a protocol and the study facts say together.</summary>
public static class ProtocolQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind UnfitCode = Kinds.Add("unfit-code", Stop, "the study code holds a character that is unfit for a file name", "use letters, digits, hyphen, underscore and point only");
    internal static readonly QueryKind DuplicateId = Kinds.Add("duplicate-id", Stop, "two entries have the same id", "give each its own id");
    internal static readonly QueryKind UnknownReference = Kinds.Add("unknown-reference", Stop, "a code refers to something that is not listed", "correct the code, or add what it refers to");
    internal static readonly QueryKind TimePointsOrder = Kinds.Add("time-points-order", Stop, "the time points are not above zero, different and ascending", "list them from the shortest to the longest, each once");
    /// <summary>An analyte is first tested in a group beyond twice its standard window there.</summary>
    public static readonly QueryKind FirstTimePointTooLate = Kinds.Add("first-time-point-too-late", QueryRank.LaxConduct, "an analyte is first tested in a group beyond twice its standard window there, so that nobody looks at the stretch between; such a protocol is not locked and supports nothing", "add a time point of at most twice the standard window");

    /// <summary>A text is still the mark of a ready protocol.</summary>
    public static readonly QueryKind LeftToChange = Kinds.Add("left-to-change", QueryRank.Source, "a text still has the mark CHANGE: of a ready protocol, in whose place the laboratory puts its own words; such a protocol is not locked", "write your own words in its place, without the mark");
    internal static readonly QueryKind BaselineTooLate = Kinds.Add("baseline-too-late", Stop, "the baseline may be tested as late as the first time point", "make baseline_within shorter than the first time point");
    internal static readonly QueryKind LimitWithoutAmount = Kinds.Add("limit-without-amount", Stop, "a limit has neither percent nor absolute_in_unit", "give percent, absolute_in_unit or both");
    internal static readonly QueryKind LimitAboveGoal = Kinds.Add("limit-above-goal", Stop, "a limit is above the goal from biological variation that it names", "give at most that goal, or name the true source");
    internal static readonly QueryKind LimitDoesNotFitScale = Kinds.Add("limit-does-not-fit-scale", Stop, "a bias or drift criterion is held to a limit of another scale", "use a limit with percent only for drift and the scales percent and log-ratio, with absolute_in_unit only for absolute, or the scale share");
    internal static readonly QueryKind CriterionDoesNotFitAnalyte = Kinds.Add("criterion-does-not-fit-analyte", Stop, "a criterion on numbers names a test with categories, or the cutoffs of a classification do not go with its results", "use a classification for categories; give cutoffs for numbers only");
    internal static readonly QueryKind NoDecisionLevel = Kinds.Add("no-decision-level", Stop, "a criterion judges decision levels and none is given", "add decision_levels to the analyte, or levels to the criterion");
    internal static readonly QueryKind NearRangeMisplaced = Kinds.Add("near-range-misplaced", Stop, "the range of baselines near the levels holds some from which no change of side can begin that the criterion counts", "let it begin at the level for \"down\", end below it for \"up\", and hold the level between its ends for \"both\"");
    internal static readonly QueryKind PointShareAlone = Kinds.Add("point-share-alone", Stop, "the observed share alone judges single specimens, which controls no error", "add an individual criterion with rule = \"confidence\"");
    internal static readonly QueryKind TubePlanDoesNotFit = Kinds.Add("tube-plan-does-not-fit", Stop, "the tube plan cannot be carried out in this storage state", "plan a tube per time point, or another storage state");
    internal static readonly QueryKind FreezingDoesNotFit = Kinds.Add("freezing-does-not-fit", Stop, "the protocol says how plasma is frozen and freezes none, or limits the time after thawing that it studies", "remove the key, or correct the storage");
    internal static readonly QueryKind TimeOriginDoesNotFit = Kinds.Add("time-origin-does-not-fit", Stop, "time counts from thawing in a protocol that does not study thawed plasma", "keep separated plasma above 0 °C as the storage, and count changes from the baseline");
    internal static readonly QueryKind FewDays = Kinds.Add("few-days", LittleSupport, "fewer than five collection days are asked for, so that an error of one day weighs heavily", "ask for five days or more, or give the reason in a deviation of study.toml");
    internal static readonly QueryKind BiasOnly = Kinds.Add("bias-only", LittleSupport, "only the mean change is judged, and a mean can hide single large changes", "add a criterion of kind \"individual\"");
    internal static readonly QueryKind IndividualOnly = Kinds.Add("individual-only", LittleSupport, "the mean change is not judged, and all results may move the same way within the limit", "add a criterion of kind \"bias\"");
    internal static readonly QueryKind SidesOnly = Kinds.Add("sides-only", LaxCriterion, "only changes of side or class are judged, and far from a level results may change as they like", "add criteria of kind \"bias\" and \"individual\"");
    /// <summary>A mean without decision levels where the change may depend on the level; refused by a lock.</summary>
    public static readonly QueryKind MeanWithoutLevels = Kinds.Add("mean-without-levels", LaxCriterion, "a mean is judged without decision levels in patients on heparin or a vitamin K antagonist, or over a range wider than threefold; such a protocol is not locked", "add a criterion of kind \"decision-level\" or \"reclassification\", or give the reason in without_levels");
    internal static readonly QueryKind MeanWithoutLevelsStated = Kinds.Add("mean-without-levels-stated", LaxCriterion, "a mean is judged without decision levels for a stated reason, although the change may depend on the level", "nothing, if the reason holds");
    internal static readonly QueryKind CriterionOutOfReach = Kinds.Add("criterion-out-of-reach", WithoutEffect, "the planned number of specimens cannot meet the criterion, even with every specimen inside the limit", "plan as many specimens as the message says");
    internal static readonly QueryKind AnalyteWithoutCriterion = Kinds.Add("analyte-without-criterion", Note, "no criterion covers an analyte in a group, so that it will be \"not assessed\"", "add the analyte to a criterion if a conclusion is wanted");
    // csharpier-ignore-end
}
