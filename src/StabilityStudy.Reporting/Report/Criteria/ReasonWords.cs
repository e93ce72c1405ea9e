using System.Diagnostics;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Queries;
using StabilityStudy.Statistics.Location;

namespace StabilityStudy.Reporting.Report.Criteria;

/// <summary>Why a verdict is what it is, as a clause.</summary>
internal static class ReasonWords
{
    public static string Of(VerdictReason reason) =>
        reason switch
        {
            NotComputableReason { Why: var why } => RefusalWords.Clause(why),
            NothingCountedReason => "no specimen can be counted",
            TooFewDaysReason r =>
                $"only {Whole(r.Days)} {(r.Days == 1 ? "collection day" : "collection days")}, at least {Whole(r.Required)} required: a run's error does not average out over specimens",
            TooFewRunsReason r =>
                $"{(r.Of == IntervalSource.BaselineRuns ? "baselines" : "delayed results")} of only {Counted.Of(r.Runs, "run")}, at least {Whole(r.Required)} required: a run's error does not average out over specimens",
            NoValueAtCollectionReason r =>
                $"the value at collection computed for {(r.Specimens.Length == 1 ? "specimen" : "specimens")} {ControlDoubts.Names(r.Specimens)} is not above zero, so no percentage of it means anything",
            UncountedPairsReason r =>
                $"{Counted.Of(r.Specimens, "specimen")} without a pair of measured results, which no individual criterion counts",
            IntervalReason r => $"the interval of {Of(r.Figure)} {Of(r.Place)} the allowable bias",
            NoLevelReason => "the protocol states no decision level of the analyte",
            LevelOutsideCoverageReason r =>
                $"{Of(r.Level)} is outside what the baselines cover: {Of(r.Gap)}",
            OpenIfRunsMovedReason r =>
                $"the runs could by chance have moved every change by {Text(r.Percent, "0.0")} %{(r.Then is MoreOutsideIfMoved ? " of the allowable difference" : "")}: {Of(r.Then)}",
            MeanAloneReason =>
                "the rule holds the mean alone to the limit, so the chance of a false claim is not controlled",
            SameChangesReason r =>
                $"all changes are the same, so the data tell no more than ± half a reporting increment ({Text(r.HalfIncrement, "0.###")})",
            LevelDependentReason r =>
                $"the change depends on the level: at {Text(r.Level, "0.##")} {r.Unit} a change of {Interval(r.PredictedPercent, r.LowerPercent, r.UpperPercent)} is predicted, which is not inside the allowable bias, and the mean over all levels does not show it",
            OneSideOfLevelReason r =>
                $"at {Of(r.Level)} the fitted change is allowable, but specimens {(r.Beside.IsAbove ? "at or above" : "below")} it alone change by {Interval(r.Beside.Percent, r.Beside.LowerPercent, r.Beside.UpperPercent)}",
            ShareRefutedReason r =>
                $"the data show that fewer than {Percent(r.SharePercent)} of specimens stay within the allowable difference",
            ShareOpenReason r =>
                $"the data leave open whether {Percent(r.SharePercent)} of specimens stay within the allowable difference",
            ShareShownReason r =>
                $"the data show that at least {Percent(r.SharePercent)} of specimens stay within the allowable difference",
            TooFewMeasuredReason r =>
                $"too few pairs were measured both times to show {Percent(r.SharePercent)}, were they all within the allowable difference; two results beyond a limit agree without showing by how much they differ",
            AgreeingBeyondLimitReason r =>
                $"{Percent(r.SharePercent)} is reached only with {Counted.Of(r.AgreeingBeyond, "specimen")} whose results both lie beyond a limit of measurement, which agree without showing by how much they differ",
            ShareAloneReason =>
                "the rule holds the observed share alone to the required one, so the chance of a false claim is not controlled",
            UndecidableReason r =>
                $"{Whole(r.Undecidable)} of {Whole(r.Counted)} specimens gave no result or cannot be decided, and count as outside; were they inside, the lower bound of the share would be {Text(100 * r.LowerBoundIfInside, "0.##")} %",
            PairsOnOneLineReason =>
                "the pairs lie on one line, so the data tell no more than the reporting increment",
            ChangesFewReason r =>
                $"the data show that at most {Percent(r.SharePercent)} of specimens clearly {ReclassificationWords.Move(r.Direction)} {string.Join(" and of ", r.Levels.Select(Text))} {r.Unit}",
            ChangesManyReason r =>
                $"the data show that more than {Percent(r.SharePercent)} of specimens clearly {ReclassificationWords.Move(r.Direction)} {Of(r.Level)}",
            ChangesOpenReason r =>
                $"the data leave open whether at most {Percent(r.SharePercent)} of specimens clearly {ReclassificationWords.Move(r.Direction)} {Of(r.Level)}",
            ChangesTogetherReason r =>
                $"the data {r.Found switch { Verdict.Met => "show that at most", Verdict.NotMet => "show that more than", Verdict.Inconclusive => "leave open whether at most" }} {Percent(r.SharePercent)} of specimens clearly {ReclassificationWords.Move(r.Direction)} any of {string.Join(" and ", r.Levels.Select(Text))} {r.Unit}, each counted once",
            TooFewNearReason r =>
                $"only {Counted.Of(r.Counted, "specimen")} with a baseline from {Text(r.Lowest)} to {Text(r.Highest)} {r.Unit}, at least {Whole(r.Required)} required: others tell nothing about changes of side",
            ClassesKeptReason r =>
                $"the data show that at least {Percent(r.SharePercent)} of specimens keep their class",
            ClassesLostReason r =>
                $"the data show that fewer than {Percent(r.SharePercent)} of specimens keep their class",
            ClassesOpenReason r =>
                $"the data leave open whether {Percent(r.SharePercent)} of specimens keep their class",
            TooFewWeakPositivesReason r =>
                $"only {Whole(r.WeakPositives)} weak positives, at least {Whole(r.Required)} required: these are the ones that a delay loses first",
            LimitNotInPercentReason =>
                "drift is measured in percent, and the limit is not in percent alone",
            NoShapeReason => "the protocol declares no shape of drift",
            ShapesDisagreeReason =>
                "the declared shapes of drift lead to different verdicts, and nothing in the data says which is true",
            ShapeMisfitReason r =>
                $"the mean change at {string.Join(", ", r.TimePoints.Select(point => point.ToString()))} does not follow the declared shape",
            SameDriftReason =>
                "all specimens drift by the same amount, so the data tell no more than the reporting increment",
            RunNotRecordedReason r =>
                $"the run is not recorded, so no control vouches for it: specimens {ControlDoubts.Names(r.Specimens)}",
            RunWithoutControlReason r =>
                $"runs without a control within its range: {ControlDoubts.Names(r.Runs)}",
            ControlOutOfRangeReason r =>
                $"runs with a control outside its range: {ControlDoubts.Names(r.Runs)}",
            FirstTestTooLateReason r =>
                $"first tested at {r.First}, beyond twice today's window of {DurationText.Format(r.Standard)}: nobody looked at the stretch between",
            CollectionNotCompleteReason r =>
                $"collection is not complete: {Whole(r.Usable)} of {Whole(r.Planned)} planned specimens have a valid baseline",
            AddedAfterLookReason r =>
                $"{Counted.Of(r.Added, "specimen")} added after the data had been looked at on {Day(r.LookedAt)} and not counted: who adds specimens until the figures look good finds support in any data",
            StoppedAfterLookReason r =>
                $"the data were looked at on {Day(r.LookedAt)} with {Whole(r.Usable)} of {Whole(r.Planned)} specimens, and no more count: who looks before the end can stop when the figures look good",
            PartsNotSupportedReason r =>
                $"one window for all needs each instrument to support it on its own specimens, and {ScopeWords.List(r.Parts.Select(part => $"{ScopeWords.Of(part.Code)} is {TradeWords.Of(part.Conclusion)}"))}",
            InstrumentNotRecordedReason r =>
                $"{Counted.Of(r.Specimens, "specimen")} without a recorded instrument may belong to any of them",
            TestedOnTwoInstrumentsReason r =>
                $"baseline and delayed result on different instruments, which shows nothing of either alone: specimens {ControlDoubts.Names(r.Specimens)}",
            TooManyLeftOutReason r =>
                $"{Whole(r.LeftOut)} of {Whole(r.Received)} specimens left out ({Text(100m * r.LeftOut / r.Received, "0.#")} %), at most {Text(r.PercentMaximum, "0.##")} % allowed: what is left out may be what speaks against the window",
            _ => throw new UnreachableException(reason.GetType().Name),
        };

    private static string Day(DateTimeOffset time) =>
        time.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Interval(double value, double lower, double upper) =>
        $"{NumberText.Change(value, 2)} % ({NumberText.Interval(lower, upper, 2)} %)";

    private static string Of(IntervalPlace place) =>
        place switch
        {
            IntervalPlace.ReachesLimit => "reaches beyond",
            IntervalPlace.Outside => "lies wholly beyond",
            IntervalPlace.Inside => "lies inside",
        };

    private static string Of(IntervalFigure figure) =>
        figure switch
        {
            MeanChangeFigure => "the mean change",
            ChangeAtLevelFigure { Level: var level } => $"the change predicted at {Of(level)}",
            PredictedChangeFigure => "the predicted change",
            _ => throw new UnreachableException(),
        };

    private static string Of(CoverageGap gap) =>
        gap switch
        {
            FewBaselines few =>
                $"{Whole(few.Below)} baselines below and {Whole(few.Above)} above it, at least {Whole(LevelCoverage.FewestOnEitherSide)} needed on either side",
            SpreadUnknown =>
                "without a between-run CV nothing tells whether the baselines spread far enough",
            SpreadTooSmall small =>
                $"the specimens spread by an SD of {Text(small.BetweenSpecimens, "0.###")} (that of the baselines less the analytical one), less than {Text(LevelCoverage.LeastSpread, "0.###")} times the analytical SD of {Text(small.Analytical, "0.###")} there",
            _ => throw new UnreachableException(),
        };

    private static string Of(MovedOutcome outcome) =>
        outcome switch
        {
            MoreOutsideIfMoved more =>
                $"{Whole(more.Outside)} of {Whole(more.Counted)} would then be outside, which leaves {Percent(more.SharePercent)} open",
            SidesOpenIfMoved => "the share that changes side would then be open",
            ClassesOpenIfMoved => "the share that keeps its class would then be open",
            _ => throw new UnreachableException(),
        };

    private static string Of(LevelInUnit level) => $"{NumberText.Plain(level.Level)} {level.Unit}";

    private static string Percent(decimal percent) => Text(percent, "0.##") + " %";

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Text(decimal number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Text(IFormattable number, string format) =>
        number.ToString(format, CultureInfo.InvariantCulture);
}
