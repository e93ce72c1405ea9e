using System.Collections.Immutable;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>Whether a documented exclusion was decided when it could be: after the collection and before its result was known.</summary>
internal static class ExclusionDateQueries
{
    public static IEnumerable<DataQuery> Of(StudyInputs inputs)
    {
        if (inputs.Facts.Exclusions.IsEmpty)
        {
            return [];
        }

        var tubes = inputs.Tubes.ToLookup(tube => tube.Specimen);
        var results = inputs.Results.ToLookup(row => row.Specimen);
        return inputs
            .Facts.Exclusions.Select(exclusion =>
                OfOne(exclusion, tubes[exclusion.Specimen], results[exclusion.Specimen])
            )
            .OfType<DataQuery>();
    }

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
                "exclusion-before-collection",
                Severity.Stop,
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
            && exclusion.On >= Day(testedAt)
        );
        return known
            ? ExclusionQueries.Query(
                "exclusion-after-result",
                Severity.Attention,
                exclusion,
                DateOf(exclusion),
                "was decided when its result could be known.",
                "Show that the reason does not depend on the result."
            )
            : null;
    }

    private static DateOnly Day(DateTimeOffset at) => DateOnly.FromDateTime(at.DateTime);

    private static string DateOf(Exclusion exclusion) =>
        FormattableString.Invariant($"{exclusion.On:yyyy-MM-dd}");
}
