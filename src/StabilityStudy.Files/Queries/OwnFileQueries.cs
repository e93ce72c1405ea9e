using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using StabilityStudy.Core.Queries;

namespace StabilityStudy.Files.Queries;

/// <summary>
/// Data queries about the laboratory's own files and record, which a report does not carry, so that they cannot be raised
/// again from it. Their words are fixed but for what was read and a few values, so that a report can be drawn again from
/// what its analysis.json states of them, and can state nothing else.
/// </summary>
internal static class OwnFileQueries
{
    private delegate (string Message, string Action) Words(
        string file,
        string observed,
        ImmutableArray<string> values
    );

    private static readonly ImmutableArray<(
        QueryKind Kind,
        int Least,
        int Most,
        Words Words
    )> s_all =
    [
        (
            FileQueries.FileNotRead,
            0,
            0,
            (file, _, _) =>
                (
                    $"The study folder has a table \"{file}\" that this study does not read.",
                    "Move it elsewhere, or say in a deviation what it is."
                )
        ),
        (
            LockFileQueries.RecordChainBroken,
            0,
            0,
            (_, _, _) =>
                (
                    "A line of the record of the study does not follow the one before it: a line was taken away, added or changed.",
                    "Find out who changed the record; put it back from a copy, or say in a deviation what happened."
                )
        ),
        (
            LockFileQueries.LockNotAsRecorded,
            0,
            0,
            (_, _, _) =>
                (
                    "protocol.lock is not the file that the record of the study names: it was changed, or replaced.",
                    "Put the file back as the program wrote it, or say in a deviation what happened."
                )
        ),
        (
            LockFileQueries.LockNotRecorded,
            0,
            0,
            (_, _, _) =>
                (
                    "There is a lock, and no record of the study names it: the record was left behind, or taken away.",
                    "Put record.jsonl back into the folder; where there never was one, say so in a deviation."
                )
        ),
        (
            LockFileQueries.SignedWithOtherFiles,
            2,
            int.MaxValue,
            (_, _, values) =>
                (
                    $"A report of this study was signed on {values[0]}, and of the files as a report names them these have changed since: {string.Join(", ", values.Skip(1))}.",
                    "Say in a deviation what changed and why; withdraw the signed report where it no longer stands."
                )
        ),
        (
            CsvQueries.ColumnMisspelt,
            1,
            1,
            (_, observed, values) =>
                (
                    $"The column \"{observed}\" is not used. Did you mean \"{values[0]}\"?",
                    $"Rename it to \"{values[0]}\" if that is meant."
                )
        ),
        (
            CsvQueries.ColumnNotUsed,
            0,
            0,
            (_, observed, _) =>
                (
                    $"The column \"{observed}\" is not known; it is not used and appears in no output.",
                    "Nothing, if that is intended."
                )
        ),
        (
            CsvQueries.OwnColumnLeftAside,
            1,
            1,
            (_, observed, values) =>
                (
                    $"The file has a column \"{observed}\", and study.toml reads \"{values[0]}\" in its place.",
                    "Check that the right column is read, and say in a deviation why it is not the other."
                )
        ),
        (
            RowQueries.DuplicateRow,
            2,
            2,
            (_, _, values) =>
                (
                    $"{values[0]} is already on line {values[1]}, with the same content; this row is not used.",
                    "Remove one of them."
                )
        ),
    ];

    /// <summary>Whether a query is one of these.</summary>
    public static bool Includes(DataQuery query) => KindOf(query.Code) is not null;

    /// <summary>A query with its words.</summary>
    /// <exception cref="ArgumentException">The kind is none of these, or wants other values.</exception>
    public static DataQuery Of(
        QueryKind kind,
        QuerySource source,
        string observed,
        params ImmutableArray<string> values
    )
    {
        var (message, action) = WordsOf(kind, source, observed, values);
        return new DataQuery(kind, source, observed, message, action)
        {
            Values = new QueryValues(values),
        };
    }

    /// <summary>The query that an analysis.json states; null where it is none of these or cannot be one.</summary>
    public static DataQuery? Restore(JsonElement stated)
    {
        if (
            KindOf(stated.GetProperty("code").GetString()) is not { } kind
            || !stated.TryGetProperty("values", out var given)
        )
        {
            return null;
        }

        var source = stated.GetProperty("source");
        var place = new QuerySource(
            source.GetProperty("file").GetString() ?? "",
            source.GetProperty("line") is { ValueKind: JsonValueKind.Number } line
                ? line.GetInt32()
                : null,
            source.GetProperty("column").GetString()
        );
        ImmutableArray<string> values =
        [
            .. given.EnumerateArray().Select(value => value.GetString() ?? ""),
        ];
        try
        {
            return Of(kind, place, stated.GetProperty("observed").GetString() ?? "", values);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static QueryKind? KindOf(string? code) =>
        s_all.Select(item => item.Kind).FirstOrDefault(kind => kind.Code == code);

    private static (string Message, string Action) WordsOf(
        QueryKind kind,
        QuerySource source,
        string observed,
        ImmutableArray<string> values
    )
    {
        if (
            source.Line is null
            && observed.Length == 0
            && values is [var count]
            && int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out _)
        )
        {
            return QueryList.WordsOfMore(kind, count);
        }

        var own = s_all.First(item => item.Kind == kind);
        return values.Length >= own.Least && values.Length <= own.Most
            ? own.Words(source.File, observed, values)
            : throw new ArgumentException(
                $"A data query \"{kind.Code}\" has no words for these values.",
                nameof(values)
            );
    }
}
