using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Canonical;

/// <summary>The rows of a study as they are written: known columns only, fixed order, UTF-8 without mark, line feeds, rows sorted by key.</summary>
/// <param name="Files">The files.</param>
/// <param name="Sha256">The fingerprint of the data, as <see cref="DataDigest"/>.</param>
/// <param name="Rows">The rows in the order in which they are written.</param>
internal sealed record CanonicalData(CanonicalFiles Files, string Sha256, WrittenRows Rows)
{
    /// <summary>Writes the rows.</summary>
    public static CanonicalData Of(StudyInputs inputs)
    {
        var names = StudyFileNames.Usual;
        var rows = new WrittenRows(
            CanonicalOrder.Sort(inputs.Tubes),
            CanonicalOrder.Sort(inputs.Results)
        );
        ImmutableArray<(string Name, CanonicalCsv Csv)> data =
        [
            Written(names.Specimens, TubeColumns.Table, rows.Tubes, row => row.SourceRow),
            Written(names.Results, ResultColumns.Table, rows.Results, row => row.SourceRow),
            .. inputs.Controls.IsEmpty
                ? ImmutableArray<(string, CanonicalCsv)>.Empty
                :
                [
                    Written(
                        names.Controls,
                        ControlColumns.Table,
                        CanonicalOrder.Sort(inputs.Controls),
                        row => row.SourceRow
                    ),
                ],
        ];
        return new(
            new([
                .. data.Select(file => file.Csv.Named(file.Name)),
                .. inputs.Looks.IsEmpty ? [] : new[] { CanonicalFiles.Looks(inputs.Looks) },
            ]),
            DataDigest.Of(
                [.. data.Select(file => new FileHash(file.Name, file.Csv.DataSha256))],
                inputs.Facts
            ),
            rows
        );
    }

    private static (string Name, CanonicalCsv Csv) Written<T>(
        string name,
        ColumnTable<T> table,
        ImmutableArray<T> rows,
        Func<T, int> sourceRow
    ) => (name, CanonicalCsv.Write(table, rows, sourceRow));
}
