using StabilityStudy.Core.Study;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>What study.toml maps of the laboratory's own files, so that nobody must open it to see which words were read as which.</summary>
internal static class OwnFileSection
{
    public const string Title = "Words read as";

    /// <summary>The section; null where nothing was mapped.</summary>
    public static Section? Of(StudyAnalysis analysis)
    {
        var files = analysis.Facts.OwnFiles;
        return files.IsEmpty
            ? null
            : new Section(
                Title,
                StartsOnNewPage: false,
                [
                    .. Rows(files).ToImmutableArray() is { IsEmpty: false } rows
                        ? [TableOf(rows, files.Any(IsConverted))]
                        : ImmutableArray<Block>.Empty,
                    .. string.Join("\n", files.Select(Described).OfType<string>())
                        is { Length: > 0 } described
                        ? [new Paragraph(described, ParagraphStyle.Small)]
                        : ImmutableArray<Block>.Empty,
                ]
            );
    }

    private static Table TableOf(ImmutableArray<Row> rows, bool isConverted) =>
        new(
            "Words of the laboratory's own files that stand for others, as study.toml states them",
            [
                new Column("File", ColumnAlignment.Left, 2),
                new Column("Column", ColumnAlignment.Left, 1.6),
                new Column("In the file", ColumnAlignment.Left, 2.5),
                new Column("Read as", ColumnAlignment.Left, 2.5),
            ],
            rows,
            "How many rows had each word is not in this report: the attached data have the words as they were read, and the flags of the instrument as it wrote them. "
                + (
                    isConverted
                        ? "Results were converted where a unit says so, exactly and within one kind of quantity; otherwise no number and no time was read as another."
                        : "No number and no time was read as another."
                )
        );

    private static bool IsConverted(OwnFile file) =>
        file.Words.Any(word => word.ReadAs.EndsWith(ReadWord.Converted, StringComparison.Ordinal));

    private static IEnumerable<Row> Rows(ImmutableArray<OwnFile> files) =>
        from file in files
        from row in file
            .Words.Select(word =>
                Row(
                    file,
                    word.Column,
                    word.Written.Length == 0 ? "(nothing)" : word.Written,
                    word.ReadAs
                )
            )
            .Concat(
                file.Codes.Select(codes =>
                    Row(
                        file,
                        codes.Column,
                        $"{NumberText.Count(codes.Count)} {(codes.Count == 1 ? "entry" : "entries")}, not repeated here, as they may name persons",
                        "study codes"
                    )
                )
            )
        select row;

    private static Row Row(OwnFile file, string column, string written, string readAs) =>
        new([
            new TableCell(file.Name),
            new TableCell(column),
            new TableCell(written),
            new TableCell(readAs),
        ]);

    /// <summary>Headers, times, decimals and what is not in the file, in one sentence; null without any.</summary>
    private static string? Described(OwnFile file)
    {
        string?[] parts =
        [
            file.DateFormat is { } format ? $"times are written {format}" : null,
            file.HasDecimalComma ? "decimals follow a comma" : null,
            file.Settings.IsEmpty
                ? null
                : $"stated in study.toml: {string.Join(", ", file.Settings.Select(item => $"{item.Key} {item.Value}"))}",
            file.Headers.IsEmpty
                ? null
                : $"headers that stand for columns: {string.Join(", ", file.Headers.Select(item => $"\"{item.Header}\" for {item.Column}"))}",
            file.Constants.IsEmpty
                ? null
                : $"not in the file and stated in study.toml for every row: {string.Join(", ", file.Constants.Select(item => $"{item.Column} {item.Value}"))}",
        ];
        var found = string.Join("; ", parts.OfType<string>());
        return found.Length == 0 ? null : $"{file.Name}: {found}.";
    }
}
