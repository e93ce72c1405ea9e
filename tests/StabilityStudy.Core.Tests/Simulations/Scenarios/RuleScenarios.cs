using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Distributions;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>
/// Designs whose errors runs, baselines, calibration and losses bring in unseen: specimens whose own change has an SD, each result with a run error and a repeat error. Unless said otherwise 40 specimens on ten days, run SD and repeat SD
/// 1.41 % (CV 2 %), and specimens that differ by an SD of 3 %.
/// </summary>
internal sealed record RuleScenarios(Collection Collection)
{
    private const double Allowed = 15;

    /// <summary>True mean change, percent of the value at collection.</summary>
    public double MeanPercent { get; init; } = MeanScenarios.Limit;

    /// <summary>SD of the specimens' own changes, percent.</summary>
    public double SpecimenSd { get; init; } = 3;

    public double RunSd { get; init; } = 1.41;

    public double RepeatSd { get; init; } = 1.41;

    /// <summary>SD of the logarithm of the true baselines.</summary>
    public double LevelSpread { get; init; } = 0.15;

    /// <summary>Median of the true baselines.</summary>
    public double MedianLevel { get; init; } = 30;

    /// <summary>Level from which the change sets in and level at which it is <see cref="MeanPercent"/>, straight between and beyond; null where it is the same at every level.</summary>
    public (double None, double Full)? ByLevel { get; init; }

    /// <summary>Level above which alone the change happens; null where it happens at every level.</summary>
    public double? OnlyAbove { get; init; }

    /// <summary>Share of specimens with a further change, and how large it is, percent.</summary>
    public (double Share, double Percent) Odd { get; init; }

    /// <summary>By how much every delayed run reads off, percent.</summary>
    public double DelayedRunsPercent { get; init; }

    /// <summary>Delay of baseline and delayed test, in hours, where the change runs with ln(1 + t/1 h) from collection; null where it is that from the baseline.</summary>
    public (double Baseline, double Delayed)? SinceCollection { get; init; }

    /// <summary>Bridging results in each run; 0 for none.</summary>
    public int BridgingResults { get; init; }

    /// <summary>Share of specimens that lose their delayed result, whatever they are.</summary>
    public double LostAtRandom { get; init; }

    /// <summary>Share of specimens that change by 30 %, of which a share is lost.</summary>
    public (double Share, double Lost) Unstable { get; init; }

    /// <summary>Whether the doubts that a change depends on the level, or differs between the sides of one, are passed over: what would be claimed without them.</summary>
    public bool LevelDoubtAside { get; init; }

    /// <summary>What the study concludes by.</summary>
    public SimulatedStudy Study { get; init; } = SimulatedStudy.OfMean;

    /// <summary>The mean for which just the required share lies within 15 %.</summary>
    public RuleScenarios AtShare(double share) =>
        this with
        {
            MeanPercent =
                Allowed
                - (
                    Normal.Quantile(share)
                    * Math.Sqrt(
                        (SpecimenSd * SpecimenSd) + (2 * RepeatSd * RepeatSd) + (2 * RunSd * RunSd)
                    )
                ),
            Study = ShareScenarios.Exact,
        };

    public Scenario As(string section, string data, Reading reading) =>
        new(
            section,
            FormattableString.Invariant($"{data}; {Collection.Name}"),
            Collection.Day.Length,
            reading,
            Claims
        );

    private bool Claims(SeededRandom random)
    {
        var first = Collection.Shifts(Collection.BaselineRun.Max() + 1, random, RunSd);
        var second = Collection.Shifts(Collection.DelayedRun.Max() + 1, random, RunSd);
        var pairs = Enumerable
            .Range(0, Collection.Day.Length)
            .Select(i =>
                Pair(
                    i,
                    first[Collection.BaselineRun[i]],
                    second[Collection.DelayedRun[i]] + DelayedRunsPercent,
                    random
                )
            )
            .ToImmutableArray();
        return LevelDoubtAside
            ? Study
                .Criteria(pairs)
                .All(result =>
                    result.Verdict == Verdict.Met
                    || result.Reasons is [LevelDependentReason, IntervalReason]
                    || IsOneSideAlone(result)
                )
            : (
                BridgingResults == 0 ? Study : Study.Bridged(Bridging(first, second, random))
            ).Supports(pairs);
    }

    private static bool IsOneSideAlone(CriterionResult result) =>
        result is DecisionLevelResult { Reasons: [OneSideOfLevelReason], Levels: var levels }
        && levels.All(level =>
            level.Verdict == Verdict.Met || level.Reason is OneSideOfLevelReason
        );

    private PairRecord Pair(int number, double baselineRun, double delayedRun, SeededRandom random)
    {
        var level = MedianLevel * Math.Exp(LevelSpread * random.NextNormal());
        var mean =
            ByLevel is var (none, full) && ByLevel is not null
                ? MeanPercent * (level - none) / (full - none)
            : level <= OnlyAbove ? 0
            : MeanPercent;
        var change =
            Unstable.Share > 0 && random.NextDouble() < Unstable.Share
                ? 30
                : mean
                    + (SpecimenSd * random.NextNormal())
                    + (Odd.Share > 0 && random.NextDouble() < Odd.Share ? Odd.Percent : 0);
        var (baselineHours, hours) = SinceCollection ?? (SimulatedPairs.BaselineHours, 6);
        var before = SinceCollection is null
            ? 0
            : change * Math.Log(1 + baselineHours) / Math.Log(1 + hours);
        var x =
            level
            * (1 + (before / 100))
            * (1 + ((baselineRun + (RepeatSd * random.NextNormal())) / 100));
        var y =
            level
            * (1 + (change / 100))
            * (1 + ((delayedRun + (RepeatSd * random.NextNormal())) / 100));
        var lost =
            (Unstable.Share > 0 && change == 30 && random.NextDouble() < Unstable.Lost)
            || (LostAtRandom > 0 && random.NextDouble() < LostAtRandom);
        return lost
            ? SimulatedPairs.SaidTooLittle(number, x, Collection)
            : SimulatedPairs.Compared(
                number,
                x,
                y,
                Collection,
                hours: hours,
                baselineHours: baselineHours
            );
    }

    /// <summary>Each run's mean of its bridging results, which read what the run adds.</summary>
    private ImmutableArray<(string Run, double Mean)> Bridging(
        double[] first,
        double[] second,
        SeededRandom random
    ) =>
        [
            .. first.Select((run, i) => ("B" + Number(i), Read(random, run))),
            .. second.Select((run, i) => ("D" + Number(i), Read(random, run + DelayedRunsPercent))),
        ];

    private static string Number(int run) => run.ToString(CultureInfo.InvariantCulture);

    private double Read(SeededRandom random, double run) =>
        40
        * (1 + (run / 100))
        * (1 + (RepeatSd / Math.Sqrt(BridgingResults) * random.NextNormal() / 100));
}
