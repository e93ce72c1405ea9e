using System.Text;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Writes a table of [read], ready to be pasted into study.toml.</summary>
internal static class ReadText
{
    private const string Wide = "wide.";
    private const string Values = "values.";

    // Dialect first, then how times and codes are written.
    private static readonly ImmutableArray<string> s_order =
    [
        "file",
        "more_files",
        "sheet",
        "encoding",
        "delimiter",
        "decimal",
        "numbers",
        "header_line",
        "header_rows",
        "footer_lines",
        "header_repeats",
        "units",
        "empty_cell",
        "trim_spaces",
        "date_format",
        "century",
        "time_zone",
        "tube_pattern",
        "whole_code",
        "time_point_of_tube",
        "convert",
        "result_status",
    ];

    /// <summary>The table.</summary>
    /// <param name="draft">What is proposed.</param>
    /// <param name="isTrial">Whether the answers that are tried stand in it, so that rows can be read; never for a person.</param>
    public static string Write(SectionDraft draft, bool isTrial)
    {
        var path = $"read.{draft.Section}";
        var lines = Named(draft)
            .Concat(draft.Written)
            .Where(line => !isTrial || line.Question is null || line.IsTried)
            .ToArray();
        var text = new StringBuilder($"[{path}]\n");
        foreach (
            var line in lines
                .Where(line => line.Table.Length == 0)
                .OrderBy(line => s_order.IndexOf(line.Key))
        )
        {
            Append(text, line, isTrial);
        }

        Table(text, path, "columns", lines, isTrial);
        Table(text, path, "constants", lines, isTrial);
        AppendValues(text, path, lines, isTrial);
        foreach (
            var part in lines
                .Where(line => line.Table.StartsWith(Wide, StringComparison.Ordinal))
                .GroupBy(line => line.Table)
        )
        {
            text.Append(!isTrial && part.All(line => line.Question is not null) ? "# " : "")
                .Append(CultureInfo.InvariantCulture, $"[[{path}.wide]]")
                .Append(
                    !isTrial
                    && part.First().Question is { } question
                    && part.All(line => line.Question is not null)
                        ? Remark(FormattableString.Invariant($"question {question}"))
                        : ""
                )
                .Append('\n');
            foreach (var line in part)
            {
                Append(text, line, isTrial);
            }
        }

        return text.ToString();
    }

    private static IEnumerable<ReadLine> Named(SectionDraft draft)
    {
        ReadLine[] names =
        [
            ReadLine.Text("file", draft.Table.File),
            .. draft.MoreFiles.Count > 0
                ?
                [
                    new ReadLine(
                        "more_files",
                        $"[{string.Join(", ", draft.MoreFiles.Select(TomlLiteral.Quoted))}]"
                    ),
                ]
                : Array.Empty<ReadLine>(),
        ];
        return draft.FileQuestion is { } question
            ? names.Select(line => line.Answering(question, isTried: true))
            : names;
    }

    private static void Table(
        StringBuilder text,
        string path,
        string table,
        ReadLine[] lines,
        bool isTrial
    )
    {
        var own = lines.Where(line => line.Table == table).ToArray();
        if (own.Length > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"[{path}.{table}]\n");
            foreach (var line in own)
            {
                Append(text, line, isTrial);
            }
        }
    }

    // The words of a column stand in one line, unless one of them is a question: then each has its own, so that it can be answered.
    private static void AppendValues(
        StringBuilder text,
        string path,
        ReadLine[] lines,
        bool isTrial
    )
    {
        var columns = lines
            .Where(line => line.Table.StartsWith(Values, StringComparison.Ordinal))
            .GroupBy(line => line.Table[Values.Length..])
            .ToArray();
        var plain = columns.Where(column => column.All(line => line.Question is null)).ToArray();
        if (plain.Length > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"[{path}.values]\n");
            foreach (var column in plain)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"{column.Key} = {{ {string.Join(", ", column.Select(line => $"{line.Key} = {line.Value}"))} }}{Remark(string.Join("; ", column.Select(line => line.Remark).Where(remark => remark.Length > 0).Distinct()))}\n"
                );
            }
        }

        foreach (var column in columns.Except(plain))
        {
            text.Append(CultureInfo.InvariantCulture, $"[{path}.values.{column.Key}]\n");
            foreach (var line in column)
            {
                Append(text, line, isTrial);
            }
        }
    }

    private static void Append(StringBuilder text, ReadLine line, bool isTrial)
    {
        var value = isTrial && line.Tried.Length > 0 ? line.Tried : line.Value;
        var isOpen = line.Question is not null && !isTrial;
        text.Append(isOpen ? "# " : "")
            .Append(line.Key)
            .Append(" = ")
            .Append(value)
            .Append(
                isOpen
                    ? Remark(FormattableString.Invariant($"question {line.Question}"))
                    : Remark(line.Remark)
            )
            .Append('\n');
    }

    private static string Remark(string remark) => remark.Length == 0 ? "" : $"   # {remark}";
}
