namespace StabilityStudy.Files.Suggestions;

/// <summary>Finds the time point of each row: from a column, or from the tube by how long after collection it was tested.</summary>
internal static class Occasions
{
    private const double Nearly = 0.9;

    /// <summary>Drafts the column of time points.</summary>
    /// <returns>Whether the file has one.</returns>
    public static bool DraftColumn(SectionDraft draft, Surroundings study)
    {
        var column = draft.Rest.FirstOrDefault(item =>
            draft.MeaningOf(item) == "time_point" && !item.IsTimes
        );
        if (column is null)
        {
            return false;
        }

        draft.Map("time_point", column);
        var unknown = new List<string>();
        var isBare = false;
        foreach (var (text, _) in column.Values)
        {
            if (study.Known.OccasionByWord.ContainsKey(text))
            {
                continue;
            }

            var named = TradeValues.OccasionIn(text, study.TimePoints);
            var occasion = named ?? TradeValues.BareOccasion(text, study.TimePoints);
            isBare |= named is null && occasion is not null;
            if (occasion is { } found)
            {
                draft.Lines.Add(ReadLine.Word("time_point", text, found.ToString()));
            }
            else
            {
                unknown.Add(text);
            }
        }

        foreach (var text in unknown.Take(TextQuestions.Most))
        {
            TextQuestions.AskWord(
                draft,
                "time_point",
                text,
                $"Which time point is \"{TextQuestions.Shown(text)}\" in {column.Shown} of {draft.Table.File}? Write baseline or a time point of the protocol."
            );
        }

        draft.Say(
            column,
            "time_point",
            unknown.Count > 0 ? HowSure.Ask
                : isBare ? HowSure.Likely
                : HowSure.Sure,
            unknown.Count > 0
                ? FormattableString.Invariant($"{unknown.Count} words are not planned in the protocol")
                : isBare ? "numbers are taken for hours"
                : "every word is a time point of the protocol"
        );
        return true;
    }

    /// <summary>Drafts the time point of each tube, from the delays of the rows.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="study">What is known of the study.</param>
    /// <param name="codes">Specimen and tube of each row.</param>
    /// <param name="tested">When each row was tested; null where it cannot be read.</param>
    public static void DraftOfTubes(
        SectionDraft draft,
        Surroundings study,
        TubeCodes codes,
        ImmutableArray<DateTime?> tested
    )
    {
        var delays = DelaysOf(study, codes, tested);
        var parts = codes.Rows.Select(row => row?.Part ?? "").Where(part => part.Length > 0).Distinct().Order(StringComparer.Ordinal).ToArray();
        if (parts.Length == 0 || parts.Length > study.TimePoints.Length + 4)
        {
            draft.Ask(
                $"Nothing in {draft.Table.File} says at which time point a result was planned. Write time_point under columns, or time_point_of_tube.",
                couldChangeNumbers: false,
                key: "time_point_of_tube"
            );
            return;
        }

        var entries = new List<(string Part, string Occasion)>();
        var (fits, all) = (0, 0);
        var isClear = true;
        foreach (var part in parts)
        {
            var ofPart = delays.Where(item => item.Part == part).Select(item => item.Delay).ToArray();
            var ranked = study
                .Occasions.Select(occasion => (Occasion: occasion, Count: ofPart.Count(delay => study.Fits(occasion, delay))))
                .OrderByDescending(item => item.Count)
                .ToArray();
            entries.Add((part, ranked[0].Count > 0 ? ranked[0].Occasion.ToString() : "?"));
            isClear &= ranked[0].Count >= Nearly * ofPart.Length && ofPart.Length > 0;
            fits += ranked[0].Count;
            all += ofPart.Length;
        }

        var isOneToOne = entries.Select(entry => entry.Occasion).Distinct().Count() == entries.Count;
        var line = new ReadLine("time_point_of_tube", TomlLiteral.Braces(entries));
        if (isClear && isOneToOne)
        {
            draft.Lines.Add(line);
            draft.Settings.Add(
                new(
                    "time point",
                    "of the tube",
                    study.Tubes.IsEmpty ? HowSure.Likely : HowSure.Sure,
                    FormattableString.Invariant(
                        $"{string.Join(", ", entries.Select(entry => $"{entry.Part} {entry.Occasion}"))}: the delay fits in {fits} of {all} rows"
                    )
                )
            );
            return;
        }

        draft.Settings.Add(
            new(
                "time point",
                "",
                HowSure.Ask,
                all == 0
                    ? "the tube may tell it; no collection time shows at which delay each was tested"
                    : FormattableString.Invariant($"the delay fits the tube in {fits} of {all} rows only")
            )
        );
        draft.Lines.Add(
            line.Answering(
                draft.Ask(
                    $"At which time point is each tube of {draft.Table.File} tested? Correct time_point_of_tube where it is wrong, and uncomment it.",
                    couldChangeNumbers: false,
                    key: "time_point_of_tube"
                ),
                isTried: entries.All(entry => entry.Occasion != "?")
            )
        );
    }

    /// <summary>The delay of each row since collection, or since the first test of its specimen where no collection time is known.</summary>
    private static IEnumerable<(string Part, TimeSpan Delay)> DelaysOf(
        Surroundings study,
        TubeCodes codes,
        ImmutableArray<DateTime?> tested
    )
    {
        var first = new Dictionary<string, DateTime>(StringComparer.Ordinal);
        for (var i = 0; i < tested.Length; i++)
        {
            if (codes.Rows[i] is var (specimen, _, _) && tested[i] is { } time)
            {
                first[specimen] = first.TryGetValue(specimen, out var before) && before < time ? before : time;
            }
        }

        for (var i = 0; i < tested.Length; i++)
        {
            if (codes.Rows[i] is not var (specimen, tube, part) || tested[i] is not { } time)
            {
                continue;
            }

            if (study.Find(specimen, tube) is { } row)
            {
                yield return (part, time - row.CollectedAt.DateTime);
            }
            else if (study.Tubes.IsEmpty)
            {
                yield return (part, time - first[specimen]);
            }
        }
    }
}
