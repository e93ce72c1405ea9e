namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts what the facility's words for analytes mean.</summary>
internal static class AnalyteWords
{
    /// <summary>Drafts the analyte.</summary>
    /// <returns>The analyte of each row; null where it is not known.</returns>
    public static ImmutableArray<Analyte?> Draft(SectionDraft draft, Surroundings study)
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
}
