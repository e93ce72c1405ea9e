using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Core.Estimates;

/// <summary>The compared pairs of a cell as numbers.</summary>
/// <param name="Compared">The compared pairs, by specimen.</param>
/// <param name="Pairs">Baseline x and delayed y, exact, in the analyte's unit.</param>
/// <param name="Errors">In which ways they share an error.</param>
/// <param name="SameRun">Whether baseline and delayed tube of every pair were tested together: one recorded run, instrument, lot and calibration, and test times close to each other.</param>
/// <param name="OneRunWithin">Longest time between the two tests for which one recorded run counts as one run.</param>
/// <param name="Decimals">Decimals of a reported result.</param>
internal sealed record CellData(
    ImmutableArray<PairRecord> Compared,
    ExactPairs Pairs,
    SharedErrors Errors,
    bool SameRun,
    TimeSpan OneRunWithin,
    int Decimals
)
{
    /// <summary>Smallest step of a reported result, in the analyte's unit.</summary>
    public double ReportingIncrement => Math.Pow(10, -Decimals);

    /// <summary>The smallest baseline, in the analyte's unit; 1 without pairs.</summary>
    public double SmallestBaseline
    {
        get
        {
            var smallest = Pairs.X is [var first, ..] ? first : 1;
            foreach (var x in Pairs.X)
            {
                smallest = x < smallest ? x : smallest;
            }

            return smallest;
        }
    }

    // Of these numbers alone: a copy with others finds its own.
    private SlopesOfPairs? _levelSlopes;

    /// <summary>The slopes of the change on level and baseline, see <see cref="LevelSlopes.Fit"/>; null where it is refused. Found at the first question.</summary>
    public LevelSlopes? LevelSlopes
    {
        get
        {
            var known = _levelSlopes;
            if (known is null || !ReferenceEquals(known.Pairs, Pairs))
            {
                var fit = Statistics.Regression.LevelSlopes.Fit(
                    Pairs.X.AsSpan(),
                    Pairs.Y.AsSpan(),
                    Errors.DelayedRuns.Cluster
                );
                known = new(Pairs, fit.Value);
                _levelSlopes = known;
            }

            return known.Slopes;
        }
    }

    private sealed record SlopesOfPairs(ExactPairs Pairs, LevelSlopes? Slopes);

    /// <summary>Takes the compared pairs out of a cell's pairs.</summary>
    public static CellData Of(ImmutableArray<PairRecord> pairs, int decimals, TimeSpan oneRunWithin)
    {
        var (compared, exact) = NumbersOf(pairs);
        return new CellData(
            compared,
            exact,
            SharedErrors.Of(compared),
            HaveSameRun(compared, oneRunWithin),
            oneRunWithin,
            decimals
        );
    }

    /// <summary>The compared pairs among the pairs of a cell, with their exact values.</summary>
    public static (ImmutableArray<PairRecord> Compared, ExactPairs Pairs) NumbersOf(
        ImmutableArray<PairRecord> pairs
    )
    {
        var compared = pairs.Keep(pair => pair.IsOfNumbers);
        return (compared, Exact(compared));
    }

    /// <summary>These numbers, where the same pairs are compared among the pairs of a cell; null otherwise.</summary>
    public CellData? IfOf(ImmutableArray<PairRecord> pairs) =>
        AreCompared(pairs.Keep(pair => pair.IsOfNumbers)) ? this : null;

    /// <summary>The same pairs with other values, as they were tested on the same days and in the same runs.</summary>
    /// <param name="pairs">The pairs of the cell in their order, the same ones compared.</param>
    public CellData WithValuesOf(ImmutableArray<PairRecord> pairs)
    {
        var (compared, exact) = NumbersOf(pairs);
        return this with { Compared = compared, Pairs = exact };
    }

    private static ExactPairs Exact(ImmutableArray<PairRecord> compared)
    {
        var baselines = new decimal[compared.Length];
        var delayed = new decimal[compared.Length];
        for (var i = 0; i < compared.Length; i++)
        {
            (baselines[i], delayed[i]) = compared[i].Values();
        }

        return ExactPairs.Create(baselines, delayed);
    }

    /// <summary>In which ways some pairs share an error; those of the compared ones are known already.</summary>
    public SharedErrors ErrorsOf(ImmutableArray<PairRecord> pairs) =>
        AreCompared(pairs) ? Errors : SharedErrors.Of(pairs);

    /// <summary>How many days and runs some pairs come from, counted no further than to so many; those of the compared ones are known already.</summary>
    public ClusterCounts CountsUpTo(int enough, ImmutableArray<PairRecord> pairs) =>
        AreCompared(pairs) ? Errors.Counts : SharedErrors.CountsUpTo(enough, pairs);

    /// <summary>The exact values of some pairs of numbers; those of the compared ones are known already.</summary>
    public ExactPairs ExactOf(ImmutableArray<PairRecord> pairs) =>
        AreCompared(pairs) ? Pairs : Exact(pairs);

    private bool AreCompared(ImmutableArray<PairRecord> pairs)
    {
        if (pairs.Length != Compared.Length)
        {
            return false;
        }

        for (var i = 0; i < pairs.Length; i++)
        {
            if (!ReferenceEquals(pairs[i], Compared[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Without some compared pairs; the numbers of days and runs and whether one run held both tests stay as they were.</summary>
    public CellData WithoutPairs(Func<PairRecord, bool> leaveOut)
    {
        var data = this;
        for (var i = Compared.Length - 1; i >= 0; i--)
        {
            if (leaveOut(Compared[i]))
            {
                data = data with
                {
                    Compared = data.Compared.RemoveAt(i),
                    Pairs = data.Pairs.Without(i),
                    Errors = data.Errors.Without(i),
                };
            }
        }

        return data;
    }

    // The text of a run is only as true as what was typed: what one run cannot differ in must not differ either.
    private static bool HaveSameRun(ImmutableArray<PairRecord> compared, TimeSpan within) =>
        !compared.IsEmpty
        && compared.All(pair =>
            pair
                is {
                    Baseline: { Run.Length: > 0, TestedAt: { } first } baseline,
                    Delayed: { TestedAt: { } second } delayed
                }
            && (baseline.Run, baseline.Instrument, baseline.Lot, baseline.Calibration)
                == (delayed.Run, delayed.Instrument, delayed.Lot, delayed.Calibration)
            && (second - first).Duration() <= within
        );
}
