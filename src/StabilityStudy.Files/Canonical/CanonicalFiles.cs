using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Canonical;

/// <summary>The data in the one form that an analysis reads and a report carries.</summary>
/// <param name="Files">Specimens, results, controls when the study has any, and earlier looks when there were any.</param>
public sealed record CanonicalFiles(ImmutableArray<CanonicalFile> Files)
{
    /// <summary>Writes the rows: known columns only, fixed order, UTF-8 without mark, line feeds, rows sorted by key.</summary>
    public static CanonicalFiles Write(StudyInputs inputs) =>
        new([
            .. TablesOf(inputs).Select(table => CanonicalFile.Of(table.Name, table.Write())),
            .. inputs.Looks.IsEmpty ? [] : new[] { Looks(inputs.Looks) },
        ]);

    /// <summary>The hash of each file of data without the source rows: the same however a facility sorts its files.</summary>
    internal static ImmutableArray<FileHash> HashesOf(StudyInputs inputs) =>
        [.. TablesOf(inputs).Select(table => new FileHash(table.Name, table.Sha256()))];

    private static ImmutableArray<DataFile> TablesOf(StudyInputs inputs)
    {
        var names = StudyFileNames.Usual;
        return
        [
            DataFile.Of(
                names.Specimens,
                TubeColumns.Table,
                CanonicalOrder.Sort(inputs.Tubes),
                row => row.SourceRow
            ),
            DataFile.Of(
                names.Results,
                ResultColumns.Table,
                CanonicalOrder.Sort(inputs.Results),
                row => row.SourceRow
            ),
            .. inputs.Controls.IsEmpty
                ? ImmutableArray<DataFile>.Empty
                :
                [
                    DataFile.Of(
                        names.Controls,
                        ControlColumns.Table,
                        CanonicalOrder.Sort(inputs.Controls),
                        row => row.SourceRow
                    ),
                ],
        ];
    }

    /// <summary>A file of data before it is written.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Write">Writes it with the source rows.</param>
    /// <param name="Sha256">Its hash without them.</param>
    private sealed record DataFile(
        string Name,
        Func<ReadOnlyMemory<byte>> Write,
        Func<string> Sha256
    )
    {
        public static DataFile Of<T>(
            string name,
            ColumnTable<T> table,
            ImmutableArray<T> rows,
            Func<T, int> sourceRow
        ) =>
            new(
                name,
                () => CanonicalCsv.Write(table, rows, sourceRow),
                () => CanonicalCsv.Sha256(table, rows)
            );
    }

    /// <summary>The data alone, without earlier looks.</summary>
    public ImmutableArray<CanonicalFile> Data =>
        [.. Files.Where(file => file.Name != StudyFileNames.Looks)];

    /// <summary>The file of earlier looks.</summary>
    public static CanonicalFile Looks(ImmutableArray<EarlierLook> looks) =>
        CanonicalFile.Of(
            StudyFileNames.Looks,
            CanonicalCsv.Write(LookColumns.Table, LookRow.Of(looks), row => row.Number)
        );
}

/// <summary>A file in canonical form.</summary>
/// <param name="Name">Name under which it is attached to a report.</param>
/// <param name="Bytes">Content.</param>
/// <param name="Sha256">SHA-256 of the content, lower-case hexadecimal.</param>
public sealed record CanonicalFile(string Name, ReadOnlyMemory<byte> Bytes, string Sha256)
{
    /// <summary>A file with its hash.</summary>
    public static CanonicalFile Of(string name, ReadOnlyMemory<byte> bytes) =>
        new(name, bytes, InputDigest.Sha256(bytes.Span));
}
