using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>Documented reruns that are not accepted or that name no second test.</summary>
internal static class RerunQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind RerunReasonNotPlanned = Kinds.Add("rerun-reason-not-planned", QueryRank.Rerun, "a rerun has a reason that the protocol does not name", "nothing: such a rerun does not count");
    internal static readonly QueryKind RerunWithoutEffect = Kinds.Add("rerun-without-effect", QueryRank.WithoutEffect, "a rerun names no result that was tested again", "correct or remove it");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(StudyRows rows) =>
        rows
            .Inputs.Facts.Reruns.Select(rerun =>
                OfOne(
                    rerun,
                    rows.Inputs,
                    rows.ResultsOf(rerun.Specimen)
                        .Count(row =>
                            row.Analyte == rerun.Analyte
                            && row.Occasion.TimePoint == rerun.TimePoint
                        )
                )
            )
            .OfType<DataQuery>();

    private static DataQuery? OfOne(Rerun rerun, StudyInputs inputs, int tests) =>
        !inputs.Protocol.RerunReasons.Contains(rerun.Reason)
            ? Query(
                rerun,
                RerunReasonNotPlanned,
                rerun.Reason,
                "gives a reason that is not among the protocol's rerun_reasons, so it is not accepted: the first test stands.",
                "Use the protocol's own words when the reason is the same; otherwise nothing."
            )
        : tests <= inputs.Protocol.Replicates
            ? Query(
                rerun,
                RerunWithoutEffect,
                rerun.Specimen,
                "names no test that was repeated.",
                "Correct specimen, analyte or time point, or add the row of the repeated test."
            )
        : null;

    private static DataQuery Query(
        Rerun rerun,
        QueryKind kind,
        string observed,
        string message,
        string? action = null
    ) =>
        new(
            kind,
            new("study.toml", rerun.Line, "rerun"),
            observed,
            $"The rerun of {rerun.Analyte}, specimen {rerun.Specimen} at {new TestOccasion(rerun.TimePoint)} {message}",
            action
        )
        {
            Specimen = new(rerun.Specimen, rerun.TimePoint),
        };
}
