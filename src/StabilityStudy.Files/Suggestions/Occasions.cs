namespace StabilityStudy.Files.Suggestions;

/// <summary>Finds the time point of each row: from a column, or from the tube by how long after collection it was tested.</summary>
internal static class Occasions
{
    private const double Nearly = 0.9;

    /// <summary>Drafts the column of time points.</summary>
    /// <returns>The time point of each row; null where the file has no such column.</returns>
    public static ImmutableArray<TestOccasion?>? DraftColumn(SectionDraft draft, Surroundings study)
    {
        var column = draft.Rest.FirstOrDefault(item =>
            draft.MeaningOf(item) == "time_point" && !item.IsTimes
        );
        if (column is null)
        {
            return null;
        }

        draft.Map("time_point", column);
        var meaning = new Dictionary<string, TestOccasion?>(StringComparer.Ordinal);
        var unknown = new List<string>();
        var isBare = false;
        foreach (var (text, _) in column.Values)
        {
            if (study.Known.OccasionByWord.TryGetValue(text, out var own))
            {
                meaning[text] = own;
                continue;
            }

            var named = TradeValues.OccasionIn(text, study.TimePoints);
            var occasion = named ?? TradeValues.BareOccasion(text, study.TimePoints);
            isBare |= named is null && occasion is not null;
            meaning[text] = occasion;
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
                    ? FormattableString.Invariant(
                        $"{unknown.Count} words are not planned in the protocol"
                    )
                : isBare ? "numbers are taken for hours"
                : "every word is a time point of the protocol"
        );
        return [.. column.Cells.Select(cell => meaning.GetValueOrDefault(cell.Text.Trim()))];
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
        ImmutableArray<(string Specimen, string Part, TimeSpan Delay)> delays =
        [
            .. DelaysOf(study, codes, tested),
        ];
        var parts = codes
            .Rows.Select(row => row?.Part ?? "")
            .Where(part => part.Length > 0)
            .Distinct()
            .Order(StringComparer.Ordinal)
            .ToArray();
        if (parts.Length == 0 || parts.Length > study.TimePoints.Length + 4)
        {
            draft.Ask(
                $"Nothing in {draft.Table.File} says at which time point a result was planned. Write time_point under columns, or time_point_of_tube.",
                couldChangeNumbers: false,
                key: "time_point_of_tube"
            );
            return;
        }

        var found = Assign(study, parts, delays);
        if (
            !found.IsClear
            && TubesOfTimePoints.Kinds(codes.Rows.Select(row => row?.Specimen ?? ""))
                is { Length: > 1 } kinds
        )
        {
            // Specimens of another kind, told by how their codes begin, have their tubes tested at other times.
            var each = kinds
                .Select(kind =>
                    (
                        Kind: kind,
                        Found: Assign(
                            study,
                            [
                                .. parts.Where(part =>
                                    codes.Rows.Any(row =>
                                        row is var (specimen, _, own)
                                        && own == part
                                        && specimen.StartsWith(kind, StringComparison.Ordinal)
                                    )
                                ),
                            ],
                            [
                                .. delays.Where(item =>
                                    item.Specimen.StartsWith(kind, StringComparison.Ordinal)
                                ),
                            ]
                        )
                    )
                )
                .ToArray();
            if (each.All(item => item.Found.IsClear))
            {
                found = new(
                    [
                        .. each.SelectMany(item =>
                            item.Found.Entries.Select(entry =>
                                ($"{item.Kind}*{entry.Part}", entry.Occasion)
                            )
                        ),
                    ],
                    true,
                    each.Sum(item => item.Found.Fits),
                    each.Sum(item => item.Found.All)
                );
            }
        }

        var (entries, isClear, fits, all) = found;
        var line = new ReadLine("time_point_of_tube", TomlLiteral.Braces(entries));
        if (isClear)
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
                    : FormattableString.Invariant(
                        $"the delay fits the tube in {fits} of {all} rows only"
                    )
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

    private sealed record Assigned(
        ImmutableArray<(string Part, string Occasion)> Entries,
        bool IsClear,
        int Fits,
        int All
    );

    /// <summary>The occasion of each tube that most of its delays fit.</summary>
    private static Assigned Assign(
        Surroundings study,
        IEnumerable<string> parts,
        ImmutableArray<(string Specimen, string Part, TimeSpan Delay)> delays
    )
    {
        var entries = ImmutableArray.CreateBuilder<(string, string)>();
        var (fits, all) = (0, 0);
        var isClear = true;
        foreach (var part in parts)
        {
            var own = delays.Where(item => item.Part == part).Select(item => item.Delay).ToArray();
            var (occasion, count) = study
                .Occasions.Select(item => (item, own.Count(delay => study.Fits(item, delay))))
                .MaxBy(item => item.Item2);
            entries.Add((part, count > 0 ? occasion.ToString() : "?"));
            isClear &= count > 0 && count >= Nearly * own.Length;
            fits += count;
            all += own.Length;
        }

        return new(
            entries.ToImmutable(),
            isClear && entries.Select(entry => entry.Item2).Distinct().Count() == entries.Count,
            fits,
            all
        );
    }

    /// <summary>The delay of each row since collection, or since the first test of its specimen where no collection time is known.</summary>
    private static IEnumerable<(string Specimen, string Part, TimeSpan Delay)> DelaysOf(
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
                first[specimen] =
                    first.TryGetValue(specimen, out var before) && before < time ? before : time;
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
                yield return (specimen, part, time - row.CollectedAt.DateTime);
            }
            else if (study.Tubes.IsEmpty)
            {
                yield return (specimen, part, time - first[specimen]);
            }
        }
    }
}
