using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Scope;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>Why verdicts are what they are, with the numbers.</summary>
internal static class ReasonForms
{
    private static readonly ObjectForm<LevelInUnit> s_level = new("levelInUnit")
    {
        { "level", v => v.Level, Form.Exact },
        { "unit", v => v.Unit, Form.Text },
    };

    public static readonly ObjectForm<ChangeBesideLevel> ChangeBesideLevelForm = new(
        "changeBesideLevel"
    )
    {
        { "isAbove", v => v.IsAbove, Form.Truth },
        { "percent", v => v.Percent, Form.Number },
        { "lowerPercent", v => v.LowerPercent, Form.Number },
        { "upperPercent", v => v.UpperPercent, Form.Number },
    };

    public static readonly ChoiceForm<IntervalFigure> IntervalFigureForm = new("intervalFigure")
    {
        { "mean-change", new ObjectForm<MeanChangeFigure>() },
        {
            "change-at-level",
            new ObjectForm<ChangeAtLevelFigure> { { "level", v => v.Level, s_level } }
        },
        { "predicted-change", new ObjectForm<PredictedChangeFigure>() },
    };

    public static readonly ChoiceForm<CoverageGap> CoverageGapForm = new("coverageGap")
    {
        {
            "few-baselines",
            new ObjectForm<FewBaselines>
            {
                { "below", v => v.Below, Form.Count },
                { "above", v => v.Above, Form.Count },
            }
        },
        { "spread-unknown", new ObjectForm<SpreadUnknown>() },
        {
            "spread-too-small",
            new ObjectForm<SpreadTooSmall>
            {
                { "betweenSpecimens", v => v.BetweenSpecimens, Form.Number },
                { "analytical", v => v.Analytical, Form.Number },
            }
        },
    };

    public static readonly ChoiceForm<MovedOutcome> MovedOutcomeForm = new("movedOutcome")
    {
        {
            "more-outside",
            new ObjectForm<MoreOutsideIfMoved>
            {
                { "outside", v => v.Outside, Form.Count },
                { "counted", v => v.Counted, Form.Count },
                { "sharePercent", v => v.SharePercent, Form.Exact },
            }
        },
        { "sides-open", new ObjectForm<SidesOpenIfMoved>() },
        { "classes-open", new ObjectForm<ClassesOpenIfMoved>() },
    };

    private static readonly ObjectForm<PartStanding> s_partStanding = new("partStanding")
    {
        { "code", v => v.Code, Form.Text },
        { "conclusion", v => v.Conclusion, Form.Word<Conclusion>() },
    };

    public static readonly ChoiceForm<VerdictReason> VerdictReasonForm = new("verdictReason")
    {
        {
            "not-computable",
            new ObjectForm<NotComputableReason> { { "code", v => v.Why.Code, Form.Text } }
        },
        { "nothing-counted", new ObjectForm<NothingCountedReason>() },
        {
            "too-few-days",
            new ObjectForm<TooFewDaysReason>
            {
                { "days", v => v.Days, Form.Count },
                { "required", v => v.Required, Form.Count },
            }
        },
        {
            "too-few-runs",
            new ObjectForm<TooFewRunsReason>
            {
                { "of", v => v.Of, Form.Word<IntervalSource>() },
                { "runs", v => v.Runs, Form.Count },
                { "required", v => v.Required, Form.Count },
            }
        },
        {
            "no-value-at-collection",
            new ObjectForm<NoValueAtCollectionReason>
            {
                { "specimens", v => v.Specimens, Form.List(Form.Text) },
            }
        },
        {
            "shape-misfit",
            new ObjectForm<ShapeMisfitReason>
            {
                { "timePoints", v => v.TimePoints, Form.List(Form.TimePoint) },
            }
        },
        {
            "uncounted-pairs",
            new ObjectForm<UncountedPairsReason> { { "specimens", v => v.Specimens, Form.Count } }
        },
        {
            "interval",
            new ObjectForm<IntervalReason>
            {
                { "place", v => v.Place, Form.Decisive(Form.Word<IntervalPlace>()) },
                { "figure", v => v.Figure, IntervalFigureForm },
            }
        },
        { "no-level", new ObjectForm<NoLevelReason>() },
        {
            "level-outside-coverage",
            new ObjectForm<LevelOutsideCoverageReason>
            {
                { "level", v => v.Level, s_level },
                { "gap", v => v.Gap, CoverageGapForm },
            }
        },
        {
            "open-if-runs-moved",
            new ObjectForm<OpenIfRunsMovedReason>
            {
                { "percent", v => v.Percent, Form.Number },
                { "then", v => v.Then, MovedOutcomeForm },
            }
        },
        { "mean-alone", new ObjectForm<MeanAloneReason>() },
        {
            "same-changes",
            new ObjectForm<SameChangesReason>
            {
                { "halfIncrement", v => v.HalfIncrement, Form.Number },
            }
        },
        {
            "level-dependent",
            new ObjectForm<LevelDependentReason>
            {
                { "level", v => v.Level, Form.Number },
                { "unit", v => v.Unit, Form.Text },
                { "predictedPercent", v => v.PredictedPercent, Form.Number },
                { "lowerPercent", v => v.LowerPercent, Form.Number },
                { "upperPercent", v => v.UpperPercent, Form.Number },
            }
        },
        {
            "one-side-of-level",
            new ObjectForm<OneSideOfLevelReason>
            {
                { "level", v => v.Level, s_level },
                { "beside", v => v.Beside, ChangeBesideLevelForm },
            }
        },
        { "share-refuted", Share<ShareRefutedReason>(v => v.SharePercent) },
        { "share-open", Share<ShareOpenReason>(v => v.SharePercent) },
        { "share-shown", Share<ShareShownReason>(v => v.SharePercent) },
        { "too-few-measured", Share<TooFewMeasuredReason>(v => v.SharePercent) },
        {
            "agreeing-beyond-limit",
            new ObjectForm<AgreeingBeyondLimitReason>
            {
                { "sharePercent", v => v.SharePercent, Form.Exact },
                { "agreeingBeyond", v => v.AgreeingBeyond, Form.Count },
            }
        },
        { "share-alone", new ObjectForm<ShareAloneReason>() },
        {
            "undecidable",
            new ObjectForm<UndecidableReason>
            {
                { "undecidable", v => v.Undecidable, Form.Count },
                { "counted", v => v.Counted, Form.Count },
                { "lowerBoundIfInside", v => v.LowerBoundIfInside, Form.Number },
            }
        },
        { "pairs-on-one-line", new ObjectForm<PairsOnOneLineReason>() },
        {
            "changes-few",
            new ObjectForm<ChangesFewReason>
            {
                { "sharePercent", v => v.SharePercent, Form.Exact },
                { "levels", v => v.Levels, Form.List(Form.Exact) },
                { "unit", v => v.Unit, Form.Text },
                {
                    "direction",
                    v => v.Direction,
                    Form.Word<SideDirection>().OrLeftOutFor(SideDirection.Both)
                },
            }
        },
        {
            "changes-many",
            Change<ChangesManyReason>(v => v.SharePercent, v => v.Level, v => v.Direction)
        },
        {
            "changes-open",
            Change<ChangesOpenReason>(v => v.SharePercent, v => v.Level, v => v.Direction)
        },
        {
            "changes-together",
            new ObjectForm<ChangesTogetherReason>
            {
                { "sharePercent", v => v.SharePercent, Form.Exact },
                { "levels", v => v.Levels, Form.List(Form.Exact) },
                { "unit", v => v.Unit, Form.Text },
                { "found", v => v.Found, Form.Word<Verdict>() },
                {
                    "direction",
                    v => v.Direction,
                    Form.Word<SideDirection>().OrLeftOutFor(SideDirection.Both)
                },
            }
        },
        {
            "too-few-near",
            new ObjectForm<TooFewNearReason>
            {
                { "counted", v => v.Counted, Form.Count },
                { "required", v => v.Required, Form.Count },
                { "lowest", v => v.Lowest, Form.Exact },
                { "highest", v => v.Highest, Form.Exact },
                { "unit", v => v.Unit, Form.Text },
            }
        },
        { "classes-kept", Share<ClassesKeptReason>(v => v.SharePercent) },
        { "classes-lost", Share<ClassesLostReason>(v => v.SharePercent) },
        { "classes-open", Share<ClassesOpenReason>(v => v.SharePercent) },
        {
            "too-few-weak-positives",
            new ObjectForm<TooFewWeakPositivesReason>
            {
                { "weakPositives", v => v.WeakPositives, Form.Count },
                { "required", v => v.Required, Form.Count },
            }
        },
        { "limit-not-in-percent", new ObjectForm<LimitNotInPercentReason>() },
        { "no-shape", new ObjectForm<NoShapeReason>() },
        { "shapes-disagree", new ObjectForm<ShapesDisagreeReason>() },
        { "same-drift", new ObjectForm<SameDriftReason>() },
        {
            "run-not-recorded",
            new ObjectForm<RunNotRecordedReason>
            {
                { "specimens", v => v.Specimens, Form.List(Form.Text) },
            }
        },
        {
            "run-without-control",
            new ObjectForm<RunWithoutControlReason>
            {
                { "runs", v => v.Runs, Form.List(Form.Text) },
            }
        },
        {
            "control-out-of-range",
            new ObjectForm<ControlOutOfRangeReason>
            {
                { "runs", v => v.Runs, Form.List(Form.Text) },
            }
        },
        {
            "first-test-too-late",
            new ObjectForm<FirstTestTooLateReason>
            {
                { "first", v => v.First, Form.TimePoint },
                { "standard", v => v.Standard, Form.Duration },
            }
        },
        {
            "collection-not-complete",
            new ObjectForm<CollectionNotCompleteReason>
            {
                { "usable", v => v.Usable, Form.Count },
                { "planned", v => v.Planned, Form.Count },
            }
        },
        {
            "added-after-look",
            new ObjectForm<AddedAfterLookReason>
            {
                { "lookedAt", v => v.LookedAt, Form.Time },
                { "added", v => v.Added, Form.Count },
            }
        },
        {
            "parts-not-supported",
            new ObjectForm<PartsNotSupportedReason>
            {
                { "parts", v => v.Parts, Form.Keyed(s_partStanding, "code") },
            }
        },
        {
            "instrument-not-recorded",
            new ObjectForm<InstrumentNotRecordedReason>
            {
                { "specimens", v => v.Specimens, Form.Count },
            }
        },
        {
            "tested-on-two-instruments",
            new ObjectForm<TestedOnTwoInstrumentsReason>
            {
                { "specimens", v => v.Specimens, Form.List(Form.Text) },
            }
        },
        {
            "stopped-after-look",
            new ObjectForm<StoppedAfterLookReason>
            {
                { "lookedAt", v => v.LookedAt, Form.Time },
                { "usable", v => v.Usable, Form.Count },
                { "planned", v => v.Planned, Form.Count },
            }
        },
        {
            "too-many-left-out",
            new ObjectForm<TooManyLeftOutReason>
            {
                { "leftOut", v => v.LeftOut, Form.Count },
                { "received", v => v.Received, Form.Count },
                { "percentMaximum", v => v.PercentMaximum, Form.Exact },
            }
        },
    };

    private static ObjectForm<T> Share<T>(Func<T, decimal> percent) =>
        new() { { "sharePercent", percent, Form.Exact } };

    private static ObjectForm<T> Change<T>(
        Func<T, decimal> percent,
        Func<T, LevelInUnit> level,
        Func<T, SideDirection> direction
    ) =>
        new()
        {
            { "sharePercent", percent, Form.Exact },
            { "level", level, s_level },
            { "direction", direction, Form.Word<SideDirection>().OrLeftOutFor(SideDirection.Both) },
        };
}
