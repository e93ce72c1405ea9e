using StabilityStudy.Files.Columns;

namespace StabilityStudy.Files.Rows;

/// <summary>Checks the tubes: each once, its steps in order, and the tubes of a specimen in agreement.</summary>
internal static class TubeChecks
{
    public static void Check(
        RowTable<TubeRow> tubes,
        TubesByKey byKey,
        TimeSpan longest,
        QueryList queries
    )
    {
        var firstTube = new Dictionary<string, TubeRow>(StringComparer.Ordinal);
        foreach (var tube in tubes.Rows)
        {
            CheckOrder(tubes.FileName, tube, longest, queries);
            if (byKey.OtherThan(tube) is { SourceRow: var line })
            {
                queries.Add(
                    RowQueries.DuplicateTube,
                    Source(tubes, tube, TubeColumns.Tube.Name),
                    tube.Tube,
                    FormattableString.Invariant(
                        $"The tube \"{tube.Tube}\" of the specimen \"{tube.Specimen}\" is already on line {line}."
                    )
                );
            }

            if (!firstTube.TryAdd(tube.Specimen, tube))
            {
                CheckAgreement(tubes, firstTube[tube.Specimen], tube, queries);
            }
        }
    }

    /// <summary>Notes tubes that no result row names.</summary>
    public static void NoteWithoutResults(
        RowTable<TubeRow> tubes,
        RowTable<ResultRow> results,
        QueryList queries
    )
    {
        if (!results.KnowsEveryTube || results.Keys.Count == 0)
        {
            return;
        }

        foreach (var tube in tubes.Rows)
        {
            if (!results.Keys.Contains(new TubeKey(tube.Specimen, tube.Tube)))
            {
                queries.Add(
                    RowQueries.TubeWithoutResults,
                    Source(tubes, tube, TubeColumns.Tube.Name),
                    tube.Tube,
                    $"The tube \"{tube.Tube}\" of the specimen \"{tube.Specimen}\" has no results.",
                    "Add its results, with NT where it was not tested.",
                    new QueriedSpecimen(tube.Specimen, null)
                );
            }
        }
    }

    private static void CheckOrder(string file, TubeRow tube, TimeSpan longest, QueryList queries)
    {
        (string Name, DateTimeOffset? Time) before = (
            TubeColumns.CollectedAt.Name,
            tube.CollectedAt
        );
        Compare(TubeColumns.ReceivedAt.Name, tube.ReceivedAt);
        Step(TubeColumns.SpunAt.Name, tube.SpunAt);
        Step(TubeColumns.SeparatedAt.Name, tube.SeparatedAt);
        Step(TubeColumns.FrozenAt.Name, tube.FrozenAt);
        Step(TubeColumns.ThawedAt.Name, tube.ThawedAt);

        void Step(string name, DateTimeOffset? time)
        {
            Compare(name, time);
            before = time is null ? before : (name, time);
        }

        void Compare(string name, DateTimeOffset? time) =>
            TimeOrder.Check(file, tube.SourceRow, before, (name, time), longest, queries);
    }

    private static void CheckAgreement(
        RowTable<TubeRow> tubes,
        TubeRow first,
        TubeRow tube,
        QueryList queries
    )
    {
        Compare(TubeColumns.Subject.Name, first.Subject, tube.Subject);
        Compare(TubeColumns.Group.Name, first.Group, tube.Group);

        void Compare(string column, string before, string now)
        {
            if (!string.Equals(before, now, StringComparison.Ordinal))
            {
                queries.Add(
                    SharedKinds.TubesDisagree,
                    Source(tubes, tube, column),
                    now,
                    FormattableString.Invariant(
                        $"The specimen \"{tube.Specimen}\" has the {column} \"{before}\" on line {first.SourceRow}."
                    )
                );
            }
        }
    }

    private static QuerySource Source(RowTable<TubeRow> tubes, TubeRow tube, string column) =>
        new(tubes.FileName, tube.SourceRow, column);
}
