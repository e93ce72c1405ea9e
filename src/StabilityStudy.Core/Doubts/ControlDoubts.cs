namespace StabilityStudy.Core.Doubts;

/// <summary>Runs that no control vouches for, whose pairs are left out.</summary>
public static class ControlDoubts
{
    private const int MostNamed = 5;

    /// <summary>The doubts about a cell; none when the protocol keeps controls elsewhere.</summary>
    public static IEnumerable<VerdictReason> Of(
        ImmutableArray<PairRecord> pairs,
        ControlEvidence? evidence
    )
    {
        if (evidence is null)
        {
            yield break;
        }

        var withoutRun = pairs
            .Where(pair =>
                pair.Status == PairStatus.RunNotInControl
                && (
                    pair.Baseline is not { Run.Length: > 0 }
                    || pair.Delayed is not { Run.Length: > 0 }
                )
            )
            .Select(pair => pair.Specimen)
            .ToImmutableArray();
        if (!withoutRun.IsEmpty)
        {
            yield return new RunNotRecordedReason(withoutRun);
        }

        if (!evidence.RunsWithoutControl.IsEmpty)
        {
            yield return new RunWithoutControlReason(evidence.RunsWithoutControl);
        }

        if (!evidence.RunsOutOfControl.IsEmpty)
        {
            yield return new ControlOutOfRangeReason(evidence.RunsOutOfControl);
        }
    }

    /// <summary>The first codes and how many more there are.</summary>
    public static string Names(ImmutableArray<string> codes) =>
        string.Join(", ", codes.Take(MostNamed))
        + (
            codes.Length > MostNamed
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $" and {codes.Length - MostNamed} more"
                )
                : ""
        );
}
