using System.Collections.Immutable;
using StabilityStudy.Core.Queries;
using static StabilityStudy.Core.Queries.QueryRank;

namespace StabilityStudy.Files.Queries;

/// <summary>Queries about what a protocol and the study facts say together.</summary>
public static class ProtocolQueries
{
    /// <summary>The study code cannot be a file name.</summary>
    public static readonly QueryKind UnfitCode = new(
        "unfit-code",
        Stop,
        "the study code holds a character that is unfit for a file name",
        "use letters, digits, hyphen, underscore and point only"
    );

    /// <summary>Two things have one id.</summary>
    public static readonly QueryKind DuplicateId = new(
        "duplicate-id",
        Stop,
        "two entries have the same id",
        "give each its own id"
    );

    /// <summary>A code refers to nothing.</summary>
    public static readonly QueryKind UnknownReference = new(
        "unknown-reference",
        Stop,
        "a code refers to something that is not listed",
        "correct the code, or add what it refers to"
    );

    /// <summary>Time points are not ascending.</summary>
    public static readonly QueryKind TimePointsOrder = new(
        "time-points-order",
        Stop,
        "the time points are not above zero, different and ascending",
        "list them from the shortest to the longest, each once"
    );

    /// <summary>The first time point is too late.</summary>
    public static readonly QueryKind FirstTimePointTooLate = new(
        "first-time-point-too-late",
        Stop,
        "the first time point is beyond twice the standard window, so that nobody looks at the stretch between",
        "add a time point of at most twice the standard window"
    );

    /// <summary>The baseline may be as late as the first time point.</summary>
    public static readonly QueryKind BaselineTooLate = new(
        "baseline-too-late",
        Stop,
        "the baseline may be tested as late as the first time point",
        "make baseline_within shorter than the first time point"
    );

    /// <summary>A limit has no amount.</summary>
    public static readonly QueryKind LimitWithoutAmount = new(
        "limit-without-amount",
        Stop,
        "a limit has neither percent nor absolute_in_unit",
        "give percent, absolute_in_unit or both"
    );

    /// <summary>A limit is above the goal that it names as its source.</summary>
    public static readonly QueryKind LimitAboveGoal = new(
        "limit-above-goal",
        Stop,
        "a limit is above the goal from biological variation that it names",
        "give at most that goal, or name the true source"
    );

    /// <summary>A limit does not fit the scale of a bias criterion.</summary>
    public static readonly QueryKind LimitDoesNotFitScale = new(
        "limit-does-not-fit-scale",
        Stop,
        "a bias or drift criterion is held to a limit of another scale",
        "use a limit with percent only for drift and the scales percent and log-ratio, with absolute_in_unit only for absolute, or the scale share"
    );

    /// <summary>A criterion cannot judge the results of its analyte.</summary>
    public static readonly QueryKind CriterionDoesNotFitAnalyte = new(
        "criterion-does-not-fit-analyte",
        Stop,
        "a criterion on numbers names a test with categories, or the cutoffs of a classification do not go with its results",
        "use a classification for categories; give cutoffs for numbers only"
    );

    /// <summary>A criterion needs decision levels.</summary>
    public static readonly QueryKind NoDecisionLevel = new(
        "no-decision-level",
        Stop,
        "a criterion judges decision levels and none is given",
        "add decision_levels to the analyte, or levels to the criterion"
    );

    /// <summary>Single specimens are judged without error control.</summary>
    public static readonly QueryKind PointShareAlone = new(
        "point-share-alone",
        Stop,
        "the observed share alone judges single specimens, which controls no error",
        "add an individual criterion with rule = \"confidence\""
    );

    /// <summary>The tube plan does not fit the storage.</summary>
    public static readonly QueryKind TubePlanDoesNotFit = new(
        "tube-plan-does-not-fit",
        Stop,
        "the tube plan cannot be carried out in this storage state",
        "plan a tube per time point, or another storage state"
    );

    /// <summary>Few collection days.</summary>
    public static readonly QueryKind FewDays = new(
        "few-days",
        LittleSupport,
        "fewer than five collection days are asked for, so that an error of one day weighs heavily",
        "ask for five days or more, or give the reason in a deviation of study.toml"
    );

    /// <summary>Only the mean is looked at.</summary>
    public static readonly QueryKind BiasOnly = new(
        "bias-only",
        LittleSupport,
        "only the mean change is judged, and a mean can hide single large changes",
        "add a criterion of kind \"individual\""
    );

    /// <summary>The mean is not looked at.</summary>
    public static readonly QueryKind IndividualOnly = new(
        "individual-only",
        LittleSupport,
        "the mean change is not judged, and all results may move the same way within the limit",
        "add a criterion of kind \"bias\""
    );

    /// <summary>No size of change is looked at.</summary>
    public static readonly QueryKind SidesOnly = new(
        "sides-only",
        LaxCriterion,
        "only changes of side or class are judged, and far from a level results may change as they like",
        "add criteria of kind \"bias\" and \"individual\""
    );

    /// <summary>A criterion cannot be met.</summary>
    public static readonly QueryKind CriterionOutOfReach = new(
        "criterion-out-of-reach",
        WithoutEffect,
        "the planned number of specimens cannot meet the criterion, even with every specimen inside the limit",
        "plan as many specimens as the message says"
    );

    /// <summary>No criterion.</summary>
    public static readonly QueryKind AnalyteWithoutCriterion = new(
        "analyte-without-criterion",
        Note,
        "no criterion covers an analyte in a group, so that it will be \"not assessed\"",
        "add the analyte to a criterion if a conclusion is wanted"
    );

    internal static ImmutableArray<QueryKind> All { get; } =
    [
        UnfitCode,
        DuplicateId,
        UnknownReference,
        TimePointsOrder,
        FirstTimePointTooLate,
        BaselineTooLate,
        LimitWithoutAmount,
        LimitAboveGoal,
        LimitDoesNotFitScale,
        CriterionDoesNotFitAnalyte,
        NoDecisionLevel,
        PointShareAlone,
        TubePlanDoesNotFit,
        FewDays,
        BiasOnly,
        IndividualOnly,
        SidesOnly,
        CriterionOutOfReach,
        AnalyteWithoutCriterion,
    ];
}
