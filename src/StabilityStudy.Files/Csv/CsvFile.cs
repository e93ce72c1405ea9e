using System.Collections.Frozen;
using CsvHelper;

namespace StabilityStudy.Files.Csv;

/// <summary>
/// Reads comma-separated text (RFC 4180) strictly, row by row: what does not fit the header line is a query with the
/// line on which the row begins, never a guess.
/// </summary>
internal static class CsvFile
{
    internal static readonly ImmutableArray<QueryKind> Losses =
    [
        CsvQueries.CsvQuotes,
        CsvQueries.CsvFieldCount,
        CsvQueries.DecimalComma,
        CsvQueries.RecordTooLong,
        MessageQueries.NotMessages,
        MessageQueries.MessageCutOff,
        MessageQueries.MessageNotRead,
        MessageQueries.SegmentOutOfPlace,
    ];

    /// <summary>The text of a file as UTF-8 without a mark; null after a query.</summary>
    public static ReadOnlyMemory<byte>? TextOf(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        QueryList queries
    )
    {
        var encoding = columns.Layout?.Encoding ?? FileEncoding.Utf8;
        if (FileText.ToUtf8(utf8, encoding, fileName, queries) is not { } text)
        {
            return null;
        }

        var bytes = Utf8Text.WithoutMark(text);
        if (TableSize.ReportExcess(bytes.Span, fileName, queries))
        {
            return null;
        }

        if (OtherForm.ReportEncoding(bytes.Span, fileName, columns.Section, queries))
        {
            return null;
        }

        return bytes;
    }

    /// <summary>Reads the rows of a file in the usual form, in its order.</summary>
    /// <param name="utf8">Content of the file; UTF-8 with or without a byte order mark, any line ends.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <param name="columns">What the file must and may have.</param>
    /// <param name="row">The row that is moved on.</param>
    /// <param name="queries">Takes what does not fit.</param>
    /// <param name="read">Called for each sound row; the row is valid only during the call.</param>
    /// <param name="header">The header line, where <paramref name="utf8"/> has rows alone; else empty.</param>
    /// <returns>How much of the file could be read.</returns>
    public static CsvReach Read(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        CsvColumns columns,
        CsvRow row,
        QueryList queries,
        Action<CsvRow> read,
        ReadOnlyMemory<byte> header
    )
    {
        if (TextOf(utf8, fileName, columns, queries) is not { } bytes)
        {
            return CsvReach.Nothing;
        }

        var options = Options(',', fileName, 0, queries);
        using var reader = CsvReader.Create(bytes, options);
        using var apart = CsvReader.Create(Utf8Text.WithoutMark(header), options);
        var ofHeader = header.IsEmpty ? reader : apart;
        if (ReadHeader(ofHeader, fileName, columns, queries) is not { } names)
        {
            return CsvReach.Nothing;
        }

        var headerLine = (int)ofHeader.LineNumber;
        var linesApart = header.IsEmpty ? 0 : 1;
        if (
            OtherForm.ReportDelimiter(names, headerLine, fileName, columns.Section, queries)
            || CsvHeader.Match(names, headerLine, fileName, columns, queries) is not { } places
        )
        {
            return CsvReach.Nothing;
        }

        var lostBefore = queries.CountOf(fileName, Losses);
        var fields = new PlainFields(reader, places);
        while (reader.Read())
        {
            var line = (int)reader.LineNumber + linesApart;
            if (
                !IsEmpty(reader)
                && IsSound(reader, names.Length, places, fileName, columns, line, queries)
            )
            {
                row.MoveTo(line, fields);
                read(row);
            }
        }

        return queries.CountOf(fileName, Losses) > lostBefore
            ? CsvReach.SomeRows
            : CsvReach.EveryRow;
    }

    private static string[]? ReadHeader(
        CsvReader reader,
        string fileName,
        CsvColumns columns,
        QueryList queries
    )
    {
        var stopsBefore = queries.StopCount;
        var isThere = reader.Read();
        if (queries.StopCount > stopsBefore)
        {
            return null;
        }

        if (isThere)
        {
            return Fields(reader);
        }

        queries.Add(
            CsvQueries.EmptyFile,
            new QuerySource(fileName, null, null),
            "",
            "The file has no header line.",
            $"Begin the file with the column names: {string.Join(",", columns.Required)}."
        );
        return null;
    }

    /// <summary>How the fields of a file are told apart.</summary>
    /// <param name="delimiter">Sign between the fields.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <param name="linesBefore">Lines of the file before those that are read.</param>
    /// <param name="queries">Takes what does not fit.</param>
    internal static CsvReaderOptions Options(
        char delimiter,
        string fileName,
        int linesBefore,
        QueryList queries
    ) =>
        CsvReaderOptions.Default with
        {
            HasHeader = false,
            Separator = delimiter,
            TrackLineNumbers = true,
            PoolStrings = true,
            MalformedData = CsvMalformedDataHandling.Skip,
            OnMalformedRecord = record =>
                queries.Add(
                    CsvQueries.CsvQuotes,
                    new QuerySource(fileName, (int)record.LineNumber + linesBefore, null),
                    "",
                    record.Reason == CsvMalformedReason.UnterminatedQuote
                        ? "A double quote is opened here and never closed, so the rest of the file cannot be read."
                        : "A double quote stands inside a field without being doubled, or text follows a closing quote."
                ),
        };

    private static string[] Fields(CsvReader reader)
    {
        var fields = new string[reader.FieldCount];
        for (var i = 0; i < fields.Length; i++)
        {
            fields[i] = reader.GetString(i);
        }

        return fields;
    }

    private static bool IsEmpty(CsvReader reader)
    {
        for (var i = 0; i < reader.FieldCount; i++)
        {
            if (!reader.IsEmpty(i))
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsSound(
        CsvReader reader,
        int expected,
        FrozenDictionary<string, int> places,
        string fileName,
        CsvColumns columns,
        int line,
        QueryList queries
    )
    {
        if (reader.RawRecord.Length > StudyLimits.RowBytes)
        {
            ReportTooLong(fileName, line, reader.RawRecord.Length, queries);
            return false;
        }

        if (reader.FieldCount != expected)
        {
            ReportFieldCount(
                Fields(reader),
                expected,
                places,
                fileName,
                columns,
                line,
                ',',
                queries
            );
            return false;
        }

        return true;
    }

    /// <summary>Raises the query about a row of too many bytes.</summary>
    internal static void ReportTooLong(string fileName, int line, int length, QueryList queries) =>
        queries.Add(
            CsvQueries.RecordTooLong,
            new QuerySource(fileName, line, null),
            "",
            FormattableString.Invariant(
                $"The row has {length} bytes; the longest allowed is {StudyLimits.RowBytes}."
            )
        );

    /// <summary>Raises the query about a row that has another number of fields than the header line.</summary>
    internal static void ReportFieldCount(
        IReadOnlyList<string> fields,
        int expected,
        IReadOnlyDictionary<string, int> places,
        string fileName,
        CsvColumns columns,
        int line,
        char delimiter,
        QueryList queries
    )
    {
        if (
            delimiter == ','
            && DecimalComma.Find(fields, columns, places, expected) is var (column, whole, decimals)
        )
        {
            queries.Add(
                CsvQueries.DecimalComma,
                new QuerySource(fileName, line, column),
                $"{whole},{decimals}",
                $"The row has one field too many; the comma in \"{whole},{decimals}\" looks like a decimal sign.",
                $"Write {whole}.{decimals}, or put the number into double quotes and write decimal = \",\" under [read.{columns.Section}] in study.toml."
            );
            return;
        }

        queries.Add(
            CsvQueries.CsvFieldCount,
            new QuerySource(fileName, line, null),
            FormattableString.Invariant($"{fields.Count}"),
            FormattableString.Invariant(
                $"The row has {fields.Count} fields, and the header line has {expected}."
            ),
            $"Check the {OtherForm.WordOf(delimiter)} of the row; put a field that holds {OtherForm.OneOf(delimiter)} into double quotes."
        );
    }
}
