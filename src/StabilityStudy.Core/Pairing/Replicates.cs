namespace StabilityStudy.Core.Pairing;

/// <summary>
/// Which of several results of a draw at one time counts: the first valid ones of the tube that was tested first, as
/// many as the protocol plans. Time decides what is first, not the number given to a replicate; a result without a time
/// goes before all others, so that leaving a time out never moves a result out of the way. A test that failed stands
/// unless a rerun is documented with a reason that the protocol names. A spare tube never stands in for one that failed,
/// and a clot, fibrin or hemolysis stands whatever the same tube gave besides. Results that are not used stay listed.
/// </summary>
internal static class Replicates
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind FewerReplicatesThanPlanned = Kinds.Add("fewer-replicates-than-planned", QueryRank.Measurement, "a result rests on fewer replicates than planned", "nothing");
    internal static readonly QueryKind RepeatResultNotUsed = Kinds.Add("repeat-result-not-used", QueryRank.Rerun, "a second result of a tube is not used; the first valid one counts", "say in study.toml why it was repeated");
    // csharpier-ignore-end

    /// <summary>The result that stands for the draw at this time; null when there is no row.</summary>
    /// <param name="draw">The draw.</param>
    /// <param name="occasion">Baseline or planned delay.</param>
    /// <param name="context">How many results are averaged, the measuring interval that each is held to before, and the documented reruns.</param>
    /// <param name="queries">Receives a query for each result that is not used and for each test that was repeated.</param>
    public static ChosenResult? Choose(
        Draw draw,
        TestOccasion occasion,
        PairContext context,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        var found = draw.ResultsAt(occasion);
        if (found.IsEmpty)
        {
            return null;
        }

        if (found.Length == 1 && context.Protocol.Replicates == 1)
        {
            // Nothing to choose, and nothing to tell of.
            var only = Ranged(found[0], context);
            return new ChosenResult(only, ReferenceEquals(only, found[0]) ? found : [only]);
        }

        return ChooseAmong(found, draw, occasion, context, queries);
    }

    private static ChosenResult ChooseAmong(
        ImmutableArray<ResultRow> found,
        Draw draw,
        TestOccasion occasion,
        PairContext context,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        var planned = context.Protocol.Replicates;
        var rows = found
            .OrderBy(row => row.TestedAt ?? DateTimeOffset.MinValue)
            .ThenBy(row => row.Replicate)
            .ThenBy(row => row.Tube, StringComparer.Ordinal)
            .ThenBy(row => row.SourceRow)
            .Select(row => Ranged(row, context))
            .ToImmutableArray();
        var first =
            rows.FirstOrDefault(row =>
                !DelayedFailure.MayBeReplaced(
                    draw.Tube(row.Tube),
                    rows.Where(other => other.Tube == row.Tube)
                )
            ) ?? rows[0];
        var ofTube = rows.Where(row => row.Tube == first.Tube).ToImmutableArray();
        var spoiled = ofTube.FirstOrDefault(DelayedFailure.IsOfTheTube);
        var tested = ofTube
            .Where(row => DelayedFailure.StatedReason(row) is null)
            .ToImmutableArray();
        var rerun = DocumentedRerun.Of(draw.Specimen, occasion, context);
        var valid = (rerun is null ? tested.TakeWhile(IsValid) : tested.Where(IsValid))
            .Take(planned)
            .ToImmutableArray();
        var chosen =
            spoiled is not null ? new ChosenResult(spoiled, [spoiled])
            : valid.IsEmpty ? new ChosenResult(first, [first])
            : new ChosenResult(valid[0] with { Result = Mean(valid) }, valid);
        var repeat = spoiled is null ? DocumentedRerun.After(tested, planned, IsValid) : null;
        if (repeat is { } repeated)
        {
            queries.Add(DocumentedRerun.Query(repeated.Failed, repeated.Next, rerun));
            chosen = chosen with { FailedBefore = rerun is null ? null : repeated.Failed };
        }

        AddQueries(
            rows,
            repeat is { } told ? [.. chosen.Rows, told.Failed, told.Next] : chosen.Rows,
            chosen,
            planned,
            queries
        );
        return chosen;
    }

    private static ResultRow Ranged(ResultRow row, PairContext context)
    {
        var result = MeasuringRange.Apply(row.Result, context.Analyte.MeasuringInterval);
        return ReferenceEquals(result, row.Result) ? row : row with { Result = result };
    }

    private static bool IsValid(ResultRow row) =>
        row.Result is not MissingResult && !row.IsFlaggedAsFailed;

    private static ReportedResult Mean(ImmutableArray<ResultRow> rows)
    {
        if (rows.Length == 1)
        {
            return rows[0].Result;
        }

        if (rows.Any(row => row.Result is CategoryResult))
        {
            return SameCategory(rows);
        }

        var text = "mean of " + string.Join(" and ", rows.Select(row => row.Result.Text));
        var mean = rows.Sum(row => ValueOrLimit(row.Result)) / rows.Length;
        var sides = rows.Select(row => row.Result)
            .OfType<CensoredResult>()
            .Select(result => result.Side)
            .Distinct()
            .ToImmutableArray();
        return sides.Length switch
        {
            0 => new MeasuredResult(text, mean),
            1 => new CensoredResult(text, sides[0], mean),
            _ => new MissingResult(text, MissingReason.NoReportableResult),
        };
    }

    /// <summary>Categories have no mean: replicates that agree count as one result, others as none.</summary>
    private static ReportedResult SameCategory(ImmutableArray<ResultRow> rows) =>
        rows.Select(row => (row.Result as CategoryResult)?.Category).Distinct().Count() == 1
            ? rows[0].Result
            : new MissingResult(
                string.Join(" and ", rows.Select(row => row.Result.Text)),
                MissingReason.NoReportableResult
            );

    private static decimal ValueOrLimit(ReportedResult result) =>
        result switch
        {
            MeasuredResult measured => measured.Value,
            CensoredResult censored => censored.Limit,
            _ => throw new InvalidOperationException("A valid result has a value or a limit."),
        };

    private static void AddQueries(
        ImmutableArray<ResultRow> rows,
        ImmutableArray<ResultRow> toldOf,
        ChosenResult chosen,
        int planned,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        if (rows.Length > planned)
        {
            queries.AddRange(rows.Except(toldOf).Select(NotUsed));
        }
        else if (chosen.Rows.Length < planned && IsValid(chosen.Row))
        {
            queries.Add(Single(chosen.Row));
        }
    }

    private static DataQuery NotUsed(ResultRow row) =>
        new(
            RepeatResultNotUsed,
            DataFiles.ResultsAt(row.SourceRow, "result"),
            row.Result.Text,
            $"{row.Analyte}, specimen {row.Specimen} has more results at {row.Occasion} than the protocol plans; this one is not used: the first valid result of the tube tested first counts.",
            "State in a deviation why there was another test."
        )
        {
            Specimen = new(row.Specimen, row.Occasion.TimePoint),
        };

    private static DataQuery Single(ResultRow row) =>
        new(
            FewerReplicatesThanPlanned,
            DataFiles.ResultsAt(row.SourceRow, "replicate"),
            row.Result.Text,
            $"{row.Analyte}, specimen {row.Specimen} has one valid result at {row.Occasion}, two are planned; that one is used.",
            "Nothing, or add the missing result."
        )
        {
            Specimen = new(row.Specimen, row.Occasion.TimePoint),
        };
}
