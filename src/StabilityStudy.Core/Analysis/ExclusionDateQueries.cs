using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>Whether a documented exclusion was decided when it could be: after the collection and before its result was known.</summary>
internal static class ExclusionDateQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind ExclusionBeforeCollection = Kinds.Add("exclusion-before-collection", QueryRank.Stop, "an exclusion is dated before its specimen was collected", "correct the date");
    internal static readonly QueryKind ExclusionAfterResult = Kinds.Add("exclusion-after-result", QueryRank.Exclusion, "an exclusion was decided after the delayed result was there", "nothing: the pair counts as outside the allowable difference", point: "Excluded when the result was known.");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(StudyRows rows) =>
        rows
            .Inputs.Facts.Exclusions.Select(exclusion =>
                OfOne(
                    exclusion,
                    rows.TubesOf(exclusion.Specimen),
                    rows.ResultsOf(exclusion.Specimen)
                )
            )
            .OfType<DataQuery>();

    private static DataQuery? OfOne(
        Exclusion exclusion,
        IEnumerable<TubeRow> tubes,
        IEnumerable<ResultRow> results
    )
    {
        var collected = tubes.Select(tube => Day(tube.CollectedAt)).ToImmutableArray();
        if (!collected.IsEmpty && exclusion.On < collected.Min())
        {
            return ExclusionQueries.Query(
                ExclusionBeforeCollection,
                exclusion,
                DateOf(exclusion),
                "is dated before the specimen was collected.",
                "Correct the date, or the time of collection."
            );
        }

        var known = results.Any(row =>
            row is { Occasion.IsBaseline: false, TestedAt: { } testedAt, Result: not MissingResult }
            && (exclusion.Analyte ?? row.Analyte) == row.Analyte
            && (exclusion.TimePoint ?? row.Occasion.TimePoint) == row.Occasion.TimePoint
            && exclusion.IsAfter(testedAt)
        );
        return known
            ? ExclusionQueries.Query(
                ExclusionAfterResult,
                exclusion,
                DateOf(exclusion),
                exclusion.Time is null
                    ? "was decided on the day of its result or later, so that the result could be known."
                    : "was decided when its result could be known.",
                exclusion.Time is null
                    ? "Add the time of the decision if it came first; else the pair counts as outside the allowable difference."
                    : "Nothing: the pair counts as outside the allowable difference."
            )
            : null;
    }

    private static DateOnly Day(DateTimeOffset at) => DateOnly.FromDateTime(at.DateTime);

    private static string DateOf(Exclusion exclusion) =>
        FormattableString.Invariant($"{exclusion.On:yyyy-MM-dd}");
}
