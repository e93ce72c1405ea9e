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
            if (!IsInOrder(tube, longest))
            {
                ReportOrder(tubes.FileName, tube, longest, queries);
            }

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
        IReadOnlySet<TubeKey> tested,
        QueryList queries
    )
    {
        if (tested.Count == 0)
        {
            return;
        }

        foreach (var tube in tubes.Rows)
        {
            if (!tested.Contains(new TubeKey(tube.Specimen, tube.Tube)))
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

    // Nearly every tube is, and then nothing is gathered for a query.
    private static bool IsInOrder(TubeRow tube, TimeSpan longest)
    {
        var last = tube.CollectedAt;
        return Follows(tube.ReceivedAt)
            && GoesOn(tube.SpunAt)
            && GoesOn(tube.SeparatedAt)
            && GoesOn(tube.FrozenAt)
            && GoesOn(tube.ThawedAt);

        bool Follows(DateTimeOffset? time) =>
            time is not { } known || (known >= last && known - last <= longest);

        bool GoesOn(DateTimeOffset? time)
        {
            var follows = Follows(time);
            last = time ?? last;
            return follows;
        }
    }

    private static void ReportOrder(string file, TubeRow tube, TimeSpan longest, QueryList queries)
    {
        var collected = (TubeColumns.CollectedAt.Name, (DateTimeOffset?)tube.CollectedAt);
        var before = collected;
        (string Name, DateTimeOffset? Time)[] steps =
        [
            (TubeColumns.SpunAt.Name, tube.SpunAt),
            (TubeColumns.SeparatedAt.Name, tube.SeparatedAt),
            (TubeColumns.FrozenAt.Name, tube.FrozenAt),
            (TubeColumns.ThawedAt.Name, tube.ThawedAt),
        ];
        Compare(collected, (TubeColumns.ReceivedAt.Name, tube.ReceivedAt));
        foreach (var step in steps)
        {
            Compare(before, step);
            before = step.Time is null ? before : step;
        }

        void Compare((string, DateTimeOffset?) earlier, (string Name, DateTimeOffset?) later) =>
            TimeOrder.Check(
                new QuerySource(file, tube.SourceRow, later.Name),
                earlier,
                later,
                longest,
                queries
            );
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
