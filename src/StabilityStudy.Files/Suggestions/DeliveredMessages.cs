using System.Collections.Frozen;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Messages;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>
/// Reads a file of HL7 v2 result messages as a table of which the standard names the columns. What the standard leaves open is found here: which of its codes names
/// the tube and which the analyte, and what becomes of results that are not final. No other field is looked at than those that can be read.
/// </summary>
internal static class DeliveredMessages
{
    private const double Most = 0.9;

    private static readonly System.Buffers.SearchValues<char> s_signs =
        System.Buffers.SearchValues.Create("-./_:#+");

    private static readonly ImmutableArray<string> s_codes =
    [
        "specimen_id",
        "laboratory_specimen_id",
        "filler_order",
        "placer_order",
    ];

    private static readonly ImmutableArray<string> s_analytes =
    [
        "test_code",
        "local_code",
        "loinc",
    ];

    private static readonly ImmutableArray<string> s_plain =
    [
        "result",
        "unit",
        "flag",
        "instrument",
        "tested_at",
    ];

    /// <summary>Whether a file holds messages, by its name or its beginning.</summary>
    public static bool Are(string name, ReadOnlySpan<byte> bytes) =>
        MessageFile.IsName(name) || bytes.TrimStart("\uFEFF\v\r\n"u8).StartsWith("MSH|"u8);

    /// <summary>The table; none where the messages cannot be read, with the reason.</summary>
    public static (ImmutableArray<DeliveredTable> Tables, string Reason) Of(
        string name,
        ReadOnlyMemory<byte> bytes,
        StatedLayout stated,
        Surroundings study
    )
    {
        if (!MessageFile.IsName(name))
        {
            return ([], $"HL7 v2 messages: let its name end in {MessageFile.Extension}");
        }

        var isWide =
            Encodings.Of(bytes.Span, stated.Text("encoding")) is { Encoding: FileEncoding.Utf16 };
        var layout = FileLayout.Plain with
        {
            Encoding = isWide ? FileEncoding.Utf16 : FileEncoding.Utf8,
        };
        var queries = new QueryList();
        if (
            MessageFile.TextOf(bytes, layout, name, KindOfTable.Results.Section, queries)
            is not { } text
        )
        {
            return ([], "its messages cannot be read");
        }

        ImmutableArray<TableLine> lines =
        [
            .. new MessageReading(Settings(layout.Encoding, study), name, queries).Lines(text),
        ];
        ImmutableArray<TableLine> rows = [.. lines.Skip(1)];
        if (rows.IsEmpty)
        {
            return (
                [],
                queries.ToImmutable() is [var query, ..]
                    ? query.Message
                    : "no message holds a result"
            );
        }

        var meanings = Meanings(rows, study);
        return (
            [
                new(
                    name,
                    null,
                    Shape(lines[0], rows, meanings),
                    isWide ? [ReadLine.Text("encoding", "utf-16")] : [],
                    [
                        new(
                            "messages",
                            "HL7 v2",
                            HowSure.Sure,
                            FormattableString.Invariant(
                                $"{rows.Length} observations; only the fields that FORMATS.md lists are read"
                            )
                        ),
                    ],
                    FormattableString.Invariant($"{bytes.Length:N0} bytes, looked at whole")
                )
                {
                    Meanings = meanings,
                    Questions = [.. AboutStatus(rows)],
                },
            ],
            ""
        );
    }

    // Every status is taken for a result, so that the values beside it are seen. Free fields of the laboratory may name somebody, and a reason of rejection changes results.
    private static MessageSettings Settings(FileEncoding encoding, Surroundings study) =>
        new(
            encoding,
            study.Known.Times.Zone,
            ResultStatus.Known.ToFrozenDictionary(
                status => status,
                status =>
                    status == ResultStatus.CannotBeObtained
                        ? StatusMeaning.NoResult
                        : StatusMeaning.Result,
                StringComparer.Ordinal
            ),
            MessageColumns
                .Names.Except([
                    MessageColumns.RejectReason,
                    "laboratory_field_1",
                    "laboratory_field_2",
                ])
                .ToFrozenSet(StringComparer.Ordinal),
            text =>
                TradeValues.MissingOf(text) is not null
                || study.Analytes.Any(analyte =>
                    analyte.Categories.Contains(text, StringComparer.OrdinalIgnoreCase)
                )
        );

    private static TableShape Shape(
        TableLine names,
        ImmutableArray<TableLine> rows,
        ImmutableDictionary<string, string> meanings
    )
    {
        int[] places =
        [
            .. MessageColumns
                .Names.Select((_, i) => i)
                .Where(i => meanings.ContainsKey(MessageColumns.Names[i])),
        ];
        TableLine Taken(TableLine line) =>
            line with
            {
                Cells = [.. places.Select(place => line.Cells[place])],
            };
        var header = Taken(names);
        return new(
            new([header], [.. header.Cells.Select(cell => cell.Text)], places.Length),
            IsFirst: true,
            Units: null,
            [.. rows.Select(Taken)],
            Footer: [],
            Repeats: 0,
            Titles: 0,
            Others: 0
        );
    }

    private static ImmutableDictionary<string, string> Meanings(
        ImmutableArray<TableLine> rows,
        Surroundings study
    )
    {
        var found = s_plain
            .Where(column => Texts(rows, column).Any(text => text.Length > 0))
            .ToImmutableDictionary(column => column);
        if (!found.ContainsKey("tested_at"))
        {
            found = found.Add(MessageColumns.ObservedAt, TimeColumns.Printed);
        }

        var analyte = s_analytes.MaxBy(column =>
            Texts(rows, column).Count(text => !TradeValues.AnalytesOf(text, study.Analytes).IsEmpty)
        );
        found = found.SetItem(analyte!, "analyte");
        if (
            Texts(rows, "sub_id") is var replicates
            && replicates.All(text => text is [>= '1' and <= '9'])
        )
        {
            found = found.Add("sub_id", "replicate");
        }

        return found.AddRange(Codes(rows, study));
    }

    /// <summary>The column that names known specimens most often, and another one for the tube where the two together name known tubes.</summary>
    private static IEnumerable<KeyValuePair<string, string>> Codes(
        ImmutableArray<TableLine> rows,
        Surroundings study
    )
    {
        var filled = s_codes
            .Where(column => Texts(rows, column).Any(text => text.Length > 0))
            .ToArray();
        if (filled.Length == 0)
        {
            return [];
        }

        var specimen = filled.MaxBy(column =>
            Texts(rows, column).Count(text => Names(text, study))
        )!;
        var tube = filled.FirstOrDefault(column =>
            column != specimen
            && Texts(rows, specimen)
                .Zip(Texts(rows, column))
                .Count(code => study.Find(code.First, code.Second) is not null)
                >= Most * rows.Length
        );
        return tube is null
            ? [new(specimen, "specimen")]
            : [new(specimen, "specimen"), new(tube, "tube")];
    }

    // The specimen alone, or with the tube behind a sign or as a letter.
    private static bool Names(string text, Surroundings study) =>
        study.Find(text) is not null
        || (text.Length > 1 && study.Find(text[..^1]) is not null)
        || (
            text.AsSpan().LastIndexOfAny(s_signs) is > 0 and var at
            && study.Find(text[..at]) is not null
        );

    private static IEnumerable<string> Texts(ImmutableArray<TableLine> rows, string column)
    {
        var place = MessageColumns.Names.IndexOf(column);
        return rows.Select(row => row.TextAt(place));
    }

    /// <summary>A status with one meaning is proposed; where the standard leaves a choice, a person is asked.</summary>
    private static IEnumerable<DialectQuestion> AboutStatus(ImmutableArray<TableLine> rows)
    {
        var statuses = Texts(rows, "status")
            .Distinct()
            .Except([ResultStatus.Final, ResultStatus.CannotBeObtained])
            .Order(StringComparer.Ordinal)
            .ToArray();
        if (statuses.Length == 0)
        {
            yield break;
        }

        var choices = statuses.Select(ResultStatus.AllowedFor).ToArray();
        var named = statuses
            .Select(status => status.Length == 0 ? ResultStatus.None : status)
            .ToArray();
        yield return new(
            $"What becomes of results with the status {string.Join(", ", statuses.Select((status, i) => $"{named[i]}{(ResultStatus.WordsOf(status) is { Length: > 0 } words ? $" ({words})" : "")}"))} (OBX-11)? See what the laboratory did, and uncomment the line that is right, or write another: {string.Join(", ", FileWords.StatusMeanings.Words)}.",
            [
                .. Enumerable
                    .Range(0, choices.Max(choice => choice.Length))
                    .Select(way => new ReadLine(
                        "result_status",
                        TomlLiteral.Braces(
                            named.Select(
                                (status, i) =>
                                    (
                                        status,
                                        FileWords.StatusMeanings.Write(
                                            choices[i][Math.Min(way, choices[i].Length - 1)]
                                        )
                                    )
                            )
                        )
                    )),
            ]
        );
    }
}
