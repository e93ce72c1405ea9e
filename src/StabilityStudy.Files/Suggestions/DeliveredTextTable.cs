using StabilityStudy.Files.Csv;
using StabilityStudy.Files.OwnTables;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Finds the table of a text file: how its characters are stored, what stands between its fields, and where it begins.</summary>
internal static class DeliveredTextTable
{
    private static readonly ImmutableArray<(char Sign, string Written, string Word)> s_delimiters =
    [
        (';', ";", "semicolon"),
        (',', ",", "comma"),
        ('\t', "tab", "tab"),
        ('|', "|", "vertical bar"),
    ];

    /// <summary>The table; none where nothing looks like one, with the reason.</summary>
    public static (ImmutableArray<DeliveredTable> Tables, string Reason) Of(
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
                    Header: DeliveredHeader.Find(item.Head, isName, stated)
                )
            )
            .Where(item => item.Header is not null)
            .Select(item =>
                (
                    item.Sign,
                    item.Written,
                    item.Word,
                    Shape: TableShape.Of(
                        item.Header!,
                        text.Lines(item.Sign, item.Header!.First.Number),
                        item.Head[0].Number == item.Header.First.Number,
                        isWorkbook: false
                    )
                )
            )
            .OrderByDescending(item => item.Shape.Header.Known)
            .ThenByDescending(item => item.Shape.Rows.Length * item.Shape.Header.Width)
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

        lines.AddRange(ShapeLines.Of(shape));
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
                                    $"{shape.Header.Width} fields in {shape.Rows.Length} of {all} rows"
                                )
                        ),
                        .. ShapeLines.InWords(shape, text.IsWhole),
                    ],
                    FormattableString.Invariant(
                        $"{bytes.Length:N0} bytes, looked at {(text.IsWhole ? "whole" : "at its beginning, middle and end")}"
                    )
                ),
            ],
            ""
        );
    }
}
