using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Pairing;

/// <summary>
/// Whether a second test of a tube may stand for a first one that failed. Repeating until a number comes would hide
/// tubes that fail after waiting, so it may only for a reason that was fixed before data and is documented.
/// </summary>
internal static class DocumentedRerun
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind Rerun = Kinds.Add("rerun", QueryRank.Rerun, "a test was repeated for a reason that the protocol names", "nothing");
    internal static readonly QueryKind RerunWithoutReason = Kinds.Add("rerun-without-reason", QueryRank.Rerun, "a test was repeated without a reason that the protocol names", "add [[rerun]] with its reason to study.toml");
    // csharpier-ignore-end

    /// <summary>The documented rerun of a draw at a time, with a reason that the protocol names; null without one.</summary>
    public static Rerun? Of(string specimen, TestOccasion occasion, PairContext context) =>
        context.Facts.Reruns.FirstOrDefault(rerun =>
            rerun.Specimen == specimen
            && rerun.Analyte == context.Analyte.Id
            && rerun.TimePoint == occasion.TimePoint
            && context.Protocol.RerunReasons.Contains(rerun.Reason)
        );

    /// <summary>The first test that failed before there were as many results as planned, and the first result after it; null without either.</summary>
    /// <param name="tested">The tests of one tube at one time, in order.</param>
    /// <param name="planned">Results that the protocol plans.</param>
    /// <param name="isValid">Whether a test gave a result.</param>
    public static (ResultRow Failed, ResultRow Next)? After(
        ImmutableArray<ResultRow> tested,
        int planned,
        Func<ResultRow, bool> isValid
    )
    {
        var before = tested.TakeWhile(isValid).Count();
        var next = tested.Skip(before + 1).FirstOrDefault(isValid);
        return before >= planned || next is null ? null : (tested[before], next);
    }

    /// <summary>What is said about a test that failed and was repeated.</summary>
    public static DataQuery Query(ResultRow failed, ResultRow next, Rerun? rerun)
    {
        var what = $"{next.Analyte}, specimen {next.Specimen} at {next.Occasion}";
        var observed = $"{TextOf(failed)}, then {next.Result.Text}";
        var source = DataFiles.ResultsAt(next.SourceRow, "result");
        var query = rerun is null
            ? new DataQuery(
                RerunWithoutReason,
                source,
                observed,
                $"{what}: the test of tube {next.Tube} failed and was repeated without a documented reason that the protocol names; the failed test stands.",
                "Document the rerun in study.toml when its reason is one of the protocol's rerun_reasons; otherwise nothing."
            )
            : new DataQuery(
                Rerun,
                source,
                observed,
                FormattableString.Invariant(
                    $"{what}: the test of tube {next.Tube} failed and was repeated: {rerun.Reason} ({rerun.By}, {rerun.On:yyyy-MM-dd}). The second result counts if it came in time."
                ),
                "Check that the reason has nothing to do with the delay."
            );
        return query with { Specimen = new(next.Specimen, next.Occasion.TimePoint) };
    }

    private static string TextOf(ResultRow row) =>
        string.Join(
            ' ',
            new[] { row.Flag, row.Result.Text }
                .Where(text => text.Length > 0)
                .DefaultIfEmpty("no result")
        );
}
