using StabilityStudy.Files.Columns;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts [read.pairs]: a row a specimen, with its collection time, its baseline and its delayed results.</summary>
internal static class PairsDraft
{
    private static readonly ImmutableArray<string> s_plain =
    [
        PairColumns.Subject.Name,
        PairColumns.FillPercent.Name,
        PairColumns.HematocritPercent.Name,
    ];

    /// <summary>Whether a table is one of pairs: with collection times, a baseline and a later result in each row.</summary>
    public static bool Fits(SectionDraft draft, ImmutableArray<WidePart> parts) =>
        parts.Any(part => part.Occasion is { IsBaseline: true })
        && parts.Any(part => part.Occasion is { IsBaseline: false })
        && parts.All(part => part.Occasion is not null && !part.Time.IsEmpty)
        && draft.Profiles.Any(column =>
            column.IsTimes && draft.EventOf(column) == PairColumns.CollectedAt.Name
        );

    /// <summary>Drafts the table.</summary>
    /// <returns>The reading of times that is tried, and another that is in question.</returns>
    public static (TimeReading Reading, TimeReading? Other) Draft(
        SectionDraft draft,
        Surroundings study
    )
    {
        PersonalColumns.Say(draft, study);
        var parts = WideColumns.Find(draft, study);
        draft.Parts = parts;
        ImmutableArray<ColumnProfile> results = [.. parts.Select(part => part.Result)];
        if (
            draft.Rest.FirstOrDefault(column => draft.MeaningOf(column) == "specimen") is
            { } specimen
        )
        {
            draft.Map("specimen", specimen);
            TubeCodes.Say(draft, specimen, "specimen", HowSure.Sure, "");
        }
        else
        {
            draft.Ask(
                $"Which column of {draft.Table.File} holds the codes of specimens? Write it as specimen under columns.",
                couldChangeNumbers: false,
                table: "columns",
                key: "specimen"
            );
        }

        TubesDraft.DraftCode(
            draft,
            "group",
            [.. study.Protocol.Groups.Values.Select(group => (group.Id, group.Name))]
        );
        TubesDraft.DraftCode(
            draft,
            "storage",
            [.. study.Protocol.Storages.Values.Select(storage => (storage.Id, storage.Id))]
        );
        TubesDraft.DraftWords(draft, "clot", [.. FileWords.ClotChecks.Words]);
        TubesDraft.DraftWords(draft, "hemolysis", [.. FileWords.HemolysisGrades.Words]);
        var (sure, why) = ResultUnits.DraftWide(draft, study, parts);
        ResultValues.Draft(draft, study, results, sure, why);
        var spun = Spun(draft, study);
        var times = TimeColumns.Map(
            draft,
            [PairColumns.CollectedAt.Name, PairColumns.SpunAt.Name],
            PairColumns.CollectedAt.Name
        );
        var reading = TimeForm.Draft(
            draft,
            [
                .. times.Values,
                .. parts.Select(part => part.Time),
                .. spun.Select(item => ImmutableArray.Create(item.Column)),
            ],
            study,
            null
        );
        foreach (var part in parts.DistinctBy(part => part.Time[0].Place))
        {
            draft.Say(
                part.Time,
                $"tested_at, {part.Occasion}",
                HowSure.Sure,
                "by its name, beside its result"
            );
        }

        DraftParts(draft, parts, spun);
        WideColumns.DraftEmpty(
            draft,
            [.. parts.Where(part => part.Occasion is { IsBaseline: false })]
        );
        NamedColumns.Draft(draft, study, s_plain);
        return reading;
    }

    private static void DraftParts(
        SectionDraft draft,
        ImmutableArray<WidePart> parts,
        ImmutableArray<(ColumnProfile Column, TestOccasion Occasion)> spun
    )
    {
        string[] SpunAt(TestOccasion occasion) =>
            [
                .. spun.Where(item => item.Occasion == occasion)
                    .Take(1)
                    .Select(item => item.Column.Header),
            ];
        var number = 0;
        foreach (var delayed in parts.Where(part => part.Occasion is { IsBaseline: false }))
        {
            if (
                parts.FirstOrDefault(part =>
                    part.Occasion is { IsBaseline: true } && part.Analyte?.Id == delayed.Analyte?.Id
                )
                is not { } baseline
            )
            {
                draft.Ask(
                    $"{delayed.Result.Shown} of {draft.Table.File} has no baseline of its analyte, so that it makes no pair. Write its columns under wide, or leave it out.",
                    couldChangeNumbers: false
                );
                continue;
            }

            var table = FormattableString.Invariant($"wide.{number++}");
            draft.Lines.Add(
                new ReadLine(
                    "columns",
                    WideColumns.Braces([
                        ("baseline_result", [baseline.Result.Header]),
                        ("baseline_tested_at", [.. baseline.Time.Select(column => column.Header)]),
                        ("baseline_spun_at", [.. SpunAt(default)]),
                        ("delayed_result", [delayed.Result.Header]),
                        ("delayed_tested_at", [.. delayed.Time.Select(column => column.Header)]),
                        ("spun_at", [.. SpunAt(delayed.Occasion ?? default)]),
                    ])
                )
                {
                    Table = table,
                }
            );
            (string, string)[] constants =
            [
                .. delayed.Analyte is { } analyte
                    ? [("analyte", analyte.Id)]
                    : Array.Empty<(string, string)>(),
                ("time_point", (delayed.Occasion ?? default).ToString()),
            ];
            draft.Lines.Add(
                new ReadLine("constants", TomlLiteral.Braces(constants)) { Table = table }
            );
        }
    }

    // "Spun 6 h" is the time of spinning of that tube.
    private static ImmutableArray<(ColumnProfile Column, TestOccasion Occasion)> Spun(
        SectionDraft draft,
        Surroundings study
    )
    {
        var found = ImmutableArray.CreateBuilder<(ColumnProfile Column, TestOccasion Occasion)>();
        foreach (var column in draft.Rest.Where(column => column.IsTimes).ToArray())
        {
            if (
                TradeValues.OccasionIn(column.Header, study.TimePoints) is { } occasion
                && HeaderWords.EventOf(WideColumns.WithoutOccasion(column.Header, study))
                    == PairColumns.SpunAt.Name
            )
            {
                found.Add((column, occasion));
                draft.Say(column, $"spun_at, {occasion}", HowSure.Sure, "by its name");
            }
        }

        return found.ToImmutable();
    }
}
