using StabilityStudy.Files.Units;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts the unit of results: of a column, of the header, of the line below it, or a question.</summary>
internal static class ResultUnits
{
    /// <summary>Drafts the unit of the results: of a column, of the header or of the line below it; else a person is asked.</summary>
    public static (HowSure Sure, string Why) Draft(
        SectionDraft draft,
        Surroundings study,
        ImmutableArray<ColumnProfile> results,
        ImmutableArray<Analyte?> analytes
    )
    {
        if (
            draft.Rest.FirstOrDefault(item =>
                draft.MeaningOf(item) == "unit" && !item.IsNumeric && !item.Filled.IsEmpty
            ) is
            { } column
        )
        {
            draft.Map("unit", column);
            var units = DraftWords(draft, Pairs(column, analytes));
            draft.Say(
                column,
                "unit",
                units.Sure,
                units.Why.Length > 0
                    ? units.Why
                    : FormattableString.Invariant(
                        $"in {column.Filled.Length} of {column.Cells.Length}"
                    )
            );
            return (HowSure.Sure, "");
        }

        if (results is [{ Unit.Length: > 0 } only])
        {
            if (draft.Table.Shape.Units is null)
            {
                draft.Lines.Add(ReadLine.Text("units", "in the header"));
            }

            return DraftWords(
                draft,
                analytes.OfType<Analyte>().Distinct().Select(analyte => (only.Unit, analyte))
            );
        }

        var named = analytes
            .OfType<Analyte>()
            .Concat(analytes.IsEmpty ? study.Analytes : [])
            .Where(analyte => analyte.Categories.IsEmpty)
            .Select(analyte => analyte.Unit)
            .Distinct()
            .ToArray();
        if (named.Length > 0)
        {
            AskUnit(draft, named[0]);
        }

        return (HowSure.Ask, "no unit in the file");
    }

    // Without a line a pair would take the unit of the protocol unseen: so a question mark stands there and stops.
    private static void AskUnit(SectionDraft draft, string planned)
    {
        var isOfPairs = draft.Kind == KindOfTable.Pairs;
        var question = draft.Ask(
            $"In which unit are the results of {draft.Table.File}? The file does not say. {(isOfPairs ? "Write it in place of the question mark" : "Uncomment unit")} if it is {planned}, the unit of the protocol.",
            couldChangeNumbers: true,
            table: "constants",
            key: "unit"
        );
        draft.Lines.Add(
            isOfPairs
                ? ReadLine.Constant("unit", "?") with
                {
                    Tried = TomlLiteral.Quoted(planned),
                    Remark = FormattableString.Invariant($"question {question}"),
                }
                : ReadLine.Constant("unit", planned).Answering(question, isTried: true)
        );
    }

    /// <summary>Drafts analyte and units of a table with several results a row.</summary>
    public static (HowSure Sure, string Why) DraftWide(
        SectionDraft draft,
        Surroundings study,
        ImmutableArray<WidePart> parts
    )
    {
        if (parts.Any(part => part.Analyte is null))
        {
            AnalyteWords.Draft(draft, study);
        }

        if (parts.All(part => part.Result.Unit.Length > 0))
        {
            if (draft.Table.Shape.Units is null)
            {
                draft.Lines.Add(ReadLine.Text("units", "in the header"));
            }

            return DraftWords(
                draft,
                parts.SelectMany(part =>
                    (part.Analyte is { } one ? [one] : study.Analytes).Select(analyte =>
                        (part.Result.Unit, analyte)
                    )
                )
            );
        }

        return Draft(
            draft,
            study,
            [],
            [.. parts.Select(part => part.Analyte ?? (study.Analytes is [var only] ? only : null))]
        );
    }

    private static IEnumerable<(string, Analyte)> Pairs(
        ColumnProfile column,
        ImmutableArray<Analyte?> analytes
    )
    {
        for (var i = 0; i < column.Cells.Length; i++)
        {
            if (analytes[i] is { } analyte)
            {
                yield return (column.Cells[i].Text.Trim(), analyte);
            }
        }
    }

    /// <summary>Drafts the units of a column of units, or of those in header or unit line.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="pairs">Each unit with the analyte of which it is.</param>
    /// <returns>What was found, in words, and how sure it is.</returns>
    private static (HowSure Sure, string Why) DraftWords(
        SectionDraft draft,
        IEnumerable<(string Unit, Analyte Analyte)> pairs
    )
    {
        var sure = HowSure.Sure;
        var words = new List<string>();
        foreach (
            var group in pairs
                .Where(pair => pair.Unit.Length > 0)
                .Distinct()
                .GroupBy(pair => pair.Unit)
        )
        {
            var unit = group.Key;
            var planned = group.Select(pair => pair.Analyte.Unit).Distinct().ToArray();
            if (planned is not [var ours])
            {
                // One spelling for analytes of several units: only where each is the protocol's own is nothing to map.
                if (planned.Any(other => other != unit))
                {
                    sure = HowSure.Ask;
                    draft.Ask(
                        $"The unit \"{unit}\" of {draft.Table.File} stands beside analytes of the units {Encodings.InWords(planned)}. Read them from separate files, or correct the unit.",
                        couldChangeNumbers: true
                    );
                }

                continue;
            }

            if (unit == ours)
            {
                words.Add($"\"{unit}\"");
                continue;
            }

            var (theirs, known) = (UnitTable.Find(unit), UnitTable.Find(ours));
            if (theirs is not null && theirs == known)
            {
                draft.Lines.Add(ReadLine.Word("unit", unit, ours));
                words.Add($"\"{unit}\" -> {ours}");
            }
            else if (theirs is not null && UnitConversion.Of(unit, ours) is not null)
            {
                sure = HowSure.Ask;
                draft.Lines.Add(
                    new ReadLine("convert", TomlLiteral.Braces([(unit, ours)])).Answering(
                        draft.Ask(
                            $"Are the results of {draft.Table.File} in {unit}, and are they to be converted to {ours}, the unit of the protocol? Uncomment convert.",
                            couldChangeNumbers: true,
                            key: "convert"
                        ),
                        isTried: true
                    )
                );
                words.Add($"\"{unit}\", of the same kind as {ours}");
            }
            else
            {
                sure = HowSure.Ask;
                TextQuestions.AskWord(
                    draft,
                    "unit",
                    unit,
                    theirs?.Kind == QuantityKind.MassConcentration
                    && known?.Kind is QuantityKind.FibrinogenEquivalent or QuantityKind.DDimerUnits
                        ? $"Are the results in {unit} of {draft.Table.File} fibrinogen equivalent units (FEU) or D-dimer units (DDU)? Ask the maker of the reagent; the protocol has {ours}."
                        : $"What is the unit \"{TextQuestions.Shown(unit)}\" of {draft.Table.File}? The protocol has {ours}."
                );
                words.Add("not the unit of the protocol");
            }
        }

        return (sure, string.Join(", ", words));
    }
}
