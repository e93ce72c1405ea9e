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
    /// <summary>Every such query of a study where all is held to be there that ever will be; when one stops, only those about single rows.</summary>
    /// <param name="inputs">The study.</param>
    /// <param name="protocolSha256">SHA-256 of the protocol, which the locks are held to.</param>
    public static ImmutableArray<DataQuery> Of(StudyInputs inputs, string protocolSha256) =>
        Found(new StudyRows(inputs), protocolSha256, [], asOf: null).Queries;

    /// <summary>Every such query of a study that is being collected, where what is due is not missing, and how far it is.</summary>
    /// <param name="inputs">The study.</param>
    /// <param name="protocolSha256">SHA-256 of the protocol, which the locks are held to.</param>
    /// <param name="asOf">The moment of the check.</param>
    public static (
        ImmutableArray<DataQuery> Queries,
        CollectionInventory Inventory
    ) WhileCollecting(StudyInputs inputs, string protocolSha256, DateTimeOffset asOf)
    {
        var rows = new StudyRows(inputs);
        var tests = new PlannedTests(rows, asOf, ImmutableHashSet<string>.Empty).All();
        var (queries, baselines) = Found(rows, protocolSha256, tests, asOf);
        return (queries, CollectionCount.OfTests(rows, tests, baselines, asOf));
    }

    private static (
        ImmutableArray<DataQuery> Queries,
        ImmutableArray<BaselinesSoFar> Baselines
    ) Found(
        StudyRows rows,
        string protocolSha256,
        ImmutableArray<PlannedTest> tests,
        DateTimeOffset? asOf
    )
    {
        var inputs = rows.Inputs;
        var awaited = new AwaitedRows(tests, asOf);
        var ofRows = InputQueries.OfRows(rows);
        var isStopped = ofRows.Any(query => query.Severity == Severity.Stop);
        var index = new SpecimenIndex(rows);
        var contexts = PairContext
            .All(inputs)
            .AsParallel()
            .AsOrdered()
            .Select(context => OfPairs(index, context, awaited, isStopped))
            .ToImmutableArray();
        ImmutableArray<BaselinesSoFar> baselines = [.. contexts.Select(item => item.Baselines)];
        if (isStopped)
        {
            return (ofRows, baselines);
        }

        var queries = contexts
            .SelectMany(item => item.Queries)
            .Concat(
                SideBySide.Of(
                    () =>
                        LockQueries.Of(
                            LockEvidence.Of(inputs.Locks, protocolSha256, inputs.Tubes),
                            inputs.Facts.People
                        ),
                    () => RecordQueries.Of(rows, awaited.TestedTubes(rows)),
                    () => TubeQueries.Of(rows),
                    () => DrawQueries.Of(inputs),
                    () => TimeQueries.Of(rows),
                    () => asOf is { } now ? TimeQueries.After(inputs, now) : [],
                    () => ResultQueries.Of(rows),
                    () => ControlQueries.Of(awaited.WithoutTodaysRuns(rows))
                )
            );
        var missing = inputs
            .Results.Where(row => row.Result is MissingResult)
            .Select(row => (row.SourceRow, row.Result.Text))
            .ToHashSet();
        return (
            [
                .. ofRows,
                .. DataFiles.Named(
                    queries.Distinct().Select(query => WithoutResult(query, missing)),
                    inputs.Facts.Files
                ),
            ],
            baselines
        );
    }

    /// <summary>The queries about the pairs of one analyte, group and storage, none where a query stops, and their baselines.</summary>
    private static (ImmutableArray<DataQuery> Queries, BaselinesSoFar Baselines) OfPairs(
        SpecimenIndex index,
        PairContext context,
        AwaitedRows awaited,
        bool isStopped
    )
    {
        var found = PairAssembly.Baselines(index, context);
        var baselines = BaselinesSoFar.Of(found);
        if (isStopped)
        {
            return ([], baselines);
        }

        var ofResults = ImmutableArray.CreateBuilder<DataQuery>();
        var ofPairs = ImmutableArray.CreateBuilder<DataQuery>();
        foreach (var (timePoint, received) in PairAssembly.Pairs(found, ofResults))
        {
            var marked = context.Marked(timePoint, received);
            var key = context.KeyAt(timePoint);
            var pairs = awaited.Without(key, marked);
            ofPairs.AddRange(PairQueries.OfAll(key, pairs, _ => ""));
            ofPairs.AddRange(ConfoundingQueries.Of(key, pairs));
        }

        return ([.. found.Queries, .. ofResults, .. ofPairs], baselines);
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
