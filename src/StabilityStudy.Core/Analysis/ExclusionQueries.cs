using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>Documented exclusions that were not applied, or not to every pair that they name.</summary>
internal static class ExclusionQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind ExclusionOfFailedPair = Kinds.Add("exclusion-of-failed-pair", QueryRank.Rerun, "an exclusion names a failed tube, which counts as outside all the same", "remove the exclusion, or explain it in a deviation");
    internal static readonly QueryKind ExclusionWithoutEffect = Kinds.Add("exclusion-without-effect", QueryRank.WithoutEffect, "an exclusion leaves out nothing", "correct or remove it");
    internal static readonly QueryKind ExclusionNotNeeded = Kinds.Add("exclusion-not-needed", QueryRank.ForTheRecord, "an exclusion changes nothing: its pairs are left out for another reason already", "nothing");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(StudyInputs inputs, ImmutableArray<Sequence> sequences)
    {
        if (inputs.Facts.Exclusions.IsEmpty)
        {
            return [];
        }

        var pairs = sequences
            .SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Pairs.Select(pair => (cell.Key, Pair: pair)))
            .ToLookup(item => item.Pair.Specimen);
        return inputs.Facts.Exclusions.SelectMany(exclusion =>
            OfOne(
                exclusion,
                [
                    .. pairs[exclusion.Specimen]
                        .Where(item =>
                            (exclusion.Analyte ?? item.Key.Analyte) == item.Key.Analyte
                            && (exclusion.TimePoint ?? item.Key.TimePoint) == item.Key.TimePoint
                        )
                        .Select(item => item.Pair),
                ]
            )
        );
    }

    private static IEnumerable<DataQuery> OfOne(
        Exclusion exclusion,
        ImmutableArray<PairRecord> pairs
    )
    {
        if (pairs.FirstOrDefault(pair => pair.Status == PairStatus.Failed) is { } failed)
        {
            yield return Query(
                ExclusionOfFailedPair,
                exclusion,
                exclusion.Specimen,
                $"is not applied where the delayed tube failed ({failed.Reason}): it counts as outside the allowable difference.",
                "Nothing: leaving out tubes that failed would make the storage look better than it is."
            );
        }
        else if (pairs.IsEmpty)
        {
            yield return Query(
                ExclusionWithoutEffect,
                exclusion,
                exclusion.Specimen,
                "names no pair of this study.",
                "Correct the specimen, analyte or time point."
            );
        }
        else if (pairs.All(pair => pair.Status != PairStatus.Excluded))
        {
            yield return Query(
                ExclusionNotNeeded,
                exclusion,
                exclusion.Specimen,
                "changes nothing: its pairs are left out for another reason already."
            );
        }
    }

    /// <summary>A query about an exclusion, at its place in study.toml.</summary>
    internal static DataQuery Query(
        QueryKind kind,
        Exclusion exclusion,
        string observed,
        string message,
        string? action = null
    ) =>
        new(
            kind,
            new("study.toml", exclusion.Line, "exclusion"),
            observed,
            $"The exclusion of specimen {exclusion.Specimen} {message}",
            action
        )
        {
            Specimen = new(exclusion.Specimen, null),
        };
}
