using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Rows;

/// <summary>Reads specimens.csv: a row a tube.</summary>
internal static class SpecimenReader
{
    /// <summary>Reads the rows that can be read.</summary>
    public static RowTable<TubeRow> Read(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        KnownCodes known,
        QueryList queries
    ) =>
        RowTable<TubeRow>.Read(
            utf8,
            fileName,
            columns,
            queries,
            row => ReadRow(row, known),
            tube => new TubeKey(tube.Specimen, tube.Tube)
        );

    private static TubeRow ReadRow(CsvRow row, KnownCodes known) =>
        new(
            SourceRow: row.Line,
            Specimen: row.RequireStudyCode("specimen"),
            Tube: row.RequireStudyCode("tube"),
            Subject: row.RequireStudyCode("subject"),
            Group: row.RequireKnown("group", known.Groups),
            Storage: row.RequireKnown("storage", known.Storages),
            DrawPosition: row.OptionalWhole("draw_position", NumberRange.DrawPosition),
            CollectedAt: row.RequireTime("collected_at", known.Times),
            ReceivedAt: row.OptionalTime("received_at", known.Times),
            SpunAt: row.OptionalTime("spun_at", known.Times),
            SeparatedAt: row.OptionalTime("separated_at", known.Times),
            FrozenAt: row.OptionalTime("frozen_at", known.Times),
            ThawedAt: row.OptionalTime("thawed_at", known.Times),
            FillPercent: row.OptionalDecimal("fill_percent", NumberRange.FillPercent),
            Inversions: row.OptionalWhole("inversions", NumberRange.Inversions),
            HematocritPercent: row.OptionalDecimal(
                "hematocrit_percent",
                NumberRange.HematocritPercent
            ),
            Hemolysis: row.Choice("hemolysis", FileWords.HemolysisGrades),
            Clot: row.Choice("clot", FileWords.ClotChecks),
            Device: row.FreeText("device"),
            Origin: row.Choice("origin", FileWords.Origins)
        );
}
