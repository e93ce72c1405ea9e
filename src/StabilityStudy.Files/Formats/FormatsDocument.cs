using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace StabilityStudy.Files.Formats;

/// <summary>The reference of the keys, published as FORMATS.md.</summary>
internal static class FormatsDocument
{
    public static string ToMarkdown()
    {
        var text = new StringBuilder();
        text.Append("# Keys of the study files\n\n");
        text.Append(
            "Durations are a whole number and a unit (`\"30 min\"`, `\"4 h\"`, `\"14 d\"`), dates `\"2026-02-28\"`. A key of a table is written with a point: "
                + "`analyte.unit` is `unit` under `[[analyte]]`. An unknown or misspelt key stops the study.\n"
        );
        Append(text, "protocol.toml", ProtocolNotes.All);
        Append(text, "study.toml", FactsNotes.All);
        return text.ToString();
    }

    private static void Append(StringBuilder text, string file, ImmutableArray<KeyNote> notes)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n## {file}\n\n");
        text.Append("| key | needed | meaning | example |\n| --- | --- | --- | --- |\n");
        foreach (var note in notes)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"| `{note.Path}` | {Words(note.Need)} | {note.Meaning} | `{note.Line}` |\n"
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
