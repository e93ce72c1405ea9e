using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Rows;

/// <summary>Checks the results against their tubes and analytes.</summary>
internal static class ResultChecks
{
    public static void Check(
        RowTable<TubeRow> tubes,
        TubesByKey tubeByKey,
        string file,
        ImmutableArray<ResultRow> results,
        IReadOnlySet<ResultRow> told,
        TimeSpan longest,
        QueryList queries
    )
    {
        foreach (var row in results)
        {
            if (told.Contains(row))
            {
                continue;
            }

            if (tubeByKey.Of(row) is { } tube)
            {
                CheckOrder((TubeColumns.CollectedAt.Name, tube.CollectedAt));
                if (row.TestedAt >= tube.CollectedAt && row.TestedAt < tube.SpunAt)
                {
                    CheckOrder((TubeColumns.SpunAt.Name, tube.SpunAt));
                }
            }
            else if (
                tubes.KnowsEveryTube && !tubes.Keys.Contains(new TubeKey(row.Specimen, row.Tube))
            )
            {
                ReportUnknown(tubes, file, row, queries);
            }

            void CheckOrder((string Name, DateTimeOffset? Time) earlier) =>
                TimeOrder.Check(
                    file,
                    row.SourceRow,
                    earlier,
                    (ResultColumns.TestedAt.Name, row.TestedAt),
                    longest,
                    queries
                );
        }
    }

    /// <summary>Notes results with more decimals than the analyte reports.</summary>
    public static void NoteDecimals(
        ProtocolDraft? protocol,
        string file,
        ImmutableArray<ResultRow> results,
        QueryList queries
    )
    {
        var decimals = (protocol?.Analytes.Items ?? [])
            .Where(item => item.Table.IsSound(AnalyteKeys.Decimals))
            .DistinctBy(item => item.Value.Id)
            .ToDictionary(
                item => item.Value.Id,
                item => item.Value.Decimals,
                StringComparer.Ordinal
            );
        foreach (var row in results)
        {
            if (
                row.Result is MeasuredResult measured
                && decimals.TryGetValue(row.Analyte, out var reported)
                && StrictNumber.Decimals(measured.Value) > reported
            )
            {
                queries.Add(
                    RowQueries.MoreDecimals,
                    new QuerySource(file, row.SourceRow, ResultColumns.Result.Name),
                    measured.Text,
                    FormattableString.Invariant(
                        $"The result has more decimals than the {reported} that {row.Analyte} reports; it is used as it stands."
                    )
                );
            }
        }
    }

    private static void ReportUnknown(
        RowTable<TubeRow> tubes,
        string file,
        ResultRow row,
        QueryList queries
    )
    {
        if (queries.IsFull(file, RowQueries.UnknownTube))
        {
            queries.Add(
                RowQueries.UnknownTube,
                new QuerySource(file, row.SourceRow, null),
                "",
                "",
                ""
            );
            return;
        }

        var tubeFile = tubes.FileName;
        var siblings = tubes
            .Keys.Where(key => string.Equals(key.Specimen, row.Specimen, StringComparison.Ordinal))
            .Select(key => key.Tube)
            .ToImmutableArray();
        var isKnownSpecimen = !siblings.IsEmpty;
        queries.Add(
            RowQueries.UnknownTube,
            new QuerySource(
                file,
                row.SourceRow,
                (isKnownSpecimen ? ResultColumns.Tube : ResultColumns.Specimen).Name
            ),
            isKnownSpecimen ? row.Tube : row.Specimen,
            isKnownSpecimen
                ? $"The specimen \"{row.Specimen}\" has no tube \"{row.Tube}\" in {tubeFile}.{NearestWord.Question(row.Tube, siblings)}"
                : $"There is no specimen \"{row.Specimen}\" in {tubeFile}.{NearCode.Question(row.Specimen, tubes.Keys.Select(item => item.Specimen).Distinct())}",
            $"Add the tube to {tubeFile}, or correct the codes."
        );
    }
}
