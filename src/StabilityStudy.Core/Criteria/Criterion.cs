using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Drift;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Core.Planning;

namespace StabilityStudy.Core.Criteria;

/// <summary>A prespecified test on the data of a cell. Its abstract members are what a kind of criterion has to state in Core.</summary>
/// <param name="Id">Key used in the files.</param>
/// <param name="Limits">Which limit each analyte is held to; an analyte that is not listed is not tested by this criterion. Criteria that count changes of side or class need no limit: there it is null.</param>
/// <param name="Groups">Patient groups it applies to; empty means all.</param>
/// <param name="ConfidenceLevel">0.90 means a 90 % interval for bias, a one-sided bound of that level for individual agreement.</param>
public abstract record Criterion(
    string Id,
    ImmutableArray<LimitChoice> Limits,
    ImmutableArray<string> Groups,
    double ConfidenceLevel
)
{
    /// <summary>Who chose the share that it requires or allows, and why; not stated for one that holds no share.</summary>
    public Rationale Rationale { get; init; } = Rationale.NotStated;

    /// <summary>Which kind it is.</summary>
    public abstract CriterionKind Kind { get; }

    /// <summary>Whether it holds a mean, or a line or drift of means, by a two-sided interval; else it holds a share of specimens by a one-sided bound.</summary>
    public abstract bool JudgesMean { get; }

    /// <summary>Whether the estimate alone is held to the limit, so that the chance of a false claim is not controlled.</summary>
    public abstract bool IsEstimateAlone { get; }

    /// <summary>The levels that it judges, in the unit of the analyte, empty where these are the analyte's decision levels; null for one that judges no levels.</summary>
    public abstract ImmutableArray<decimal>? JudgedLevels { get; }

    /// <summary>The share of specimens that must be shown to stay as they are, percent; null for one that holds no share.</summary>
    public abstract decimal? SharePercentRequired { get; }

    /// <summary>Whether it applies to a patient group.</summary>
    public bool AppliesTo(string group) => Groups.IsEmpty || Groups.Contains(group);

    /// <summary>Whether it counts every pair of a cell, so that leaving some out of means and lines changes nothing that it says.</summary>
    internal virtual bool CountsEveryPair => false;

    /// <summary>What it says about a cell.</summary>
    /// <param name="limit">The analyte's limit; null for a criterion that counts changes.</param>
    /// <param name="cell">What it is judged on.</param>
    internal abstract CriterionResult Evaluate(Limit? limit, CellEvidence cell);

    /// <summary>Whether it is met, which may be known sooner than all that it says: simulations ask nothing else.</summary>
    /// <param name="limit">The analyte's limit; null for a criterion that counts changes.</param>
    /// <param name="cell">What it is judged on.</param>
    internal virtual bool IsMet(Limit? limit, CellEvidence cell) =>
        Evaluate(limit, cell).Verdict == Verdict.Met;

    /// <summary>What the cell would conclude if something that only this kind rests on were otherwise: further specimens, another scale, another line. Asked once for all criteria of the kind.</summary>
    /// <param name="results">What every criterion of the cell says.</param>
    /// <param name="cell">What they are judged on.</param>
    internal abstract IEnumerable<RobustnessLine> Sensitivity(
        ImmutableArray<CriterionResult> results,
        CellEvidence cell
    );

    /// <summary>The chance that it is met, 0 to 1, as if no other criterion were asked; null where there is no formula.</summary>
    /// <param name="allowablePercent">Its limit, percent.</param>
    /// <param name="supposed">How results arise.</param>
    /// <param name="meanPercent">Mean change, percent.</param>
    internal abstract double? Power(
        double allowablePercent,
        SupposedResults supposed,
        double meanPercent
    );

    /// <summary>The smallest mean change, percent, at which it is no longer true of normal changes.</summary>
    /// <param name="allowablePercent">Its limit, percent.</param>
    /// <param name="spreadPercent">SD of the changes, percent.</param>
    internal abstract double SmallestUntruePercent(double allowablePercent, double spreadPercent);

    /// <summary>The limit of a criterion that needs one.</summary>
    private protected Limit Held(Limit? limit) =>
        limit
        ?? throw new ArgumentException(
            $"Criterion {Id} names no limit of the protocol.",
            nameof(limit)
        );
}

/// <summary>The limit that one analyte is held to.</summary>
/// <param name="Analyte">Key of the analyte.</param>
/// <param name="Limit">Key of its limit; null where the criterion needs none.</param>
public sealed record LimitChoice(string Analyte, string? Limit);
