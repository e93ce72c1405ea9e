using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Messages;
using StabilityStudy.Files.OwnTables;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>A table that was found in a delivered file, with what its dialect was found to be.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Sheet">Name of the sheet where the workbook has several; null otherwise.</param>
/// <param name="Shape">Where the table stands.</param>
/// <param name="Lines">Its dialect, as lines of study.toml.</param>
/// <param name="Settings">The same in words.</param>
/// <param name="Extent">Its size, and how much of it was looked at.</param>
internal sealed record DeliveredTable(
    string File,
    string? Sheet,
    TableShape Shape,
    ImmutableArray<ReadLine> Lines,
    ImmutableArray<SuggestedSetting> Settings,
    string Extent
)
{
    private static readonly ImmutableArray<(char Sign, string Written, string Word)> s_delimiters =
    [
        (';', ";", "semicolon"),
        (',', ",", "comma"),
        ('\t', "tab", "tab"),
        ('|', "|", "vertical bar"),
    ];

    /// <summary>The tables of a file; none where nothing in it looks like one, with the reason.</summary>
    public static (ImmutableArray<DeliveredTable> Tables, string Reason) Of(
        string name,
        ReadOnlyMemory<byte> bytes,
        Func<string, bool> isName,
        StatedLayout stated
    ) =>
        IsOfMessages(name, bytes.Span)
            ? (
                [],
                MessageFile.IsName(name)
                    ? "HL7 v2 messages: name it as file under [read.results]; FORMATS.md says what is read of them"
                    : $"HL7 v2 messages: let its name end in {MessageFile.Extension}"
            )
        : Workbook.IsName(name) ? OfWorkbook(name, bytes, isName, stated)
        : OfText(name, bytes, isName, stated);

    private static bool IsOfMessages(string name, ReadOnlySpan<byte> bytes) =>
        MessageFile.IsName(name) || bytes.TrimStart("\uFEFF\v\r\n"u8).StartsWith("MSH|"u8);

    private static (ImmutableArray<DeliveredTable>, string) OfText(
        string name,
        ReadOnlyMemory<byte> bytes,
        Func<string, bool> isName,
        StatedLayout stated
    )
    {
        if (
            Encodings.Of(bytes.Span, stated.Text("encoding"))
            is not var (encoding, written, setting)
        )
        {
            return (
                [],
                "its characters are stored in no way that is read here: save it again as UTF-8"
            );
        }

        var queries = new QueryList();
        if (FileText.ToUtf8(bytes, encoding, name, queries) is not { } utf8)
        {
            return ([], "its characters cannot be read: save it again as UTF-8");
        }

        var text = DeliveredText.Of(Utf8Text.WithoutMark(utf8));
        char? own = text.Parts[0].Text.Span
            is [
                (byte)'s',
                (byte)'e',
                (byte)'p',
                (byte)'=',
                var stating,
                (byte)'\r'
                or (byte)'\n',
                ..,
            ]
            ? (char)stating
            : null;
        var delimiter = stated.Text("delimiter");
        var found = s_delimiters
            .Where(item =>
                delimiter is null ? own is null || item.Sign == own : item.Written == delimiter
            )
            .Select(item => (item.Sign, item.Written, item.Word, Head: text.Head(item.Sign)))
            .Select(item =>
                (
                    item.Sign,
                    item.Written,
                    item.Word,
                    item.Head,
                    Header: stated.Number("header_line") is { } line
                        ? item.Head.FirstOrDefault(candidate => candidate.Number == line)
                        : TableShape.FindHeader(item.Head, isName)
                )
            )
            .Where(item => item.Header is not null)
            .Select(item =>
                (
                    item.Sign,
                    item.Written,
                    item.Word,
                    Shape: TableShape.Of(
                        text.Lines(item.Sign, item.Header!.Number),
                        TableShape.CountOf(item.Header, isName),
                        item.Head[0].Number == item.Header.Number,
                        isWorkbook: false
                    )
                )
            )
            .OrderByDescending(item => item.Shape.Names)
            .ThenByDescending(item => item.Shape.Rows.Length * item.Shape.Width)
            .ToArray();
        if (found is not [var (sign, toml, word, shape), ..])
        {
            return ([], "no line of it looks like the header of a table");
        }

        if (shape.Rows.IsEmpty)
        {
            return ([], "it has a header and no row with as many fields");
        }

        var all = shape.Rows.Length + shape.Others;
        var lines = new List<ReadLine>();
        if (written is not null)
        {
            lines.Add(ReadLine.Text("encoding", written));
        }

        if (sign != ',')
        {
            lines.Add(ReadLine.Text("delimiter", toml));
        }

        AddShape(lines, shape);
        return (
            [
                new(
                    name,
                    null,
                    shape,
                    [.. lines],
                    [
                        setting,
                        new(
                            "delimiter",
                            word,
                            delimiter is not null || own is not null || shape.Others == 0
                                ? HowSure.Sure
                                : HowSure.Likely,
                            delimiter is not null ? "stated in study.toml"
                                : own is not null ? "the first line states it"
                                : FormattableString.Invariant(
                                    $"{shape.Width} fields in {shape.Rows.Length} of {all} rows"
                                )
                        ),
                        .. InWords(shape, text.IsWhole),
                    ],
                    FormattableString.Invariant(
                        $"{bytes.Length:N0} bytes, looked at {(text.IsWhole ? "whole" : "at its beginning, middle and end")}"
                    )
                ),
            ],
            ""
        );
    }

    private static (ImmutableArray<DeliveredTable>, string) OfWorkbook(
        string name,
        ReadOnlyMemory<byte> bytes,
        Func<string, bool> isName,
        StatedLayout stated
    )
    {
        var queries = new QueryList();
        var sheets = Workbook.VisibleSheets(bytes, name, queries);
        if (sheets.IsEmpty)
        {
            return (
                [],
                queries.ToImmutable() is [var query, ..] ? query.Message : "it has no visible sheet"
            );
        }

        var tables = ImmutableArray.CreateBuilder<DeliveredTable>();
        foreach (
            var sheet in sheets.Where(item =>
                stated.Text("sheet") is not { } named || named == item
            )
        )
        {
            if (
                Workbook.Read(bytes, sheet, name, "results", new QueryList()) is not { } read
                || TableShape.FindHeader([.. read.Take(HeaderSearch.MostLines)], isName)
                    is not { } header
            )
            {
                continue;
            }

            var shape = TableShape.Of(
                [.. read.Where(line => line.Number >= header.Number)],
                TableShape.CountOf(header, isName),
                read[0].Number == header.Number,
                isWorkbook: true
            );
            if (shape.Rows.IsEmpty)
            {
                continue;
            }

            var lines = new List<ReadLine>();
            var settings = new List<SuggestedSetting>();
            if (sheets.Length > 1)
            {
                lines.Add(ReadLine.Text("sheet", sheet));
                settings.Add(
                    new(
                        "sheet",
                        $"\"{sheet}\"",
                        HowSure.Likely,
                        FormattableString.Invariant($"one of {sheets.Length} visible sheets")
                    )
                );
            }

            AddShape(lines, shape);
            tables.Add(
                new(
                    name,
                    sheets.Length > 1 ? sheet : null,
                    shape,
                    [.. lines],
                    [.. settings, .. InWords(shape, isWhole: true)],
                    FormattableString.Invariant(
                        $"{bytes.Length:N0} bytes, a workbook, looked at whole"
                    )
                )
            );
        }

        return (
            tables.ToImmutable(),
            tables.Count == 0 ? "no line of its sheets looks like the header of a table" : ""
        );
    }

    private static void AddShape(List<ReadLine> lines, TableShape shape)
    {
        if (!shape.IsFirst)
        {
            lines.Add(ReadLine.Number("header_line", shape.Header.Number));
        }

        if (!shape.Footer.IsEmpty)
        {
            lines.Add(ReadLine.Number("footer_lines", shape.Footer.Length));
        }

        if (shape.Titles > 0)
        {
            lines.Add(new("header_repeats", "true"));
        }

        if (shape.Units is not null)
        {
            lines.Add(ReadLine.Text("units", "in the line below"));
        }
    }

    private static IEnumerable<SuggestedSetting> InWords(TableShape shape, bool isWhole)
    {
        var at = shape.Header.Number;
        yield return new(
            "header",
            FormattableString.Invariant($"line {at}"),
            HowSure.Sure,
            at == 1 ? "the first line has the names"
                : shape.IsFirst ? "only empty lines before it"
                : FormattableString.Invariant(
                    $"{(at == 2 ? "line 1 is" : $"lines 1 to {at - 1} are")} a preamble"
                )
        );
        if (shape.Units is { } units)
        {
            yield return new(
                "units",
                FormattableString.Invariant($"line {units.Number}"),
                HowSure.Sure,
                "nothing but units below the header"
            );
        }

        if (shape.Repeats > 0)
        {
            yield return new(
                "blocks",
                FormattableString.Invariant($"{shape.Repeats + 1}"),
                HowSure.Sure,
                "the header stands again above each"
                    + (shape.Titles > 0 ? ", with a title before it" : "")
            );
        }

        if (!shape.Footer.IsEmpty)
        {
            var (first, last) = (shape.Footer[0].Number, shape.Footer[^1].Number);
            var counts =
                shape.Footer is [var only]
                && PlainWords
                    .Of(string.Join(' ', only.Cells.Select(cell => cell.Text)))
                    .Contains(shape.Rows.Length.ToString(CultureInfo.InvariantCulture));
            yield return new(
                "footer",
                first == last
                    ? FormattableString.Invariant($"line {first}")
                    : FormattableString.Invariant($"lines {first} to {last}"),
                HowSure.Likely,
                counts && isWhole
                    ? "it counts the rows, and the number is right: left out"
                    : "of another form than the rows: left out"
            );
        }

        if (shape.Others > 0)
        {
            yield return new(
                "odd rows",
                FormattableString.Invariant($"{shape.Others}"),
                HowSure.Ask,
                "another number of fields than the header: each will be a query"
            );
        }
    }
}
