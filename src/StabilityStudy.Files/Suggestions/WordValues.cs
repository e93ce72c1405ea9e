using StabilityStudy.Files.Units;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts what the words of a file mean: analytes, units, words in place of results, flags.</summary>
internal static class WordValues
{
    /// <summary>Drafts the analyte.</summary>
    /// <returns>The analyte of each row; null where it is not known.</returns>
    public static ImmutableArray<Analyte?> DraftAnalytes(SectionDraft draft, Surroundings study)
    {
        var rows = draft.Table.Shape.Rows.Length;
        var column = draft.Rest.FirstOrDefault(item =>
            draft.MeaningOf(item) == "analyte" && !item.IsTimes && !item.IsNumeric
        );
        if (column is null)
        {
            if (
                study.Analytes.FirstOrDefault(analyte =>
                    analyte.Id == draft.Stated.Constant("analyte")
                ) is
                { } stated
            )
            {
                return [.. Enumerable.Repeat<Analyte?>(stated, rows)];
            }

            if (study.Analytes is [var only])
            {
                draft.Lines.Add(ReadLine.Constant("analyte", only.Id));
                draft.Settings.Add(
                    new(
                        "analyte",
                        only.Id,
                        HowSure.Likely,
                        "the only one of the protocol; the file names none"
                    )
                );
                return [.. Enumerable.Repeat<Analyte?>(only, rows)];
            }

            draft.Ask(
                $"Of which analyte are the results of {draft.Table.File}? Write analyte under columns or constants.",
                couldChangeNumbers: true,
                table: "constants",
                key: "analyte"
            );
            return [.. Enumerable.Repeat<Analyte?>(null, rows)];
        }

        draft.Map("analyte", column);
        var found = new Dictionary<string, Analyte>(StringComparer.Ordinal);
        var unknown = new List<string>();
        var isGuess = false;
        foreach (var (text, _) in column.Values)
        {
            var exact = TradeValues.AnalytesOf(text, study.Analytes);
            var near = exact.IsEmpty ? TradeValues.BeginningOf(text, study.Analytes) : exact;
            if (near is [var one])
            {
                isGuess |= exact.IsEmpty && study.Analytes.Length > 1;
                found.Add(text, one);
            }
            else
            {
                unknown.Add(text);
            }
        }

        // Two tests of the laboratory that are taken for one analyte would be mixed: a person says whether they are one.
        foreach (
            var group in found
                .GroupBy(item => item.Value.Id)
                .Where(group => group.Count() > 1)
                .ToArray()
        )
        {
            foreach (var (text, _) in group.Where(item => item.Key != group.Key))
            {
                found.Remove(text);
                unknown.Add(text);
            }
        }

        foreach (var (text, one) in found.Where(item => item.Key != item.Value.Id))
        {
            draft.Lines.Add(ReadLine.Word("analyte", text, one.Id));
        }

        foreach (var text in unknown.Take(TextQuestions.Most))
        {
            TextQuestions.AskWord(
                draft,
                "analyte",
                text,
                $"Which analyte of the protocol is \"{TextQuestions.Shown(text)}\" in {column.Shown} of {draft.Table.File}?"
            );
        }

        draft.Say(
            column,
            "analyte",
            unknown.Count > 0 ? HowSure.Ask
                : isGuess ? HowSure.Likely
                : HowSure.Sure,
            string.Join(
                ", ",
                column
                    .Values.Take(3)
                    .Where(item => found.ContainsKey(item.Text))
                    .Select(item => FormattableString.Invariant($"\"{item.Text}\" in {item.Count}"))
            )
                + (
                    unknown.Count > 0
                        ? FormattableString.Invariant($"; {unknown.Count} words not known")
                        : ""
                )
        );
        return [.. column.Cells.Select(cell => found.GetValueOrDefault(cell.Text.Trim()))];
    }

    /// <summary>Drafts the units of a column of units, or of those in header or unit line.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="pairs">Each unit with the analyte of which it is.</param>
    /// <returns>What was found, in words, and how sure it is.</returns>
    public static (HowSure Sure, string Why) DraftUnits(
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

    /// <summary>Drafts the words that stand in place of results.</summary>
    /// <returns>How many there are, in words, and how sure it is.</returns>
    public static (HowSure Sure, string Why) DraftResults(
        SectionDraft draft,
        IEnumerable<ColumnProfile> columns,
        ImmutableArray<Analyte> analytes
    )
    {
        var sure = HowSure.Sure;
        var words = new List<string>();
        var categories = analytes.SelectMany(analyte => analyte.Categories).ToArray();
        foreach (
            var group in columns
                .SelectMany(column => column.Values)
                .Where(value => !value.Text.Any(char.IsAsciiDigit))
                .GroupBy(value => value.Text)
                .OrderByDescending(group => group.Sum(value => value.Count))
                .Take(TextQuestions.Most)
        )
        {
            var (text, count) = (group.Key, group.Sum(value => value.Count));
            if (
                FileWords.MissingReasons.TryRead(text.ToUpperInvariant(), out _)
                || categories.Contains(text, StringComparer.OrdinalIgnoreCase)
            )
            {
                words.Add(FormattableString.Invariant($"{count} \"{text}\""));
            }
            else if (TradeValues.MissingOf(text) is { } ours)
            {
                draft.Lines.Add(ReadLine.Word("result", text, ours));
                words.Add(FormattableString.Invariant($"{count} \"{text}\" -> {ours}"));
            }
            else
            {
                sure = HowSure.Ask;
                TextQuestions.AskWord(
                    draft,
                    "result",
                    text,
                    $"What does \"{TextQuestions.Shown(text)}\" in place of a result of {draft.Table.File} mean? {string.Join(", ", FileWords.MissingReasons.Words.Where(word => word.Length > 0))}."
                );
                words.Add(
                    FormattableString.Invariant(
                        $"{count} \"{TextQuestions.Shown(text)}\": not known"
                    )
                );
            }
        }

        return (sure, string.Join(", ", words));
    }

    /// <summary>Drafts what the flags mean: marks of high and low results are harmless, others are asked.</summary>
    public static void DraftFlags(SectionDraft draft)
    {
        if (
            draft.Rest.FirstOrDefault(item =>
                draft.MeaningOf(item) == "flag" && !item.Filled.IsEmpty
            )
            is not { } column
        )
        {
            return;
        }

        draft.Map("flag", column);
        var unknown = 0;
        foreach (var (text, _) in column.Values)
        {
            if (TradeValues.IsHighOrLow(text))
            {
                draft.Lines.Add(
                    ReadLine.Word(
                        "flag",
                        text,
                        FileWords.FlagMeanings.Write(FlagMeaning.Harmless)
                    ) with
                    {
                        Remark = "marks a high, low or normal result",
                    }
                );
            }
            else if (
                !FileWords.MissingReasons.TryRead(text.ToUpperInvariant(), out _)
                && unknown++ < TextQuestions.Most
            )
            {
                TextQuestions.AskWord(
                    draft,
                    "flag",
                    text,
                    $"What does flag {TextQuestions.Shown(text)} of {draft.Table.File} mean? harmless, failed, or reportable with note. Without an answer its row is a query, never an exclusion."
                );
            }
        }

        draft.Say(
            column,
            "flag",
            unknown > 0 ? HowSure.Ask : HowSure.Likely,
            string.Join(
                ", ",
                column
                    .Values.Take(4)
                    .Select(item =>
                        FormattableString.Invariant(
                            $"\"{TextQuestions.Shown(item.Text)}\" {item.Count}"
                        )
                    )
            )
                + (
                    unknown > 0
                        ? FormattableString.Invariant($": {unknown} not known")
                        : ": high and low marks"
                )
        );
    }
}
