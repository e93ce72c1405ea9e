using System.Runtime.InteropServices;

namespace StabilityStudy.Core.Analysis;

/// <summary>A run with results of specimens, and when they were tested.</summary>
/// <param name="Run">Code of the run.</param>
/// <param name="First">The first test; null where no time is recorded.</param>
/// <param name="Last">The last test.</param>
/// <param name="FarthestFromControls">The longest time between a test and the control next to it; zero without a control.</param>
internal readonly record struct TestedRun(
    string Run,
    DateTimeOffset? First,
    DateTimeOffset? Last,
    TimeSpan FarthestFromControls
)
{
    private ImmutableArray<DateTimeOffset> Controls { get; init; }

    /// <summary>The runs of an analyte in which a result was obtained.</summary>
    /// <param name="results">Its results.</param>
    /// <param name="controls">Its control results.</param>
    public static ICollection<TestedRun> All(
        ReadOnlySpan<ResultRow> results,
        ImmutableArray<ControlRow> controls
    )
    {
        var times = controls
            .Where(row => row.Kind == ControlKind.Control)
            .GroupBy(row => row.Run, row => row.TestedAt)
            .ToDictionary(run => run.Key, run => run.ToImmutableArray());
        var runs = new Dictionary<string, TestedRun>(StringComparer.Ordinal);
        foreach (var row in results)
        {
            if (row.Run.Length == 0 || row.Result is MissingResult)
            {
                continue;
            }

            ref var run = ref CollectionsMarshal.GetValueRefOrAddDefault(
                runs,
                row.Run,
                out var isKnown
            );
            if (!isKnown)
            {
                run = new(row.Run, null, null, TimeSpan.Zero)
                {
                    Controls = times.GetValueOrDefault(row.Run, []),
                };
            }

            run = row.TestedAt is { } testedAt ? run.With(testedAt) : run;
        }

        return runs.Values;
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
            First = First < testedAt ? First : testedAt,
            Last = Last > testedAt ? Last : testedAt,
            FarthestFromControls = next > FarthestFromControls ? next : FarthestFromControls,
        };
    }
}
