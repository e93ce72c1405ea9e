using StabilityStudy.Core.Bench;

namespace StabilityStudy.Reporting.Bench;

/// <summary>What stands on one page of the run list.</summary>
/// <param name="Date">The date of its times.</param>
/// <param name="WithoutTime">Tubes whose collection time is in question.</param>
/// <param name="Runs">Runs, or parts of them.</param>
internal sealed record RunListPage(
    DateOnly Date,
    ImmutableArray<WaitingTube> WithoutTime,
    ImmutableArray<RunPart> Runs
)
{
    /// <summary>Whether nothing by the clock stands on it yet.</summary>
    public bool IsEmpty => Runs.IsEmpty;

    /// <summary>How many rows it has.</summary>
    public int Count => WithoutTime.Length + Runs.Sum(run => run.Tubes.Length);

    /// <summary>The groups on it.</summary>
    public IEnumerable<PatientGroup> Groups =>
        WithoutTime
            .Select(tube => tube.Group)
            .Concat(Runs.SelectMany(run => run.Tubes).Select(tube => tube.Waiting.Group));

    /// <summary>The page with one more load.</summary>
    public RunListPage With(Run run, ImmutableArray<DueTube> tubes, Load load, bool isContinued) =>
        this with
        {
            Runs =
                Runs is [.., var last] && last.Run == run
                    ? Runs.SetItem(
                        Runs.Length - 1,
                        last with
                        {
                            Tubes = last.Tubes.AddRange(tubes),
                            Loads = last.Loads.Add(load),
                        }
                    )
                    : Runs.Add(new RunPart(run, tubes, [load], isContinued)),
        };
}

/// <summary>A run, or what of it stands on one page.</summary>
/// <param name="Run">The run.</param>
/// <param name="Tubes">Its tubes there.</param>
/// <param name="Loads">Its loads there.</param>
/// <param name="IsContinued">Whether it began on an earlier page.</param>
internal sealed record RunPart(
    Run Run,
    ImmutableArray<DueTube> Tubes,
    ImmutableArray<Load> Loads,
    bool IsContinued
);
