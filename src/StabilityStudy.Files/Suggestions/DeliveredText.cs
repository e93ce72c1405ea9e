using StabilityStudy.Files.Csv;
using StabilityStudy.Files.OwnTables;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Suggestions;

/// <summary>
/// The text of a delivered file, as much of it as is looked at: all of a small one, head, middle and end of a large one. Lines are
/// told apart and read by the reader of all tables.
/// </summary>
/// <param name="Parts">Text as UTF-8, with the number of lines before it.</param>
/// <param name="IsWhole">Whether that is all of it.</param>
internal sealed record DeliveredText(
    ImmutableArray<(ReadOnlyMemory<byte> Text, int LinesBefore)> Parts,
    bool IsWhole
)
{
    /// <summary>Bytes up to which a file is looked at as a whole.</summary>
    public const int WholeBytes = 12 << 20;

    private const int PartBytes = 4 << 20;

    /// <summary>Takes the parts of a text.</summary>
    public static DeliveredText Of(ReadOnlyMemory<byte> utf8)
    {
        if (utf8.Length <= WholeBytes)
        {
            return new([(utf8, 0)], true);
        }

        var parts = ImmutableArray.CreateBuilder<(ReadOnlyMemory<byte>, int)>();
        var counted = 0;
        var lines = 0;
        foreach (var from in new[] { 0, (utf8.Length - PartBytes) / 2, utf8.Length - PartBytes })
        {
            var start = from == 0 ? 0 : from + utf8.Span[from..].IndexOf((byte)'\n') + 1;
            var end =
                from + PartBytes >= utf8.Length
                    ? utf8.Length
                    : utf8.Span[..(from + PartBytes)].LastIndexOf((byte)'\n') + 1;
            lines += utf8.Span[counted..start].Count((byte)'\n');
            counted = start;
            parts.Add((utf8[start..end], lines));
        }

        return new(parts.ToImmutable(), false);
    }

    /// <summary>The first lines, each by itself, whatever stands in the others.</summary>
    public ImmutableArray<TableLine> Head(char delimiter)
    {
        var found = ImmutableArray.CreateBuilder<TableLine>();
        var rest = Parts[0].Text;
        for (var number = 1; number <= HeaderSearch.MostLines && !rest.IsEmpty; number++)
        {
            var end = rest.Span.IndexOfAny((byte)'\n', (byte)'\r');
            var line = end < 0 ? rest : rest[..end];
            var isPair =
                end >= 0 && rest.Span[end] == '\r' && rest.Span[(end + 1)..] is [(byte)'\n', ..];
            rest = end < 0 ? default : rest[(isPair ? end + 2 : end + 1)..];
            if (Read(line, delimiter, 1).FirstOrDefault() is { IsEmpty: false } read)
            {
                found.Add(read with { Number = number });
            }
        }

        return found.ToImmutable();
    }

    /// <summary>The lines from one on.</summary>
    public ImmutableArray<TableLine> Lines(char delimiter, int fromLine) =>
        [
            .. Parts.SelectMany(
                (part, i) =>
                    Read(part.Text, delimiter, i == 0 ? fromLine : 1)
                        .Select(line => line with { Number = line.Number + part.LinesBefore })
            ),
        ];

    private static IEnumerable<TableLine> Read(
        ReadOnlyMemory<byte> text,
        char delimiter,
        int fromLine
    ) =>
        DelimitedText.Lines(
            text,
            FileLayout.Plain with
            {
                Delimiter = delimiter,
            },
            fromLine,
            "",
            new QueryList()
        );
}
