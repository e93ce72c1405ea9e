namespace StabilityStudy.Core.Analysis;

/// <summary>Results that were typed wrongly, as far as the specimen's other results show it. What would fit is not told: the instrument's record decides, not the fit.</summary>
internal static class TypingSlipQueries
{
    internal static QueryKinds Kinds { get; } = new();

    private const string LookAtRecord =
        "compare with the instrument's own record, and correct what was typed wrongly; a result that was measured so stays";

    // csharpier-ignore-start
    internal static readonly QueryKind DigitsExchanged = Kinds.Add("digits-exchanged", QueryRank.Measurement, "a result stands out, and with two neighboring digits exchanged it would fit the others of its specimen", LookAtRecord);
    internal static readonly QueryKind DecimalPointMoved = Kinds.Add("decimal-point-moved", QueryRank.Measurement, "a result is about ten times or a tenth of what the others of its specimen would make it", LookAtRecord);
    internal static readonly QueryKind ResultOfOtherMagnitude = Kinds.Add("result-of-other-magnitude", QueryRank.Measurement, "a result of a specimen is six times another or more", "look for a lost decimal point or another unit");
    // csharpier-ignore-end

    private const decimal MostTimes = 6;
    private const int MostSingle = 5;

    public static IEnumerable<DataQuery> Of(StudyRows rows)
    {
        var slips = TypingSlip.Find(rows);
        return
        [
            .. slips.GroupBy(slip => slip.Kind).SelectMany(same => OfKind(same.Key, [.. same])),
            .. OtherMagnitude(
                rows,
                slips.Select(slip => (slip.Row.Specimen, slip.Row.Analyte)).ToHashSet()
            ),
        ];
    }

    private static IEnumerable<DataQuery> OfKind(SlipKind kind, ImmutableArray<TypingSlip> slips) =>
        slips.Length <= MostSingle
            ? slips.Select(slip => Query(kind, slip.Row))
            :
            [
                Query(kind, slips[0].Row) with
                {
                    Observed = "",
                    Specimen = null,
                    Text = string.Create(
                        CultureInfo.InvariantCulture,
                        $"{Words(kind, slips[0].Row)} {slips.Length - 1} more results are like it, on lines {string.Join(", ", slips.Skip(1).Take(MostSingle).Select(slip => slip.Row.SourceRow))}{(slips.Length > MostSingle + 1 ? " …" : "")}."
                    ),
                },
            ];

    private static DataQuery Query(SlipKind kind, ResultRow row) =>
        new(
            kind switch
            {
                SlipKind.DigitsExchanged => DigitsExchanged,
                SlipKind.PointMoved => DecimalPointMoved,
            },
            DataFiles.ResultsAt(row.SourceRow, "result"),
            row.Result.Text,
            Words(kind, row)
        )
        {
            Specimen = new(row.Specimen, row.Occasion.TimePoint),
        };

    private static string Words(SlipKind kind, ResultRow row) =>
        $"{row.Analyte}, specimen {row.Specimen} at {row.Occasion}: "
        + kind switch
        {
            SlipKind.DigitsExchanged =>
                "with two neighboring digits exchanged the result would fit the others of the specimen.",
            SlipKind.PointMoved =>
                "with the decimal point one place away (ten times, or a tenth) the result would fit the others of the specimen.",
        };

    /// <summary>Another unit, or more than one slip.</summary>
    private static IEnumerable<DataQuery> OtherMagnitude(
        StudyRows rows,
        HashSet<(string Specimen, string Analyte)> explained
    )
    {
        var apart = rows
            .Analytes.AsParallel()
            .AsOrdered()
            .Select(analyte =>
                rows.Specimens.Where(specimen => IsApart(rows.Of(analyte, specimen).Span))
                    .Select(specimen => (specimen.Specimen, Analyte: analyte))
                    .ToImmutableArray()
            )
            .AsEnumerable()
            .SelectMany(places => places)
            .Where(place => !explained.Contains(place))
            .ToHashSet();
        var far = rows
            .Inputs.Results.Where(row =>
                apart.Count > 0
                && row.Result is MeasuredResult { Value: > 0 }
                && apart.Contains((row.Specimen, row.Analyte))
            )
            .GroupBy(row => (row.Specimen, row.Analyte))
            .ToImmutableArray();
        return FoundRows.OfResults(
            ResultOfOtherMagnitude,
            "result",
            [.. far.SelectMany(rows => rows)],
            () =>
                $"{Counted.Of(far.Length, "specimen")} with {far[0].Key.Analyte} results of which one is {MostTimes:0} times another or more; specimen {far[0].Key.Specimen} is the first."
        );
    }

    private static bool IsApart(ReadOnlySpan<ResultRow> results)
    {
        var (lowest, highest) = (decimal.MaxValue, 0m);
        foreach (var row in results)
        {
            if (row.Result is MeasuredResult { Value: > 0 and var value })
            {
                (lowest, highest) = (Math.Min(lowest, value), Math.Max(highest, value));
            }
        }

        return highest > 0 && highest >= MostTimes * lowest;
    }
}
