using System.Runtime.InteropServices;

namespace StabilityStudy.Core.Analysis;

/// <summary>When specimens were tested in a run.</summary>
/// <param name="Run">Code of the run.</param>
/// <param name="First">The first test.</param>
/// <param name="Last">The last test.</param>
/// <param name="FarthestFromControls">The longest time between a test and the control next to it; zero without a control.</param>
internal readonly record struct TestedRun(
    string Run,
    DateTimeOffset First,
    DateTimeOffset Last,
    TimeSpan FarthestFromControls
)
{
    private ImmutableArray<DateTimeOffset> Controls { get; init; }

    /// <summary>The runs of an analyte in which a result was obtained.</summary>
    /// <param name="results">Its results.</param>
    /// <param name="controls">When the controls of each run were tested.</param>
    public static Dictionary<string, TestedRun> All(
        ReadOnlySpan<ResultRow> results,
        IReadOnlyDictionary<string, ImmutableArray<DateTimeOffset>> controls
    )
    {
        var runs = new Dictionary<string, TestedRun>(StringComparer.Ordinal);
        foreach (var row in results)
        {
            if (row is { Run.Length: > 0, TestedAt: { } testedAt, Result: not MissingResult })
            {
                ref var run = ref CollectionsMarshal.GetValueRefOrAddDefault(
                    runs,
                    row.Run,
                    out var isKnown
                );
                run = (
                    isKnown
                        ? run
                        : new(row.Run, testedAt, testedAt, default)
                        {
                            Controls = controls.GetValueOrDefault(row.Run, []),
                        }
                ).With(testedAt);
            }
        }

        return runs;
    }

    private TestedRun With(DateTimeOffset testedAt)
    {
        var next = Controls.IsEmpty ? TimeSpan.Zero : TimeSpan.MaxValue;
        foreach (var control in Controls)
        {
            var away = (control - testedAt).Duration();
            next = away < next ? away : next;
        }

        return this with
        {
            First = testedAt < First ? testedAt : First,
            Last = testedAt > Last ? testedAt : Last,
            FarthestFromControls = next > FarthestFromControls ? next : FarthestFromControls,
        };
    }
}
