using System.Collections.Frozen;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Layouts;
using StabilityStudy.Files.Messages;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Intake;

/// <summary>Which file of the folder holds data of one kind, and in which form.</summary>
/// <param name="Stored">Its name in the folder.</param>
/// <param name="Shown">The name that queries give.</param>
/// <param name="Columns">The columns that it has.</param>
internal sealed record DataFile(string Stored, string Shown, CsvColumns Columns)
{
    /// <summary>Further files of the same kind and form.</summary>
    public ImmutableArray<string> More { get; init; } = [];

    /// <summary>The names of all files of the kind under which they stand in the folder.</summary>
    public ImmutableArray<string> AllStored => [Stored, .. More];

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
        return Holds(stored)
            ? new(stored, named, columns.WithSourceRow())
            : new(stored, named, ColumnsIn(stored, columns))
            {
                More = columns.Layout?.MoreFiles ?? [],
            };

        bool Holds(string name) =>
            files.Files.TryGetValue(name, out var bytes) && columns.IsCanonical(bytes.Span);
    }

    /// <summary>The columns as they are read from a file of a name: a workbook or file of messages is never one in the usual form.</summary>
    public static CsvColumns ColumnsIn(string name, CsvColumns columns) =>
        Workbook.IsName(name) || MessageFile.IsName(name)
            ? columns with
            {
                Layout = columns.Layout ?? FileLayout.Plain,
            }
            : columns;
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

    /// <summary>What the instrument's flags mean.</summary>
    public FrozenDictionary<string, FlagMeaning> Flags { get; private init; } =
        FrozenDictionary<string, FlagMeaning>.Empty;

    /// <summary>Name and form of the file of results, and the form of the file of tubes, as study.toml states them.</summary>
    public (string Name, FileLayout? OfResults, FileLayout? OfTubes) Stated { get; private init; } =
        ("", null, null);

    /// <summary>The names of further files of each kind.</summary>
    public (
        ImmutableArray<string> Specimens,
        ImmutableArray<string> Results,
        ImmutableArray<string> Controls
    ) More { get; private init; } = ([], [], []);

    /// <summary>Finds the files.</summary>
    public static DataFileSet Find(
        StudyBytes files,
        StudyFileNames names,
        TomlTable? read,
        bool isCanonical
    )
    {
        var usual = StudyFileNames.Usual;
        var pairs = LayoutReader.FindPairs(read, !isCanonical) is var (name, described)
            ? new DataFile(name, name, described) { More = described.Layout?.MoreFiles ?? [] }
            : null;
        var ofSpecimens = LayoutReader.Apply(read, TubeColumns.Table.Columns, !isCanonical);
        var ofResults = LayoutReader.Apply(read, ResultColumns.Table.Columns, !isCanonical);
        var ofControls = LayoutReader.Apply(read, ControlColumns.Table.Columns, !isCanonical);
        var named = names with
        {
            Specimens = pairs?.Shown ?? ofSpecimens.Layout?.File ?? names.Specimens,
            Results = pairs?.Shown ?? ofResults.Layout?.File ?? names.Results,
            Controls = ofControls.Layout?.File ?? names.Controls,
        };
        var specimens = DataFile.Find(
            files,
            named.Specimens,
            usual.Specimens,
            ofSpecimens,
            isCanonical
        );
        var results = DataFile.Find(files, named.Results, usual.Results, ofResults, isCanonical);
        var controls = DataFile.Find(
            files,
            named.Controls,
            usual.Controls,
            ofControls,
            isCanonical
        );
        static ImmutableArray<string> MoreOf(CsvColumns columns) => columns.Layout?.MoreFiles ?? [];
        IEnumerable<OwnFile?> own =
        [
            .. pairs is null
                ? [OwnFiles.Of(named.Specimens, ofSpecimens), OwnFiles.Of(named.Results, ofResults)]
                : new[] { OwnFiles.Of(pairs.Shown, pairs.Columns) },
            OwnFiles.Of(named.Controls, ofControls),
        ];

        // Without the file of pairs, the canonical files of a report stand in for it.
        var isReplaced = isCanonical || (pairs is not null && specimens.Stored != pairs.Stored);
        return new(specimens, results, controls, isReplaced ? null : pairs)
        {
            Own = [.. own.OfType<OwnFile>()],
            Flags = ofResults.Layout?.Flags ?? FrozenDictionary<string, FlagMeaning>.Empty,
            Stated = (names.Results, ofResults.Layout, ofSpecimens.Layout),
            More = (
                MoreOf(pairs?.Columns ?? ofSpecimens),
                MoreOf(pairs?.Columns ?? ofResults),
                MoreOf(ofControls)
            ),
        };
    }
}
