using StabilityStudy.Core.Collecting;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>
/// The data queries of a study without any that would give a result away: fit for use while specimens are still being
/// collected, when nobody may know how the figures look.
/// </summary>
public static class StudyChecks
{
    /// <summary>Every such query; when one stops, only those about single rows.</summary>
    /// <param name="inputs">The study.</param>
    /// <param name="protocolSha256">SHA-256 of the protocol, which the locks are held to.</param>
    /// <param name="inventory">What is due at the moment of the check, and so not missing; null where all is held to be there that ever will be.</param>
    public static ImmutableArray<DataQuery> Of(
        StudyInputs inputs,
        string protocolSha256,
        CollectionInventory? inventory = null
    )
    {
        var awaited = new AwaitedRows(inventory);
        var rows = InputQueries.Of(inputs);
        if (rows.Any(query => query.Severity == Severity.Stop))
        {
            return rows;
        }

        var queries = ImmutableArray.CreateBuilder<DataQuery>();
        var index = new SpecimenIndex(new StudyRows(inputs));
        queries.AddRange(
            SideBySide.Of([
                .. PairContext
                    .All(inputs)
                    .Select(context =>
                        (Func<IEnumerable<DataQuery>>)(() => OfPairs(index, context, awaited))
                    ),
            ])
        );
        queries.AddRange(
            SideBySide.Of(
                () =>
                    LockQueries.Of(
                        LockEvidence.Of(inputs.Locks, protocolSha256, inputs.Tubes),
                        inputs.Facts.People
                    ),
                () => RecordQueries.Of(awaited.WithTestedTubes(inputs)),
                () => TubeQueries.Of(inputs),
                () => DrawQueries.Of(inputs),
                () => TimeQueries.Of(inputs),
                () => inventory is null ? [] : TimeQueries.After(inputs, inventory.AsOf),
                () => ResultQueries.Of(inputs),
                () => ControlQueries.Of(awaited.WithoutTodaysRuns(inputs))
            )
        );
        var missing = inputs
            .Results.Where(row => row.Result is MissingResult)
            .Select(row => (row.SourceRow, row.Result.Text))
            .ToHashSet();
        return
        [
            .. rows,
            .. DataFiles.Named(
                queries.Distinct().Select(query => WithoutResult(query, missing)),
                inputs.Facts.Files
            ),
        ];
    }

    /// <summary>The queries about the pairs of one analyte, group and storage.</summary>
    private static ImmutableArray<DataQuery> OfPairs(
        SpecimenIndex index,
        PairContext context,
        AwaitedRows awaited
    )
    {
        var queries = ImmutableArray.CreateBuilder<DataQuery>();
        foreach (var (timePoint, received) in PairAssembly.Assemble(index, context, queries))
        {
            var marked = context.Marked(timePoint, received);
            var key = new CellKey(
                context.Analyte.Id,
                context.Group.Id,
                context.Storage.Id,
                timePoint
            );
            var pairs = awaited.Without(key, marked);
            queries.AddRange(PairQueries.OfAll(key, pairs, _ => ""));
            queries.AddRange(ConfoundingQueries.Of(key, pairs));
        }

        return queries.DrainToImmutable();
    }

    /// <summary>Takes a result that was read out of a query; a word for a missing result stays.</summary>
    private static DataQuery WithoutResult(
        DataQuery query,
        HashSet<(int SourceRow, string Text)> missing
    ) =>
        query.Source is { File: var file, Line: var line, Column: null or "result" or "replicate" }
        && file == StudyFileNames.Usual.Results
        && !missing.Contains((line ?? 0, query.Observed))
            ? query with
            {
                Observed = "",
            }
            : query;
}
