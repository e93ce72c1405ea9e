namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts what the instrument's flags mean.</summary>
internal static class FlagWords
{
    /// <summary>Drafts what the flags mean: marks of high and low results are harmless, others are asked.</summary>
    public static void Draft(SectionDraft draft)
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
