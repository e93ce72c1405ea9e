using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Rows;

/// <summary>Reads specimens.csv: a row a tube.</summary>
internal static class SpecimenReader
{
    private static readonly Column<DateTimeOffset?> s_collectedAt = TubeColumns.CollectedAt.In(
        ColumnForms.OptionalTime
    );

    /// <summary>Reads the rows that can be read.</summary>
    /// <param name="utf8">Content of the file.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <param name="columns">What the file must and may have.</param>
    /// <param name="known">What the rows may refer to.</param>
    /// <param name="queries">Takes what does not fit.</param>
    /// <param name="linesBefore">What is added to the number of a line, for files after the first of their kind.</param>
    /// <param name="sent">Times of messages, which rows without these times take.</param>
    /// <param name="written">The rows from which a canonical file was written, where that is known.</param>
    public static RowTable<TubeRow> Read(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        KnownCodes known,
        QueryList queries,
        int linesBefore = 0,
        SentTubeTimes? sent = null,
        WrittenRows? written = null
    ) =>
        TableHalves.Read(
            utf8,
            fileName,
            columns,
            queries,
            linesBefore,
            (part, own) =>
            {
                var same = (written ?? WrittenRows.None).TubesFrom(part.LinesBefore - linesBefore);
                var times = sent ?? new SentTubeTimes();
                return RowTable<TubeRow>.Read(
                    part,
                    fileName,
                    columns,
                    known,
                    own,
                    row => same.Take(ReadRow(row, times)),
                    tube => new TubeKey(tube.Specimen, tube.Tube)
                );
            }
        );

    private static TubeRow ReadRow(CsvRow row, SentTubeTimes sent)
    {
        var tube = new TubeKey(row.Read(TubeColumns.Specimen), row.Read(TubeColumns.Tube));
        return new(
            SourceRow: row.Line,
            Specimen: tube.Specimen,
            Tube: tube.Tube,
            Subject: row.Read(TubeColumns.Subject),
            Group: row.Read(TubeColumns.Group),
            Storage: row.Read(TubeColumns.Storage),
            DrawPosition: row.Read(TubeColumns.DrawPosition),
            CollectedAt: sent.Read(row, tube, s_collectedAt) ?? default,
            ReceivedAt: sent.Read(row, tube, TubeColumns.ReceivedAt),
            SpunAt: row.Read(TubeColumns.SpunAt),
            SeparatedAt: row.Read(TubeColumns.SeparatedAt),
            FrozenAt: row.Read(TubeColumns.FrozenAt),
            ThawedAt: row.Read(TubeColumns.ThawedAt),
            FillPercent: row.Read(TubeColumns.FillPercent),
            Inversions: row.Read(TubeColumns.Inversions),
            HematocritPercent: row.Read(TubeColumns.HematocritPercent),
            Hemolysis: row.Read(TubeColumns.Hemolysis),
            Clot: row.Read(TubeColumns.Clot),
            Device: row.Read(TubeColumns.Device),
            Origin: row.Read(TubeColumns.Origin)
        )
        {
            DiscardTube = row.Read(TubeColumns.DiscardTube),
            DrawnAfter = row.Read(TubeColumns.DrawnAfter),
            Transport = row.Read(TubeColumns.Transport),
            Material = row.Read(TubeColumns.Material),
        };
    }
}
