using StabilityStudy.Files.Columns;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts [read.controls]: a row a control result.</summary>
internal static class ControlsDraft
{
    private static readonly ImmutableArray<string> s_plain = [ControlColumns.Run.Name];

    /// <summary>Drafts the table.</summary>
    /// <returns>The reading of times that is tried, and another that is in question.</returns>
    public static (TimeReading Reading, TimeReading? Other) Draft(SectionDraft draft, Surroundings study)
    {
        PersonalColumns.Say(draft, study);
        Take(draft, ControlColumns.Control.Name);
        var analytes = WordValues.DraftAnalytes(draft, study);
        var results = ResultsDraft.DraftResult(draft);
        var (sure, why) = ResultsDraft.DraftUnit(draft, study, results, analytes);
        ImmutableArray<ColumnProfile> limits =
        [
            .. new[] { ControlColumns.Target.Name, ControlColumns.AllowedLow.Name, ControlColumns.AllowedHigh.Name }
                .Select(name => Take(draft, name))
                .OfType<ColumnProfile>(),
        ];
        ResultsDraft.DraftNumbers(draft, study, results, sure, why, limits);
        DraftKind(draft);
        var times = TimeColumns.Map(draft, [ControlColumns.TestedAt.Name], ControlColumns.TestedAt.Name);
        var reading = TimeColumns.DraftForm(draft, times.Values, study, null);
        NamedColumns.Draft(draft, study, s_plain);
        if (!draft.Has(ControlColumns.Run.Name))
        {
            draft.Ask($"{draft.Table.File} names no run, by which controls and results belong together. Have both exported with it, or add it.", couldChangeNumbers: false, table: "columns", key: "run");
        }

        return reading;
    }

    private static void DraftKind(SectionDraft draft)
    {
        if (Take(draft, ControlColumns.Kind.Name) is not { } column)
        {
            return;
        }

        foreach (var (text, _) in column.Values.Where(value => !FileWords.ControlKinds.Words.Contains(value.Text)))
        {
            TextQuestions.AskWord(draft, ControlColumns.Kind.Name, text, $"Is \"{TextQuestions.Shown(text)}\" of {draft.Table.File} a control or a bridging plasma?");
        }
    }

    private static ColumnProfile? Take(SectionDraft draft, string ours)
    {
        var column = draft.Rest.FirstOrDefault(item => draft.MeaningOf(item) == ours && !item.Filled.IsEmpty && !item.IsTimes);
        if (column is not null)
        {
            draft.Map(ours, column);
            draft.Say(column, ours, HowSure.Sure, "by its name");
        }

        return column;
    }
}
