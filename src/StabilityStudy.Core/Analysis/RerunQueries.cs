using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>Documented reruns that are not accepted or that name no second test.</summary>
internal static class RerunQueries
{
    public static IEnumerable<DataQuery> Of(StudyInputs inputs)
    {
        if (inputs.Facts.Reruns.IsEmpty)
        {
            return [];
        }

        var tests = inputs
            .Results.GroupBy(row => (row.Specimen, row.Analyte, row.Occasion))
            .ToDictionary(rows => rows.Key, rows => rows.Count());
        return inputs
            .Facts.Reruns.Select(rerun =>
                OfOne(
                    rerun,
                    inputs,
                    tests.GetValueOrDefault(
                        (rerun.Specimen, rerun.Analyte, new TestOccasion(rerun.TimePoint))
                    )
                )
            )
            .OfType<DataQuery>();
    }

    private static DataQuery? OfOne(Rerun rerun, StudyInputs inputs, int tests) =>
        !inputs.Protocol.RerunReasons.Contains(rerun.Reason)
            ? Query(
                rerun,
                "rerun-reason-not-planned",
                rerun.Reason,
                "gives a reason that is not among the protocol's rerun_reasons, so it is not accepted: the first test stands.",
                "Use the protocol's own words when the reason is the same; otherwise nothing."
            )
        : tests <= inputs.Protocol.Replicates
            ? Query(
                rerun,
                "rerun-without-effect",
                rerun.Specimen,
                "names no test that was repeated.",
                "Correct specimen, analyte or time point, or add the row of the repeated test."
            )
        : null;

    private static DataQuery Query(
        Rerun rerun,
        string code,
        string observed,
        string message,
        string action
    ) =>
        new(
            code,
            Severity.Attention,
            new("study.toml", rerun.Line, "rerun"),
            observed,
            $"The rerun of {rerun.Analyte}, specimen {rerun.Specimen} at {new TestOccasion(rerun.TimePoint)} {message}",
            action
        );
}
