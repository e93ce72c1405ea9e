using System.Collections.Frozen;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Layouts;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Messages;
using StabilityStudy.Files.Recording;
using StabilityStudy.Files.Rows;

namespace StabilityStudy.Files.Intake;

/// <summary>
/// What a report states about the laboratory's own files and record, which it does not carry. It cannot be found again, so
/// only what the program could have found stands: queries of a closed list, with words of the program, about files that
/// study.toml names, with columns, rows and keys that fit the canonical files.
/// </summary>
public static class OwnFileStatements
{
    private const string UnknownDay = "an unknown day";

    private static readonly FrozenDictionary<QueryKind, Func<Context, DataQuery, bool>> s_fits =
        new Dictionary<QueryKind, Func<Context, DataQuery, bool>>
        {
            [FileQueries.FileNotRead] = FitsUnreadFile,
            [CsvQueries.ColumnNotUsed] = (context, query) => FitsUnusedColumn(context, query),
            [CsvQueries.ColumnMisspelt] = (context, query) =>
                FitsUnusedColumn(context, query)
                && query.Values.Items is [var meant]
                && context.ColumnsOf(query)!.Names.Contains(meant)
                && NearestWord.Find(query.Source.Column!, [meant]) is not null,
            [CsvQueries.OwnColumnLeftAside] = FitsColumnLeftAside,
            [FileQueries.HiddenCells] = FitsHidden,
            [MessageQueries.RowsLeftAside] = FitsLeftAside,
            [RowQueries.DuplicateRow] = FitsDuplicate,
            [LockFileQueries.RecordChainBroken] = (_, query) =>
                query is { Source: { File: StudyRecord.Name, Line: >= 1, Column: null } },
            [LockFileQueries.LockNotAsRecorded] = (context, query) =>
                IsOf(query, LockFile.Name) && query.Observed == (context.LockSha256 ?? ""),
            [LockFileQueries.LockNotRecorded] = (context, query) =>
                IsOf(query, LockFile.Name)
                && query.Observed.Length == 0
                && context.LockSha256 is not null,
            [LockFileQueries.SignedWithOtherFiles] = (_, query) =>
                IsOf(query, StudyRecord.Name) && query.Observed.Length == 0 && FitsSigned(query),
            [LockFileQueries.RevisionNotRecorded] = (context, query) =>
                IsOf(query, StudyBytes.FactsName)
                && query.Observed == context.Study.Inputs.Facts.Revision?.Replaces,
        }.ToFrozenDictionary();

    /// <summary>The kinds of data query that a report may state without their being found again.</summary>
    internal static IEnumerable<QueryKind> Kinds => s_fits.Keys;

    /// <summary>What the program cannot have found, in words; empty when there is nothing.</summary>
    /// <param name="attached">The files in the report.</param>
    /// <param name="study">The study as it was read from them.</param>
    /// <param name="stated">What the report states.</param>
    public static ImmutableArray<string> Faults(
        StudyBytes attached,
        StudyIntakeResult study,
        StatedAnalysis stated
    )
    {
        ArgumentNullException.ThrowIfNull(attached);
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(stated);
        var context = Context.Of(attached, study, stated);
        return
        [
            .. OfRawFiles(context, stated.RawFiles),
            .. stated
                .OwnFileQueries.Where((query, i) => !Fits(context, query, i))
                .Select(query =>
                    $"The report states about {query.Source}: \"{query.Message}\" The program cannot have found that: it does not fit what the report carries."
                ),
        ];
    }

    private static IEnumerable<string> OfRawFiles(Context context, ImmutableArray<FileHash> raw)
    {
        foreach (var file in raw)
        {
            if (
                !context.Files.Any(item => item.Shown == file.Name || item.Usual == file.Name)
                || file.Sha256.Length != 64
                || !file.Sha256.All(char.IsAsciiHexDigitLower)
                || raw.Count(other => other.Name == file.Name) > 1
            )
            {
                yield return $"The report names {file.Name} among the laboratory's own files, and {StudyBytes.FactsName} names no such file of data, or its hash is none.";
            }
        }

        foreach (
            var missing in context.Files.Where(item =>
                item.IsCarried
                && !raw.Any(file => item.Shown == file.Name || item.Usual == file.Name)
            )
        )
        {
            yield return $"The report does not name {missing.Shown} among the laboratory's own files, from which the data in it come.";
        }
    }

    private static bool Fits(Context context, DataQuery query, int index)
    {
        var before = context.Stated[..index];
        if (before.Contains(query))
        {
            return false;
        }

        // Those beyond the ones that are listed one by one are counted in one query, without a line.
        return query is { Source.Line: null, Values.Items: [_] }
            ? context.ColumnsOf(query) is not null
                && before.Count(other =>
                    other.Kind == query.Kind && other.Source.File == query.Source.File
                ) == QueryList.MostListed
            : s_fits.TryGetValue(query.Kind, out var fits) && fits(context, query);
    }

    private static bool FitsUnreadFile(Context context, DataQuery query) =>
        query is { Source: { Line: null, Column: null, File: var name }, Observed: "" }
        && PlainNames.IsTable(name)
        && name != StudyFileNames.Looks
        && !context.Raw.Contains(name);

    // Where study.toml maps columns, further ones are left alone.
    private static bool FitsUnusedColumn(Context context, DataQuery query) =>
        query.Source is { Line: >= 1, Column: { Length: > 0 } name }
        && query.Observed == QueryList.Shown(name)
        && context.ColumnsOf(query) is { Layout: null } columns
        && !columns.Names.Contains(name);

    private static bool FitsColumnLeftAside(Context context, DataQuery query) =>
        query is { Source: { Line: >= 1, Column: { } name }, Values.Items: [var read] }
        && query.Observed == name
        && context.ColumnsOf(query) is { Layout: { } layout } columns
        && columns.Names.Contains(name)
        && layout.HeaderOf(name) == read
        && read != name;

    private static bool FitsHidden(Context context, DataQuery query) =>
        query
            is {
                Source: { Column: null, File: var name, Line: var line },
                Observed: "",
                Values.Items: [("row" or "column") and var what, var first, var count]
            }
        && Tables.Workbook.IsName(name)
        && context.ColumnsOf(query) is not null
        && IsCount(first)
        && IsCount(count)
        && (what == "row") == (line is not null);

    private static bool FitsLeftAside(Context context, DataQuery query) =>
        query
            is {
                Source: { Line: null, Column: null, File: var name },
                Observed: "",
                Values.Items: [var by, var what, var count]
            }
        && context.ColumnsOf(query) is { } columns
        && IsCount(count)
        && by switch
        {
            "message" => MessageFile.IsName(name) && MessageHead.IsLeftAside(what),
            "status" => MessageFile.IsName(name)
                && columns.Layout is { } layout
                && ResultStatus.MeaningOf(what, layout.Statuses) == StatusMeaning.LeftAside,
            "analyte" => columns.Layout?.OtherAnalytes.Contains(what) == true,
            _ => false,
        };

    private static bool IsCount(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && number > 0;

    private static bool FitsDuplicate(Context context, DataQuery query) =>
        query is { Source: { Line: not null, Column: null }, Values.Items: [var key, var line] }
        && context.ColumnsOf(query) is not null
        && context.Counted(query.Source) is var (file, second)
        && int.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out var first)
        && first < second
        && context.KeysOn(file, first).Contains((key, query.Observed));

    private static bool FitsSigned(DataQuery query) =>
        query.Values.Items is [var day, _, ..] values
        && (day == UnknownDay || StrictDate.TryRead(day, out _))
        && values.Skip(1).ToImmutableArray() is var names
        && names.SequenceEqual(names.Distinct().Order(StringComparer.Ordinal))
        && names.All(IsInput);

    private static bool IsInput(string name) =>
        name is StudyBytes.ProtocolName or StudyBytes.FactsName or LockFile.Name
        || LockedProtocols.IsStoredName(name)
        || name == StudyFileNames.Usual.Specimens
        || name == StudyFileNames.Usual.Results
        || name == StudyFileNames.Usual.Controls;

    private static bool IsOf(DataQuery query, string file) =>
        query.Source is { Line: null, Column: null, File: var named } && named == file;

    /// <summary>A file of data as study.toml names it.</summary>
    private sealed record OwnFile(string Shown, string Usual, CsvColumns Columns, bool IsCarried);

    private sealed record Context(
        ImmutableArray<OwnFile> Files,
        ImmutableArray<string> Raw,
        ImmutableArray<DataQuery> Stated,
        StudyIntakeResult Study
    )
    {
        private ILookup<(string File, int Line), (string Key, string Result)>? _keys;

        public string? LockSha256 => Study.Identity.HashOf(LockFile.Name);

        public static Context Of(
            StudyBytes attached,
            StudyIntakeResult study,
            StatedAnalysis stated
        )
        {
            // The tables in the report are canonical; these are the laboratory's own.
            var data = StudyReading.DataFilesOf(
                new StudyBytes(attached.Files.RemoveRange(attached.Tables))
            );
            var usual = StudyFileNames.Usual;

            OwnFile File(DataFile file, string name) =>
                new(
                    file.Shown,
                    name,
                    data.Pairs is { } pairs && pairs.Shown == file.Shown
                        ? pairs.Columns
                        : file.Columns,
                    attached.Files.ContainsKey(name)
                );

            IEnumerable<OwnFile> Files(DataFile file, string name, ImmutableArray<string> more) =>
                more.Select(further => File(file, name) with { Shown = further, Usual = further })
                    .Prepend(File(file, name));

            return new(
                [
                    .. Files(data.Specimens, usual.Specimens, data.More.Specimens),
                    .. Files(data.Results, usual.Results, data.More.Results),
                    .. Files(data.Controls, usual.Controls, data.More.Controls),
                ],
                [.. stated.RawFiles.Select(file => file.Name)],
                stated.OwnFileQueries,
                study
            );
        }

        /// <summary>The columns of the file that a query is about; null where it is none of the laboratory's files of data.</summary>
        public CsvColumns? ColumnsOf(DataQuery query) =>
            Raw.Contains(query.Source.File)
                ? Files
                    .FirstOrDefault(file =>
                        file.Shown == query.Source.File || file.Usual == query.Source.File
                    )
                    ?.Columns
                : null;

        /// <summary>The first file of the kind, with the line as it is counted through all of them.</summary>
        public (string File, int Line)? Counted(QuerySource source)
        {
            var names = Study.Inputs.Facts.Files;
            return StudyFileNames.CountedLine(source, names.Results, names.MoreResults)
                    is { } result
                    ? (names.Results, result)
                : StudyFileNames.CountedLine(source, names.Controls, names.MoreControls)
                    is { } control
                    ? (names.Controls, control)
                : null;
        }

        /// <summary>The results that a line of the laboratory's file gave.</summary>
        public IEnumerable<(string Key, string Result)> KeysOn(string file, int line) =>
            (_keys ??= Keys())[(file, line)];

        private ILookup<(string File, int Line), (string Key, string Result)> Keys()
        {
            var inputs = Study.Inputs;
            return inputs
                .Results.Select(row =>
                    (
                        File: inputs.Facts.Files.Results,
                        Line: row.SourceRow,
                        Key: ResultDuplicates.KeyOf(row),
                        row.Result.Text
                    )
                )
                .Concat(
                    inputs.Controls.Select(row =>
                        (
                            File: inputs.Facts.Files.Controls,
                            Line: row.SourceRow,
                            Key: ControlChecks.KeyOf(row),
                            row.Result.Text
                        )
                    )
                )
                .ToLookup(row => (row.File, row.Line), row => (row.Key, QueryList.Shown(row.Text)));
        }
    }
}
