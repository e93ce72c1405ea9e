using System.Text;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Formats;

/// <summary>The reference of the keys and columns, published as FORMATS.md; it is written from their declarations.</summary>
internal static class FormatsDocument
{
    public static string ToMarkdown()
    {
        var text = new StringBuilder();
        text.Append("# Keys and columns of the study files\n\n");
        text.Append(
            "Durations are a whole number and a unit (`\"30 min\"`, `\"4 h\"`, `\"14 d\"`), at most ten years; dates `\"2026-02-28\"`. "
                + $"{StrictNumber.Bounds}. A key of a table is written with a point: "
                + "`analyte.unit` is `unit` under `[[analyte]]`. An unknown or misspelt key or word stops the study.\n"
        );
        AppendKeys(text, "protocol.toml", ProtocolKeys.Table);
        AppendKeys(text, "study.toml", FactsKeys.Table);
        text.Append(
            "\n# Columns of the data files\n\n"
                + FormattableString.Invariant(
                    $"UTF-8, fields between commas, at most {CsvFile.LongestRecord} bytes a row; the first line names the columns in any order. "
                )
                + "Times are written with the offset from UTC, "
                + "or without it where study.toml names a time zone. An optional column may be empty or left out. A facility's own file, with other "
                + "names, words, signs and date formats, is described under `[read.…]` in study.toml.\n"
        );
        AppendColumns(text, "specimens.csv: a row a tube", TubeColumns.Table.Columns);
        AppendColumns(text, "results.csv: a row a result", ResultColumns.Table.Columns);
        AppendColumns(text, "controls.csv: a row a control result", ControlColumns.Table.Columns);
        AppendColumns(
            text,
            "looks.csv: looks at other data of the study, written by the program from its record",
            LookColumns.Table.Columns
        );
        AppendColumns(
            text,
            "A file with a row a pair, in place of the first two",
            PairColumns.Columns
        );
        return text.ToString();
    }

    private static void AppendKeys(StringBuilder text, string file, KeyTable table)
    {
        AppendTitle(text, file, "key");
        AppendKeys(text, "", table);

        static void AppendKeys(StringBuilder text, string path, KeyTable table)
        {
            foreach (var key in table.Keys)
            {
                AppendRow(text, path + key.Name, key.Need, key.Note, key.Allowed, key.Line);
                if (key is TableKey { IsDescribedElsewhere: false } inner)
                {
                    AppendKeys(text, $"{path}{key.Name}.", inner.Keys);
                }
            }
        }
    }

    private static void AppendColumns(StringBuilder text, string title, CsvColumns columns)
    {
        AppendTitle(text, title, "column");
        foreach (var column in columns.All)
        {
            AppendRow(text, column.Name, column.Need, column.Note, column.Allowed, column.Example);
        }
    }

    private static void AppendTitle(StringBuilder text, string title, string what) =>
        text.Append(
            CultureInfo.InvariantCulture,
            $"\n## {title}\n\n| {what} | needed | meaning | allowed | example |\n| --- | --- | --- | --- | --- |\n"
        );

    private static void AppendRow(
        StringBuilder text,
        string name,
        Need need,
        string note,
        string allowed,
        string example
    ) =>
        text.Append(
            CultureInfo.InvariantCulture,
            $"| `{name}` | {Words(need)} | {note} | {allowed.Replace("|", "\\|", StringComparison.Ordinal)} | `{example}` |\n"
        );

    private static string Words(Need need) =>
        need switch
        {
            Need.Required => "yes",
            Need.Optional => "no",
            Need.Depends => "see meaning",
            Need.OfSomeKinds => "for these kinds",
        };
}
