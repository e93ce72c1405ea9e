using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts [read.specimens]: a row a tube.</summary>
internal static class TubesDraft
{
    private static readonly ImmutableArray<string> s_plain =
    [
        "draw_position",
        "fill_percent",
        "inversions",
        "hematocrit_percent",
        "device",
    ];

    /// <summary>Drafts the table.</summary>
    /// <returns>The reading of times that is tried, and another that is in question.</returns>
    public static (TimeReading Reading, TimeReading? Other) Draft(
        SectionDraft draft,
        Surroundings study
    )
    {
        PersonalColumns.Say(draft, study);
        var codes = TubeCodes.Draft(draft, study with { Tubes = [] });
        if (codes is not null && codes.Rows.All(row => row is var (_, tube, _) && tube.Length == 0))
        {
            draft.Lines.Add(
                ReadLine
                    .Constant("tube", "A")
                    .Answering(
                        draft.Ask(
                            $"{draft.Table.File} names no tube. Has each specimen one tube? Then uncomment tube under constants.",
                            couldChangeNumbers: false,
                            table: "constants",
                            key: "tube"
                        ),
                        isTried: true
                    )
            );
        }

        DraftSubject(draft);
        DraftCode(
            draft,
            "group",
            [.. study.Protocol.Groups.Values.Select(group => (group.Id, group.Name))]
        );
        DraftCode(
            draft,
            "storage",
            [.. study.Protocol.Storages.Values.Select(storage => (storage.Id, storage.Id))]
        );
        DraftWords(draft, "clot", [.. FileWords.ClotChecks.Words]);
        DraftWords(draft, "hemolysis", [.. FileWords.HemolysisGrades.Words]);
        DecimalSigns.Draft(
            draft,
            draft.Rest.Where(column =>
                draft.MeaningOf(column) is "fill_percent" or "hematocrit_percent"
            )
        );
        var times = TimeColumns.Map(
            draft,
            TubeColumns
                .Table.Columns.All.Where(column => column.Content == ColumnContent.Times)
                .Select(column => column.Name),
            TubeColumns.CollectedAt.Name
        );
        var reading = TimeForm.Draft(draft, times.Values, study, null);
        NamedColumns.Draft(draft, study, s_plain);
        return reading;
    }

    private static void DraftSubject(SectionDraft draft)
    {
        if (Named(draft, "subject") is { } column)
        {
            draft.Map("subject", column);
            draft.Say(
                column,
                "subject",
                HowSure.Sure,
                FormattableString.Invariant(
                    $"{column.Values.Length} persons in {column.Cells.Length} rows"
                )
            );
            return;
        }

        var specimen = draft.Lines.FirstOrDefault(line =>
            line is { Table: "columns", Key: "specimen" }
        );
        var question = draft.Ask(
            $"{draft.Table.File} has no column of persons (subject). Is each specimen of another person?"
                + (
                    specimen is null
                        ? " Add a column with the study code of the person."
                        : " Then uncomment subject; else add a column with the study code of the person."
                ),
            couldChangeNumbers: false,
            table: "columns",
            key: "subject"
        );
        if (specimen is not null)
        {
            draft.Lines.Add((specimen with { Key = "subject" }).Answering(question, isTried: true));
        }
    }

    /// <summary>A column whose fields must be codes of the protocol; the only code of the protocol where the file has no such column.</summary>
    public static void DraftCode(
        SectionDraft draft,
        string ours,
        ImmutableArray<(string Id, string Name)> planned
    )
    {
        if (Named(draft, ours) is not { } column)
        {
            var line = planned.Length > 0 ? ReadLine.Constant(ours, planned[0].Id) : null;
            if (planned.Length == 1)
            {
                draft.Lines.Add(line!);
                draft.Settings.Add(
                    new(
                        ours,
                        planned[0].Id,
                        HowSure.Likely,
                        "the only one of the protocol; the file names none"
                    )
                );
            }
            else if (line is not null)
            {
                draft.Lines.Add(
                    line.Answering(
                        draft.Ask(
                            $"Which {ours} of the protocol are the tubes of {draft.Table.File}: {Encodings.InWords(planned.Select(item => item.Id))}? The file names none.",
                            couldChangeNumbers: false,
                            table: "constants",
                            key: ours
                        ),
                        isTried: true
                    )
                );
            }

            return;
        }

        draft.Map(ours, column);
        var unknown = 0;
        foreach (
            var (text, _) in column.Values.Where(value =>
                planned.All(item => item.Id != value.Text)
            )
        )
        {
            var word = PlainWords.Compact(text);
            if (
                planned
                    .Where(item =>
                        PlainWords.Compact(item.Id) == word || PlainWords.Compact(item.Name) == word
                    )
                    .ToArray()
                is [var only]
            )
            {
                draft.Lines.Add(ReadLine.Word(ours, text, only.Id));
            }
            else if (unknown++ < TextQuestions.Most)
            {
                TextQuestions.AskWord(
                    draft,
                    ours,
                    text,
                    $"Which {ours} of the protocol is \"{TextQuestions.Shown(text)}\" in {column.Shown} of {draft.Table.File}: {Encodings.InWords(planned.Select(item => item.Id))}?"
                );
            }
        }

        draft.Say(
            column,
            ours,
            unknown > 0 ? HowSure.Ask : HowSure.Sure,
            unknown > 0
                ? FormattableString.Invariant($"{unknown} words not known")
                : "codes of the protocol"
        );
    }

    /// <summary>A column whose fields are words of ours.</summary>
    public static void DraftWords(SectionDraft draft, string ours, ImmutableArray<string> known)
    {
        if (Named(draft, ours) is not { } column)
        {
            return;
        }

        draft.Map(ours, column);
        var unknown = 0;
        foreach (var (text, _) in column.Values.Where(value => !known.Contains(value.Text)))
        {
            if (TradeValues.WordOf(ours, text) is { } word)
            {
                draft.Lines.Add(ReadLine.Word(ours, text, word));
            }
            else if (unknown++ < TextQuestions.Most)
            {
                TextQuestions.AskWord(
                    draft,
                    ours,
                    text,
                    $"What does \"{TextQuestions.Shown(text)}\" in {column.Shown} of {draft.Table.File} mean: {Encodings.InWords(known.Where(w => w.Length > 0))}?"
                );
            }
        }

        draft.Say(
            column,
            ours,
            unknown > 0 ? HowSure.Ask : HowSure.Sure,
            unknown > 0
                ? FormattableString.Invariant($"{unknown} words not known")
                : "every word is known"
        );
    }

    private static ColumnProfile? Named(SectionDraft draft, string ours) =>
        draft.Rest.FirstOrDefault(column =>
            draft.MeaningOf(column) == ours && !column.Filled.IsEmpty
        );
}
