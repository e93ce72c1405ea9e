using System.Text;
using StabilityStudy.Files.Facts;

namespace StabilityStudy.Files.Starting;

/// <summary>
/// Writes a new study.toml from the declarations of its keys: every key with its meaning, with a value where one is known
/// and as a commented line elsewhere. So no key can be forgotten, and none explained otherwise than in FORMATS.md.
/// </summary>
internal static class FactsTemplate
{
    private const int Width = 100;
    private const char Commented = '#';

    private static readonly ImmutableHashSet<string> s_shownByExample =
    [
        ValueForms.Text.Allowed,
        ValueForms.Date.Allowed,
        ValueForms.Duration.Allowed,
        ValueForms.TimeOfDay.Allowed,
        ValueForms.Flag.Allowed,
        FactsKeys.Format.Allowed,
    ];

    public static string Write(NewStudy study)
    {
        var text = new StringBuilder();
        Paragraph(
            text,
            $"What happens in this study: people, instruments, lots, where the data are, and what was decided on the way. Begun from the ready protocol {study.Protocol}. Nothing here is fixed before data; it grows while the study runs.",
            hanging: ""
        );
        text.Append("#\n");
        Paragraph(
            text,
            "A line with # and no space after it shows how a key is written: its value is an example. Take the # away and put your own value in. A table that may stand more than once, such as [[person]], is copied as often as needed. Codes are study codes, never a patient's name, birth date or number.",
            hanging: ""
        );
        var known = KnownValues(study);
        foreach (var key in FactsKeys.Table.Keys.Where(key => key is not TableKey))
        {
            text.Append('\n');
            Paragraph(text, Explained(key));
            Line(text, key, known.GetValueOrDefault(key));
        }

        foreach (var key in FactsKeys.Table.Keys.OfType<TableKey>())
        {
            Table(text, key, key.Name, known: EntriesOf(key, study));
        }

        return text.ToString();
    }

    private static Dictionary<Key, string> KnownValues(NewStudy study)
    {
        var known = new Dictionary<Key, string>
        {
            [FactsKeys.Format] = FactsKeys.Format.Example,
            [FactsKeys.Title] = TomlLiteral.Quoted(study.Title),
            [FactsKeys.Facility] = TomlLiteral.Quoted(study.Facility),
            [FactsKeys.Question] = TomlLiteral.Quoted(study.Question),
        };
        if (study.TimeZone is { } zone)
        {
            known.Add(FactsKeys.TimeZone, TomlLiteral.Quoted(zone));
        }

        if (study.Invented)
        {
            known.Add(FactsKeys.Invented, "true");
        }

        return known;
    }

    private static ImmutableArray<Dictionary<Key, string>> EntriesOf(
        TableKey table,
        NewStudy study
    ) =>
        table == FactsKeys.People
            ?
            [
                .. study.People.Select(person => new Dictionary<Key, string>
                {
                    [PersonKeys.Code] = TomlLiteral.Quoted(person.Code),
                    [PersonKeys.Name] = TomlLiteral.Quoted(person.Name),
                    [PersonKeys.Role] = TomlLiteral.Quoted(person.Role),
                }),
            ]
        : table == FactsKeys.Instruments
            ?
            [
                .. study.Instruments.Select(instrument => new Dictionary<Key, string>
                {
                    [InstrumentKeys.Id] = TomlLiteral.Quoted(instrument.Id),
                    [InstrumentKeys.Name] = TomlLiteral.Quoted(instrument.Name),
                }),
            ]
        : table == FactsKeys.Lots ? [.. study.Lots.Select(OfLot)]
        : [];

    private static Dictionary<Key, string> OfLot(Core.Study.Lot lot)
    {
        var values = new Dictionary<Key, string>
        {
            [LotKeys.Id] = TomlLiteral.Quoted(lot.Id),
            [LotKeys.Kind] = TomlLiteral.Quoted(lot.Kind),
            [LotKeys.Analyte] = TomlLiteral.Quoted(lot.Analyte),
        };
        if (lot.Expires is { } last)
        {
            values.Add(LotKeys.Expires, FormattableString.Invariant($"\"{last:yyyy-MM-dd}\""));
        }

        return values;
    }

    /// <summary>A table: as often as something is known of it, once and commented where nothing is.</summary>
    private static void Table(
        StringBuilder text,
        TableKey table,
        string path,
        ImmutableArray<Dictionary<Key, string>> known
    )
    {
        text.Append('\n');
        Paragraph(text, Explained(table));
        if (table.IsDescribedElsewhere)
        {
            text.Append(Commented).Append(Header(table, path)).Append('\n');
            return;
        }

        foreach (var key in table.Keys.Keys.Where(IsLine))
        {
            Paragraph(text, Explained(key), indent: "  ");
        }

        foreach (var entry in known.DefaultIfEmpty([]))
        {
            var comment = known.IsEmpty ? Commented.ToString() : "";
            // The tables of "read" have headers of their own.
            if (table.Keys.Keys.Any(IsLine))
            {
                text.Append(comment).Append(Header(table, path)).Append('\n');
            }

            foreach (var key in table.Keys.Keys.Where(IsLine))
            {
                Line(text, key, entry.GetValueOrDefault(key));
            }
        }

        foreach (var inner in table.Keys.Keys.OfType<TableKey>().Where(key => !IsLine(key)))
        {
            Table(text, inner, $"{path}.{inner.Name}", []);
        }
    }

    /// <summary>Whether a key stands on one line: a value, or a table of words that are the facility's own.</summary>
    private static bool IsLine(Key key) => key is not TableKey { Keys.Keys.Count: > 0 };

    private static string Header(TableKey table, string path) =>
        table.IsList ? $"[[{path}]]" : $"[{path}]";

    private static void Line(StringBuilder text, Key key, string? value) =>
        text.Append(value is null ? $"{Commented}{key.Line}\n" : $"{key.Name} = {value}\n");

    /// <summary>"code (needed): code used in the files".</summary>
    private static string Explained(Key key) =>
        $"{key.Name}{Needed(key.Need)}: {key.Note}{Allowed(key)}.";

    /// <summary>What may be written, where the example beside it does not show that.</summary>
    private static string Allowed(Key key) =>
        key is TableKey || s_shownByExample.Contains(key.Allowed) ? "" : "; " + key.Allowed;

    private static string Needed(Need need) =>
        need switch
        {
            Need.Required => " (needed)",
            Need.Optional or Need.Depends or Need.OfSomeKinds => "",
        };

    private static void Paragraph(
        StringBuilder text,
        string words,
        string indent = "",
        string hanging = "  "
    )
    {
        var line = new StringBuilder(indent);
        foreach (var word in words.Split(' '))
        {
            if (line.Length > indent.Length && line.Length + 1 + word.Length > Width)
            {
                text.Append("# ").Append(line).Append('\n');
                line.Clear().Append(indent).Append(hanging);
            }
            else if (line.Length > indent.Length)
            {
                line.Append(' ');
            }

            line.Append(word);
        }

        text.Append("# ").Append(line).Append('\n');
    }
}
