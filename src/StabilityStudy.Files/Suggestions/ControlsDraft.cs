using StabilityStudy.Files.Columns;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts [read.controls]: a row a control result.</summary>
internal static class ControlsDraft
{
    private static readonly ImmutableArray<string> s_plain = [ControlColumns.Run.Name];

    /// <summary>Drafts the table.</summary>
    /// <returns>The reading of times that is tried, and another that is in question.</returns>
    public static (TimeReading Reading, TimeReading? Other) Draft(
        SectionDraft draft,
        Surroundings study
    )
    {
        PersonalColumns.Say(draft, study);
        var control = Take(draft, ControlColumns.Control.Name);
        var analytes = AnalyteWords.Draft(draft, study);
        var results = ResultValues.DraftColumn(draft);
        var (sure, why) = ResultUnits.Draft(draft, study, results, analytes);
        ImmutableArray<ColumnProfile> limits =
        [
            .. new[]
            {
                ControlColumns.Target.Name,
                ControlColumns.AllowedLow.Name,
                ControlColumns.AllowedHigh.Name,
            }
                .Select(name => Take(draft, name))
                .OfType<ColumnProfile>(),
        ];
        ResultValues.Draft(draft, study, results, sure, why, limits);
        DraftKind(draft, control, limits);
        var times = TimeColumns.Map(
            draft,
            [ControlColumns.TestedAt.Name],
            ControlColumns.TestedAt.Name
        );
        var reading = TimeForm.Draft(draft, times.Values, study, null);
        NamedColumns.Draft(draft, study, s_plain);
        if (!draft.Has(ControlColumns.Run.Name))
        {
            draft.Ask(
                $"{draft.Table.File} names no run, by which controls and results belong together. Have both exported with it, or add it.",
                couldChangeNumbers: false,
                table: "columns",
                key: "run"
            );
        }

        return reading;
    }

    private static void DraftKind(
        SectionDraft draft,
        ColumnProfile? control,
        ImmutableArray<ColumnProfile> limits
    )
    {
        const string Kind = "kind";
        if (Take(draft, Kind) is { } column)
        {
            foreach (
                var (text, _) in column.Values.Where(value =>
                    !FileWords.ControlKinds.Words.Contains(value.Text)
                )
            )
            {
                TextQuestions.AskWord(
                    draft,
                    Kind,
                    text,
                    $"Is \"{TextQuestions.Shown(text)}\" of {draft.Table.File} a control or a bridging plasma?"
                );
            }

            return;
        }

        // What has neither target nor limits may be the plasma that is measured in every run.
        string[] without = control is null
            ? []
            :
            [
                .. control
                    .Values.Select(value => value.Text)
                    .Where(name =>
                        Enumerable
                            .Range(0, control.Cells.Length)
                            .All(row =>
                                control.Cells[row].Text.Trim() != name
                                || limits.All(limit => limit.Cells[row].IsEmpty)
                            )
                    ),
            ];
        if (control is null || without.Length == 0 || without.Length == control.Values.Length)
        {
            return;
        }

        var question = draft.Ask(
            $"{Encodings.InWords(without.Select(TextQuestions.Shown))} of {draft.Table.File} has no target and no limits. Is it a bridging plasma, the same plasma in every run? Then uncomment the lines of kind; else give target and limits.",
            couldChangeNumbers: false,
            table: "columns",
            key: Kind
        );
        draft.Lines.Add(ReadLine.Column(Kind, control.Header).Answering(question, isTried: true));
        foreach (var (name, _) in control.Values)
        {
            draft.Lines.Add(
                ReadLine
                    .Word(
                        Kind,
                        name,
                        FileWords.ControlKinds.Write(
                            without.Contains(name)
                                ? ControlKind.BridgingPlasma
                                : ControlKind.Control
                        )
                    )
                    .Answering(question, isTried: true)
            );
        }
    }

    private static ColumnProfile? Take(SectionDraft draft, string ours)
    {
        var column = draft.Rest.FirstOrDefault(item =>
            draft.MeaningOf(item) == ours && !item.Filled.IsEmpty && !item.IsTimes
        );
        if (column is not null)
        {
            draft.Map(ours, column);
            draft.Say(column, ours, HowSure.Sure, "by its name");
        }

        return column;
    }
}
