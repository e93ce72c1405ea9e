using StabilityStudy.Files.Columns;

namespace StabilityStudy.Files.Suggestions;

/// <summary>One of several results of a row: its column, and what the header says of it.</summary>
/// <param name="Result">The column of the result.</param>
/// <param name="Analyte">The analyte that the header names; null where it names none.</param>
/// <param name="Occasion">The time point that it names; null where it names none.</param>
/// <param name="Time">The columns of its time of testing; empty where it has none of its own.</param>
internal sealed record WidePart(
    ColumnProfile Result,
    Analyte? Analyte,
    TestOccasion? Occasion,
    ImmutableArray<ColumnProfile> Time
);

/// <summary>Finds and drafts the results of a table with a column a time point or an analyte.</summary>
internal static class WideColumns
{
    /// <summary>The results of each row; empty where a row has one.</summary>
    public static ImmutableArray<WidePart> Find(SectionDraft draft, Surroundings study)
    {
        var named = draft
            .Rest.Where(column => draft.MeaningOf(column) is null && !column.Filled.IsEmpty)
            .Select(column =>
                (
                    Column: column,
                    Occasion: TradeValues.OccasionIn(column.Header, study.TimePoints),
                    Analytes: AnalytesIn(column.Header, study)
                )
            )
            .ToArray();
        var results = named
            .Where(item =>
                (item.Column.IsNumeric || HasResults(item.Column, study))
                && item.Analytes.Length < 2
                && (item.Occasion is not null || item.Analytes.Length == 1)
            )
            .ToArray();
        if (
            results.Length == 0
            || (
                results.Length == 1 && draft.Rest.Any(column => draft.MeaningOf(column) == "result")
            )
        )
        {
            return [];
        }

        var times = named
            .Where(item => item.Column.IsTimes && IsOfTest(item.Column.Header, study))
            .ToArray();
        return
        [
            .. results.Select(item => new WidePart(
                item.Column,
                item.Analytes is [var only] ? only : null,
                item.Occasion,
                [
                    .. times
                        .Where(time =>
                            item.Occasion is not null
                            && time.Occasion == item.Occasion
                            && (time.Analytes.IsEmpty || time.Analytes.SequenceEqual(item.Analytes))
                        )
                        .Select(time => time.Column)
                        .OrderBy(column => column.IsClock),
                ]
            )),
        ];
    }

    /// <summary>What a column of results is read as, in words.</summary>
    public static string ReadAs(SectionDraft draft, ColumnProfile column) =>
        draft.Parts.FirstOrDefault(part => part.Result == column) is { } found
            ? string.Join(
                ", ",
                new[] { "result", found.Analyte?.Id, found.Occasion?.ToString() }.OfType<string>()
            )
            : "result";

    /// <summary>Drafts a table of [[wide]] for each result.</summary>
    public static void DraftParts(
        SectionDraft draft,
        Surroundings study,
        ImmutableArray<WidePart> parts,
        TubeCodes? codes,
        TimeReading reading
    )
    {
        if (codes is not null && codes.NameNoTube && parts.All(part => part.Occasion is not null))
        {
            TubesOfTimePoints.Draft(
                draft,
                study,
                [.. parts.SelectMany(part => Tests(part, codes, reading))]
            );
        }

        foreach (var (part, i) in parts.Select((part, i) => (part, i)))
        {
            var table = FormattableString.Invariant($"wide.{i}");
            draft.Lines.Add(
                new ReadLine(
                    "columns",
                    Braces([
                        ("result", [part.Result.Header]),
                        ("tested_at", [.. part.Time.Select(column => column.Header)]),
                    ])
                )
                {
                    Table = table,
                }
            );
            (string, string)[] constants =
            [
                .. part.Analyte is { } analyte
                    ? [("analyte", analyte.Id)]
                    : Array.Empty<(string, string)>(),
                .. part.Occasion is { } occasion
                    ? [("time_point", occasion.ToString())]
                    : Array.Empty<(string, string)>(),
            ];
            if (constants.Length > 0)
            {
                draft.Lines.Add(
                    new ReadLine("constants", TomlLiteral.Braces(constants)) { Table = table }
                );
            }

            if (!part.Time.IsEmpty)
            {
                draft.Say(
                    part.Time,
                    $"tested_at, {part.Occasion}",
                    HowSure.Sure,
                    "by its name, beside its result"
                );
            }
        }

        DraftEmpty(draft, parts);
    }

    private static IEnumerable<(string, TestOccasion, DateTime)> Tests(
        WidePart part,
        TubeCodes codes,
        TimeReading reading
    )
    {
        var tested = part.Time.IsEmpty ? [] : TimeColumns.Read(part.Time, reading);
        for (var i = 0; i < tested.Length; i++)
        {
            if (codes.Rows[i] is var (specimen, _, _) && tested[i] is { } time)
            {
                yield return (specimen, part.Occasion ?? default, time);
            }
        }
    }

    /// <summary>Asks what empty cells of results mean.</summary>
    public static void DraftEmpty(SectionDraft draft, ImmutableArray<WidePart> parts)
    {
        var empty = parts.Sum(part => part.Result.Cells.Length - part.Result.Filled.Length);
        if (empty == 0)
        {
            return;
        }

        var question = draft.Ask(
            FormattableString.Invariant(
                $"{empty} cells of results of {draft.Table.File} are empty. Did the tube give no result, was it not tested, or was it never planned? Uncomment one line; where it differs, write NA or NT into the cells."
            ),
            couldChangeNumbers: true,
            key: "empty_cell"
        );
        var tried = parts.All(HaveNoTime) ? "not planned" : "not tested";
        foreach (var word in new[] { "no result", "not tested", "not planned" })
        {
            draft.Lines.Add(
                ReadLine.Text("empty_cell", word).Answering(question, isTried: word == tried)
            );
        }
    }

    // A cell without a result beside one without a time looks like a test that was never planned.
    private static bool HaveNoTime(WidePart part) =>
        !part.Time.IsEmpty
        && Enumerable
            .Range(0, part.Result.Cells.Length)
            .All(row =>
                !part.Result.Cells[row].IsEmpty || part.Time.All(time => time.Cells[row].IsEmpty)
            );

    private static bool HasResults(ColumnProfile column, Surroundings study) =>
        !column.IsTimes
        && column.Filled.All(cell =>
            cell.Text.Any(char.IsAsciiDigit)
            || TradeValues.MissingOf(cell.Text) is not null
            || study.Analytes.Any(analyte =>
                analyte.Categories.Contains(cell.Text, StringComparer.OrdinalIgnoreCase)
            )
        );

    /// <summary>The analytes that the words of a header name, which may have a time point among them.</summary>
    private static ImmutableArray<Analyte> AnalytesIn(string header, Surroundings study)
    {
        var words = PlainWords.Of(header);
        var found = new List<Analyte>();
        for (var from = 0; from < words.Length; from++)
        {
            for (var count = Math.Min(3, words.Length - from); count > 0; count--)
            {
                var named = TradeValues.AnalytesOf(
                    string.Join(' ', words.Skip(from).Take(count)),
                    study.Analytes
                );
                if (!named.IsEmpty)
                {
                    found.AddRange(named);
                    from += count - 1;
                    break;
                }
            }
        }

        return [.. found.DistinctBy(analyte => analyte.Id)];
    }

    // What is left of the header without time point and analyte must be a time of testing, or a mere time.
    private static bool IsOfTest(string header, Surroundings study) =>
        HeaderWords.EventOf(WithoutOccasion(header, study)) is "" or "tested_at";

    /// <summary>The words of a header but for a time point and an analyte.</summary>
    public static ImmutableArray<string> WithoutOccasion(string header, Surroundings study) =>
        [
            .. PlainWords
                .Of(header)
                .Where(word =>
                    !word.All(char.IsAsciiDigit)
                    && (HeaderWords.EventOf([word]) is "" || !TradeValues.IsUnitOfDelay(word))
                    && TradeValues.OccasionIn(word, study.TimePoints) is null
                    && word != "t"
                    && TradeValues.AnalytesOf(word, study.Analytes).IsEmpty
                ),
        ];

    internal static string Braces(
        IEnumerable<(string Key, ImmutableArray<string> Headers)> entries
    ) =>
        $"{{ {string.Join(", ", entries.Where(entry => !entry.Headers.IsEmpty).Select(entry => $"{entry.Key} = {TomlLiteral.Quoted(entry.Headers)}"))} }}";
}
