using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts the columns that need no more than their name, and those that must name what study.toml lists.</summary>
internal static class NamedColumns
{
    /// <summary>Maps columns by their names, then those of instrument, lot and operator, and says of the rest that it is not read.</summary>
    public static void Draft(SectionDraft draft, Surroundings study, ImmutableArray<string> plain)
    {
        foreach (var column in draft.Rest.ToArray())
        {
            var ours = draft.MeaningOf(column);
            if (column.Filled.IsEmpty)
            {
                draft.Say(column, "not read", HowSure.Sure, "empty");
            }
            else if (
                draft.Ours.Names.Contains(column.Header) && ours is not ("instrument" or "lot")
            )
            {
                draft.Say(column, column.Header, HowSure.Sure, "by our own name");
            }
            else if (ours is not null && plain.Contains(ours) && !draft.Has(ours))
            {
                draft.Map(ours, column);
                draft.Say(column, ours, HowSure.Sure, "by its name");
            }
            else if (ours is "instrument" or "lot")
            {
                DraftListed(
                    draft,
                    column,
                    ours,
                    ours == "instrument" ? study.Known.Instruments : study.Known.Lots
                );
            }
            else if (
                ours == "operator"
                && column.Values.All(value => study.Known.People.Holds(value.Text))
            )
            {
                draft.Map(ours, column);
                draft.Say(column, ours, HowSure.Sure, "codes of persons of study.toml");
            }
            else
            {
                draft.Say(
                    column,
                    "not read",
                    ours is null && column.IsNumeric ? HowSure.Likely : HowSure.Sure,
                    ours switch
                    {
                        "operator" => "not codes of persons of study.toml: may be names",
                        "remark" => "free text, which may tell of persons",
                        _ when column.IsTimes && draft.EventOf(column) is { Length: > 0 } =>
                            "a time that this kind of file does not have",
                        null when column.IsNumeric => "numbers under a name that is not known here",
                        _ => "not needed, or not known by this name",
                    }
                );
            }
        }

        foreach (
            var column in draft
                .Profiles.Where(column =>
                    column.HasSpaces
                    && draft.Lines.Any(line =>
                        line.Table == "columns"
                        && line.Value.Contains(
                            TomlLiteral.Quoted(column.Header),
                            StringComparison.Ordinal
                        )
                    )
                )
                .Take(1)
        )
        {
            draft.Lines.Add(new("trim_spaces", "true"));
            draft.Settings.Add(
                new("spaces", "around fields", HowSure.Sure, $"in {column.Shown}: no part of them")
            );
        }
    }

    // An instrument or lot that study.toml does not list would stop each row; without the column a change of it goes unseen.
    private static void DraftListed(
        SectionDraft draft,
        ColumnProfile column,
        string ours,
        CodeSet known
    )
    {
        var missing = column
            .Values.Where(value => !known.Holds(value.Text))
            .Select(value => value.Text)
            .ToArray();
        if (missing.Length == 0)
        {
            draft.Map(ours, column);
            draft.Say(column, ours, HowSure.Sure, $"{ours}s of study.toml");
            return;
        }

        draft.Lines.Add(
            ReadLine
                .Column(ours, column.Header)
                .Answering(
                    draft.Ask(
                        $"{column.Shown} of {draft.Table.File} names {string.Join(", ", missing.Take(3).Select(text => $"\"{TextQuestions.Shown(text)}\""))}, and study.toml lists no such {ours}. Add a [[{ours}]] with that id and uncomment the line: without it nobody sees a change of {ours}.",
                        couldChangeNumbers: false
                    ),
                    isTried: false
                )
        );
        draft.Say(
            column,
            "",
            HowSure.Ask,
            FormattableString.Invariant($"{missing.Length} not listed in study.toml")
        );
    }
}
