using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Analysis;

/// <summary>What was not recorded, although a rule depends on it.</summary>
internal static class RecordQueries
{
    public static IEnumerable<DataQuery> Of(StudyInputs inputs) =>
        [
            .. inputs.Protocol.Eligibility.FillPercentMinimum is null
                ? []
                : OfTubes(
                    inputs,
                    "fill",
                    "fill_percent",
                    tube => tube.FillPercent is null,
                    "the protocol asks for a least fill, and a short fill prolongs clotting times"
                ),
            .. OfTubes(
                inputs,
                "origin",
                "origin",
                tube => tube.Origin == Origin.NotRecorded,
                "spiked or pooled material does not stand for patients' blood"
            ),
            .. OfResults(inputs, "instrument", row => row.Instrument),
            .. OfResults(inputs, "lot", row => row.Lot),
        ];

    private static IEnumerable<DataQuery> OfTubes(
        StudyInputs inputs,
        string what,
        string column,
        Func<TubeRow, bool> isMissing,
        string why
    )
    {
        var missing = inputs.Tubes.Where(isMissing).ToImmutableArray();
        return missing.IsEmpty
            ? []
            :
            [
                Query(
                    what,
                    DataFiles.SpecimensAt(missing.Min(tube => tube.SourceRow), column),
                    missing.Length,
                    "tubes",
                    why
                ),
            ];
    }

    private static IEnumerable<DataQuery> OfResults(
        StudyInputs inputs,
        string what,
        Func<ResultRow, string> of
    )
    {
        var missing = inputs
            .Results.Where(row => row.Result is not MissingResult && of(row).Length == 0)
            .ToImmutableArray();
        return missing.IsEmpty
            ? []
            :
            [
                Query(
                    what,
                    DataFiles.ResultsAt(missing.Min(row => row.SourceRow), what),
                    missing.Length,
                    "results",
                    "a change of it within a pair cannot be told from the delay"
                ),
            ];
    }

    private static DataQuery Query(
        string what,
        QuerySource source,
        int count,
        string of,
        string why
    ) =>
        new(
            what + "-not-recorded",
            Severity.Attention,
            source,
            "",
            string.Create(
                CultureInfo.InvariantCulture,
                $"The {what} is not recorded for {count} {of}: {why}."
            ),
            $"Record the {what}."
        );
}
