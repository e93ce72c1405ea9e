using StabilityStudy.Core.Study;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Layouts;

namespace StabilityStudy.Files.Intake;

/// <summary>Which file of the folder holds data of one kind, and in which form.</summary>
/// <param name="Stored">Its name in the folder.</param>
/// <param name="Shown">The name that queries give.</param>
/// <param name="Columns">The columns that it has.</param>
internal sealed record DataFile(string Stored, string Shown, CsvColumns Columns)
{
    /// <summary>
    /// Finds the file. A file in canonical form, as a report carries it, is known by its header line, under the name that
    /// study.toml gives or under its usual one; so a study can be read again from the attachments of its report.
    /// </summary>
    /// <param name="files">The folder.</param>
    /// <param name="named">Name that study.toml gives.</param>
    /// <param name="usual">Name of the canonical file.</param>
    /// <param name="columns">Columns of the facility's file.</param>
    /// <param name="isCanonical">Whether only canonical files are at hand.</param>
    public static DataFile Find(
        StudyBytes files,
        string named,
        string usual,
        CsvColumns columns,
        bool isCanonical
    )
    {
        if (isCanonical)
        {
            return new(usual, named, columns.WithSourceRow());
        }

        var stored = !files.Files.ContainsKey(named) && Holds(usual) ? usual : named;
        return new(stored, named, Holds(stored) ? columns.WithSourceRow() : columns);

        bool Holds(string name) =>
            files.Files.TryGetValue(name, out var bytes) && columns.IsCanonical(bytes.Span);
    }
}

/// <summary>The data files of a study.</summary>
/// <param name="Specimens">A row a tube.</param>
/// <param name="Results">A row a result.</param>
/// <param name="Controls">A row a control result; the study may do without.</param>
/// <param name="Pairs">A row a pair, instead of specimens and results; null when there is none.</param>
internal sealed record DataFileSet(
    DataFile Specimens,
    DataFile Results,
    DataFile Controls,
    DataFile? Pairs
)
{
    /// <summary>The laboratory's own files that are not written in the usual way, as study.toml tells it.</summary>
    public ImmutableArray<OwnFile> Own { get; private init; } = [];

    /// <summary>Finds the files.</summary>
    public static DataFileSet Find(
        StudyBytes files,
        StudyFileNames names,
        TomlTable? read,
        bool isCanonical
    )
    {
        var usual = StudyFileNames.Usual;
        var pairs = LayoutReader.FindPairs(read) is var (name, described)
            ? new DataFile(name, name, described)
            : null;
        var ofSpecimens = LayoutReader.Apply(read, TubeColumns.Table.Columns);
        var ofResults = LayoutReader.Apply(read, ResultColumns.Table.Columns);
        var ofControls = LayoutReader.Apply(read, ControlColumns.Table.Columns);
        var specimens = DataFile.Find(
            files,
            pairs?.Shown ?? names.Specimens,
            usual.Specimens,
            ofSpecimens,
            isCanonical
        );
        var results = DataFile.Find(
            files,
            pairs?.Shown ?? names.Results,
            usual.Results,
            ofResults,
            isCanonical
        );
        var controls = DataFile.Find(
            files,
            names.Controls,
            usual.Controls,
            ofControls,
            isCanonical
        );
        IEnumerable<OwnFile?> own =
        [
            .. pairs is null
                ? [OwnFiles.Of(names.Specimens, ofSpecimens), OwnFiles.Of(names.Results, ofResults)]
                : new[] { OwnFiles.Of(pairs.Shown, pairs.Columns) },
            OwnFiles.Of(names.Controls, ofControls),
        ];

        // Without the file of pairs, the canonical files of a report stand in for it.
        var isReplaced = isCanonical || (pairs is not null && specimens.Stored != pairs.Stored);
        return new(specimens, results, controls, isReplaced ? null : pairs)
        {
            Own = [.. own.OfType<OwnFile>()],
        };
    }
}
