using System.Text;
using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Facts;
using StabilityStudy.Files.Inspection;
using StabilityStudy.Files.Notices;
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
        AppendBounds(text);
        AppendKeys(text, "protocol.toml", ProtocolKeys.Table);
        AppendKeys(text, "study.toml", FactsKeys.Table);
        AppendKeys(
            text,
            "notice.toml: what a signed notice says, written by the program and attached to it",
            NoticeKeys.Table
        );
        AppendKeys(
            text,
            "inspection.toml: how a folder for an inspection was made, written by the program",
            InspectionKeys.Table
        );
        text.Append(
            "\n# Columns of the data files\n\n"
                + FormattableString.Invariant(
                    $"UTF-8, fields between commas, at most {StudyLimits.RowBytes} bytes a row; the first line names the columns in any order. "
                )
                + "Times are written with the offset from UTC, "
                + "or without it where study.toml names a time zone. An optional column may be empty or left out. A facility's own file, with other "
                + "names, words, signs and date formats, is described under `[read.…]` in study.toml, and may be a workbook (.xlsx) or a file of HL7 v2 result messages (.hl7, below); `check --suggest` looks at tables and messages and proposes the text, with questions where two readings are possible. Of a workbook the values are read that it stores, "
                + "formulas by their last value; dates and times have no zone, so that study.toml names one; what a cell shows otherwise than it stores it, a cell that a spreadsheet has turned into a date, "
                + "an error, a formula without a value and a merged cell among the rows are queries. Units are converted only where `convert` says so; those known are "
                + string.Join(", ", Units.UnitTable.All.Select(unit => $"`{unit.Name}`"))
                + ".\n"
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
        AppendColumns(
            text,
            "A pilot file for plan --pilot: a row a pair, read for its spread and never for a conclusion",
            PilotColumns.Table.Columns
        );
        MessagesDocument.Append(text);
        AnalysisDocument.Append(text);
        return text.ToString();
    }

    private static void AppendBounds(StringBuilder text) =>
        text.Append("\n## Bounds, and characters that cannot be seen\n\n")
            .Append(
                CultureInfo.InvariantCulture,
                $"A file beyond these bounds is not read, and a message says so. protocol.toml, study.toml, protocol.lock and each copy of a locked protocol: at most {StudyLimits.InWords(StudyLimits.TomlBytes)}, and {StudyLimits.KeyParts} parts of a key between points. "
            )
            .Append(
                CultureInfo.InvariantCulture,
                $"A table of data: at most {StudyLimits.InWords(StudyLimits.TableBytes)}, {StudyLimits.TableLines} lines, and {StudyLimits.RowBytes} bytes a row; a workbook: at most {StudyLimits.InWords(StudyLimits.WorkbookBytes)}, {StudyLimits.InWords(StudyLimits.UnpackedBytes)} when it is unpacked, {Tables.Workbook.MostColumns} columns and {Tables.Workbook.MostCells / 1_000_000} million cells in the sheet that is read. record.jsonl: at most {StudyLimits.InWords(StudyLimits.RecordBytes)} and {StudyLimits.RecordLines} lines. All files of a study together: at most {StudyLimits.InWords(StudyLimits.TableBytes)}. "
            )
            .Append(
                CultureInfo.InvariantCulture,
                $"A report: at most {StudyLimits.InWords(StudyLimits.ReportBytes)}, with an analysis.json of at most {StudyLimits.InWords(StudyLimits.AnalysisBytes)} and {StudyLimits.AnalysisValues} values. A signed protocol document: at most {StudyLimits.InWords(StudyLimits.DocumentBytes)}. A key, certificate or revocation list: at most {StudyLimits.InWords(StudyLimits.KeyBytes)}. "
            )
            .Append(
                "A link that leads out of the study folder is not followed, and nothing is written through a link.\n\n"
                    + "Texts hold no character that cannot be seen: no control character, direction mark, zero-width or other format character, separator of lines, or letter without ink; free texts of the data files may have line breaks and tabs. "
                    + "Where such a character is shown all the same, because a query quotes it or a certificate, a PDF or a file name holds it, it stands as its number in brackets, such as `[U+202E]`, on the screen and in reports as text and HTML; JSON on the screen has it as `\\u202e`; in the PDF a box stands for it. "
                    + "No text of a data file begins as a formula of a spreadsheet does: with `=` or `@`, or with `+` or `-` before anything but a number.\n"
            );

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
