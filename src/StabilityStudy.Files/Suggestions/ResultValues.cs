namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts the results: their column, their decimal sign, and the words that stand in place of them.</summary>
internal static class ResultValues
{
    /// <summary>Drafts decimal sign, rounding and the words in place of results, and leaves the results commented out where a number could be read wrongly.</summary>
    public static void Draft(
        SectionDraft draft,
        Surroundings study,
        ImmutableArray<ColumnProfile> results,
        HowSure sure,
        string why,
        params ImmutableArray<ColumnProfile> others
    )
    {
        var words = DraftWords(draft, results, study.Analytes);
        sure = Least(sure, DecimalSigns.Draft(draft, results.AddRange(others)));
        if (
            results.Any(column =>
                column.Filled.Any(cell => cell.Kind == Tables.CellKind.RoundedNumber)
            )
        )
        {
            var cell = results
                .SelectMany(column => column.Filled)
                .First(item => item.Kind == Tables.CellKind.RoundedNumber);
            var asked = draft.Ask(
                $"Cells of {draft.Table.File} show fewer decimals than they store: shown {cell.Text}, stored {cell.Other}. Which was reported? Uncomment one line.",
                couldChangeNumbers: true,
                key: "numbers"
            );
            draft.Lines.Add(ReadLine.Text("numbers", "as shown").Answering(asked, isTried: true));
            draft.Lines.Add(ReadLine.Text("numbers", "as stored").Answering(asked, isTried: false));
            draft.Settings.Add(
                new("numbers", "", HowSure.Ask, $"shown {cell.Text}, stored {cell.Other}")
            );
        }

        foreach (var column in results)
        {
            var numbers = column.Filled.Count(cell => cell.Text.Any(char.IsAsciiDigit));
            draft.Say(
                column,
                WideColumns.ReadAs(draft, column),
                Least(sure, words.Sure, column.IsNumeric ? HowSure.Sure : HowSure.Likely),
                FormattableString.Invariant($"{numbers} numbers")
                    + (words.Why.Length > 0 ? $", {words.Why}" : "")
                    + (why.Length > 0 ? $"; {why}" : "")
            );
        }
    }

    /// <summary>The least sure of several.</summary>
    public static HowSure Least(params ReadOnlySpan<HowSure> all)
    {
        var least = HowSure.Sure;
        foreach (var one in all)
        {
            least = one < least ? one : least;
        }

        return least;
    }

    /// <summary>Maps the column of results; where several may be it, a person is asked.</summary>
    public static ImmutableArray<ColumnProfile> DraftColumn(SectionDraft draft)
    {
        ImmutableArray<ColumnProfile> columns =
        [
            .. draft.Rest.Where(column =>
                draft.MeaningOf(column) == "result" && !column.IsTimes && !column.Filled.IsEmpty
            ),
        ];
        var only =
            columns.Length == 1
                ? columns[0]
                : columns.FirstOrDefault(column => column.Header == "result");
        if (only is not null)
        {
            draft.Map("result", only);
            return [only];
        }

        var question = draft.Ask(
            columns.IsEmpty
                ? $"Which column of {draft.Table.File} holds the results? Write it as result under columns."
                : $"Which column of {draft.Table.File} holds the results: {string.Join(", ", columns.Select(column => column.Shown))}? Uncomment one line.",
            couldChangeNumbers: true
        );
        foreach (var column in columns)
        {
            draft.Lines.Add(
                ReadLine
                    .Column("result", column.Header)
                    .Answering(question, isTried: column == columns[0])
            );
        }

        return columns;
    }

    /// <summary>Drafts the words that stand in place of results.</summary>
    /// <returns>How many there are, in words, and how sure it is.</returns>
    private static (HowSure Sure, string Why) DraftWords(
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
}
