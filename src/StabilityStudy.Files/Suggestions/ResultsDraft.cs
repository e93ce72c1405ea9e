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
            (sure, why) = DraftWide(draft, study, parts);
        }
        else
        {
            var analytes = WordValues.DraftAnalytes(draft, study);
            results = DraftResult(draft);
            (sure, why) = DraftUnit(draft, study, results, analytes);
        }

        DraftNumbers(draft, study, results, sure, why);
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
        var reading = TimeColumns.DraftForm(draft, all, study, fits);
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

        WordValues.DraftFlags(draft);
        NamedColumns.Draft(draft, study, s_plain);
        return reading;
    }

    /// <summary>Drafts decimal sign, rounding and the words in place of results, and leaves the results commented out where a number could be read wrongly.</summary>
    public static void DraftNumbers(
        SectionDraft draft,
        Surroundings study,
        ImmutableArray<ColumnProfile> results,
        HowSure sure,
        string why,
        params ImmutableArray<ColumnProfile> others
    )
    {
        var words = WordValues.DraftResults(draft, results, study.Analytes);
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
    public static ImmutableArray<ColumnProfile> DraftResult(SectionDraft draft)
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

    /// <summary>Drafts the unit of the results: of a column, of the header or of the line below it; else a person is asked.</summary>
    public static (HowSure Sure, string Why) DraftUnit(
        SectionDraft draft,
        Surroundings study,
        ImmutableArray<ColumnProfile> results,
        ImmutableArray<Analyte?> analytes
    )
    {
        if (
            draft.Rest.FirstOrDefault(item =>
                draft.MeaningOf(item) == "unit" && !item.IsNumeric && !item.Filled.IsEmpty
            ) is
            { } column
        )
        {
            draft.Map("unit", column);
            var units = WordValues.DraftUnits(draft, Pairs(column, analytes));
            draft.Say(
                column,
                "unit",
                units.Sure,
                units.Why.Length > 0
                    ? units.Why
                    : FormattableString.Invariant(
                        $"in {column.Filled.Length} of {column.Cells.Length}"
                    )
            );
            return (HowSure.Sure, "");
        }

        if (results is [{ Unit.Length: > 0 } only])
        {
            if (draft.Table.Shape.Units is null)
            {
                draft.Lines.Add(ReadLine.Text("units", "in the header"));
            }

            return WordValues.DraftUnits(
                draft,
                analytes.OfType<Analyte>().Distinct().Select(analyte => (only.Unit, analyte))
            );
        }

        var named = analytes
            .OfType<Analyte>()
            .Concat(analytes.IsEmpty ? study.Analytes : [])
            .Where(analyte => analyte.Categories.IsEmpty)
            .Select(analyte => analyte.Unit)
            .Distinct()
            .ToArray();
        if (named.Length > 0)
        {
            AskUnit(draft, named[0]);
        }

        return (HowSure.Ask, "no unit in the file");
    }

    // Without a line a pair would take the unit of the protocol unseen: so a question mark stands there and stops.
    private static void AskUnit(SectionDraft draft, string planned)
    {
        var isOfPairs = draft.Section == KindOfTable.Pairs;
        var question = draft.Ask(
            $"In which unit are the results of {draft.Table.File}? The file does not say. {(isOfPairs ? "Write it in place of the question mark" : "Uncomment unit")} if it is {planned}, the unit of the protocol.",
            couldChangeNumbers: true,
            table: "constants",
            key: "unit"
        );
        draft.Lines.Add(
            isOfPairs
                ? ReadLine.Constant("unit", "?") with
                {
                    Tried = TomlLiteral.Quoted(planned),
                    Remark = FormattableString.Invariant($"question {question}"),
                }
                : ReadLine.Constant("unit", planned).Answering(question, isTried: true)
        );
    }

    /// <summary>Drafts analyte and units of a table with several results a row.</summary>
    public static (HowSure Sure, string Why) DraftWide(
        SectionDraft draft,
        Surroundings study,
        ImmutableArray<WidePart> parts
    )
    {
        if (parts.Any(part => part.Analyte is null))
        {
            WordValues.DraftAnalytes(draft, study);
        }

        if (parts.All(part => part.Result.Unit.Length > 0))
        {
            if (draft.Table.Shape.Units is null)
            {
                draft.Lines.Add(ReadLine.Text("units", "in the header"));
            }

            return WordValues.DraftUnits(
                draft,
                parts.SelectMany(part =>
                    (part.Analyte is { } one ? [one] : study.Analytes).Select(analyte =>
                        (part.Result.Unit, analyte)
                    )
                )
            );
        }

        return DraftUnit(
            draft,
            study,
            [],
            [.. parts.Select(part => part.Analyte ?? (study.Analytes is [var only] ? only : null))]
        );
    }

    private static IEnumerable<(string, Analyte)> Pairs(
        ColumnProfile column,
        ImmutableArray<Analyte?> analytes
    )
    {
        for (var i = 0; i < column.Cells.Length; i++)
        {
            if (analytes[i] is { } analyte)
            {
                yield return (column.Cells[i].Text.Trim(), analyte);
            }
        }
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
