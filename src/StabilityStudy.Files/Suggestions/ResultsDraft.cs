using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Drafts [read.results]: a row a result, or a row a specimen or tube with a column a time point or an analyte.</summary>
internal static class ResultsDraft
{
    /// <summary>Columns that are taken by name where the file has them.</summary>
    private static readonly ImmutableArray<string> s_plain =
    [
        ResultColumns.Run.Name,
        ResultColumns.Replicate.Name,
        ResultColumns.Calibration.Name,
    ];

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
        var codes = TubeCodes.Draft(draft, study);
        var occasions = Occasions.DraftColumn(draft, study);
        ImmutableArray<ColumnProfile> results;
        HowSure sure;
        string why;
        if (!parts.IsEmpty)
        {
            results = [.. parts.Select(part => part.Result)];
            (sure, why) = ResultUnits.DraftWide(draft, study, parts);
        }
        else
        {
            var analytes = AnalyteWords.Draft(draft, study);
            results = ResultValues.DraftColumn(draft);
            (sure, why) = ResultUnits.Draft(draft, study, results, analytes);
        }

        ResultValues.Draft(draft, study, results, sure, why);
        var times = TimeColumns.Map(
            draft,
            parts.IsEmpty || parts.All(part => part.Time.IsEmpty)
                ? [ResultColumns.TestedAt.Name]
                : [],
            ResultColumns.TestedAt.Name
        );
        var tested = times.GetValueOrDefault(ResultColumns.TestedAt.Name, []);
        if (draft.Table.IsOfMessages && !draft.Has(ResultColumns.TestedAt.Name))
        {
            draft.Ask(
                $"{draft.Table.File} states no time of testing (OBX-19). Have the sender state it.",
                couldChangeNumbers: true,
                table: "columns",
                key: ResultColumns.TestedAt.Name
            );
        }

        ImmutableArray<ImmutableArray<ColumnProfile>> all =
        [
            .. times.Values,
            .. parts.Where(part => !part.Time.IsEmpty).Select(part => part.Time),
        ];
        Func<TimeReading, int>? fits =
            study.Tubes.IsEmpty || codes is null
                ? null
                : reading =>
                    all.Sum(columns => Fitting(study, codes, TimeColumns.Read(columns, reading)));
        var reading = TimeForm.Draft(draft, all, study, fits);
        if (!parts.IsEmpty)
        {
            WideColumns.DraftParts(draft, study, parts, codes, reading.Reading);
        }
        else if (occasions is { } planned && codes is { NameNoTube: true } && !tested.IsEmpty)
        {
            TubesOfTimePoints.Draft(
                draft,
                study,
                [
                    .. TimeColumns
                        .Read(tested, reading.Reading)
                        .Select((time, i) => (Time: time, Row: codes.Rows[i], Occasion: planned[i]))
                        .Where(test =>
                            test is { Time: not null, Row: not null, Occasion: not null }
                        )
                        .Select(test =>
                            (test.Row!.Value.Specimen, test.Occasion!.Value, test.Time!.Value)
                        ),
                ]
            );
        }

        if (
            occasions is null
            && parts.All(part => part.Occasion is null)
            && codes is { NameNoTube: false }
            && !draft.Has("time_point")
        )
        {
            Occasions.DraftOfTubes(
                draft,
                study,
                codes,
                tested.IsEmpty ? [] : TimeColumns.Read(tested, reading.Reading)
            );
        }

        if (parts.IsEmpty && occasions is null && codes is { NameNoTube: true })
        {
            draft.Ask(
                $"{draft.Table.File} names neither the tube nor the time point of a result. Have it exported with one of them.",
                couldChangeNumbers: false,
                table: "columns",
                key: "time_point"
            );
        }

        FlagWords.Draft(draft);
        NamedColumns.Draft(draft, study, s_plain);
        return reading;
    }

    // A test lies between collection and a day after the last planned delay.
    private static int Fitting(
        Surroundings study,
        TubeCodes codes,
        ImmutableArray<DateTime?> tested
    )
    {
        var longest =
            study.TimePoints.Select(point => point.Delay).DefaultIfEmpty().Max()
            + TimeSpan.FromDays(1);
        var count = 0;
        for (var i = 0; i < tested.Length && i < codes.Rows.Length; i++)
        {
            if (
                codes.Rows[i] is var (specimen, tube, _)
                && tested[i] is { } time
                && (study.Find(specimen, tube) ?? study.Find(specimen)) is { } row
                && time - row.CollectedAt.DateTime is var delay
                && delay >= TimeSpan.Zero
                && delay <= longest
            )
            {
                count++;
            }
        }

        return count;
    }
}
