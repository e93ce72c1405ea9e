using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace StabilityStudy.Files.Formats;

/// <summary>The reference of the keys and columns, published as FORMATS.md.</summary>
internal static class FormatsDocument
{
    public static string ToMarkdown()
    {
        var text = new StringBuilder();
        text.Append("# Keys and columns of the study files\n\n");
        text.Append(
            "Durations are a whole number and a unit (`\"30 min\"`, `\"4 h\"`, `\"14 d\"`), dates `\"2026-02-28\"`. A key of a table is written with a point: "
                + "`analyte.unit` is `unit` under `[[analyte]]`. An unknown or misspelt key stops the study.\n"
        );
        AppendKeys(text, "protocol.toml", ProtocolNotes.All);
        AppendKeys(text, "study.toml", FactsNotes.All);
        text.Append(
            "\n# Columns of the data files\n\n"
                + "UTF-8, fields between commas, the first line names the columns in any order. Times are written with the offset from UTC, "
                + "or without it where study.toml names a time zone. An optional column may be empty or left out. A facility's own file, with other "
                + "names, words, signs and date formats, is described under `[read.…]` in study.toml.\n"
        );
        AppendColumns(text, "specimens.csv: a row a tube", ColumnNotes.Specimens);
        AppendColumns(text, "results.csv: a row a result", ColumnNotes.Results);
        AppendColumns(text, "controls.csv: a row a control result", ColumnNotes.Controls);
        AppendColumns(
            text,
            "A file with a row a pair, in place of the first two",
            ColumnNotes.Pairs
        );
        return text.ToString();
    }

    private static void AppendKeys(
        StringBuilder text,
        string file,
        ImmutableArray<KeyNote> notes
    ) => Append(text, file, "key", notes, note => note.Line);

    private static void AppendColumns(
        StringBuilder text,
        string title,
        ImmutableArray<KeyNote> notes
    ) => Append(text, title, "column", notes, note => note.Example);

    private static void Append(
        StringBuilder text,
        string title,
        string what,
        ImmutableArray<KeyNote> notes,
        Func<KeyNote, string> example
    )
    {
        text.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n");
        text.Append(
            CultureInfo.InvariantCulture,
            $"| {what} | needed | meaning | example |\n| --- | --- | --- | --- |\n"
        );
        foreach (var note in notes)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"| `{note.Path}` | {Words(note.Need)} | {note.Meaning} | `{example(note)}` |\n"
            );
        }
    }

    private static string Words(KeyNeed need) =>
        need switch
        {
            KeyNeed.Optional => "no",
            KeyNeed.Depends => "see meaning",
            KeyNeed.OfSomeKinds => "for these kinds",
            _ => "yes",
        };
}
