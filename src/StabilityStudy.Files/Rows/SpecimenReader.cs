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
    public static RowTable<TubeRow> Read(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        KnownCodes known,
        QueryList queries,
        int linesBefore = 0
    ) => ReadWith(new SentTubeTimes(), utf8, fileName, columns, known, queries, linesBefore);

    /// <summary>The same with times of messages, which rows without these times take.</summary>
    public static RowTable<TubeRow> ReadWith(
        SentTubeTimes sent,
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        KnownCodes known,
        QueryList queries,
        int linesBefore
    ) =>
        TableHalves.Read(
            utf8,
            fileName,
            columns,
            queries,
            linesBefore,
            (part, own) =>
                RowTable<TubeRow>.Read(
                    part,
                    fileName,
                    columns,
                    known,
                    own,
                    row => ReadRow(row, sent),
                    tube => new TubeKey(tube.Specimen, tube.Tube)
                )
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
