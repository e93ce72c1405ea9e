namespace StabilityStudy.Core.Analysis;

/// <summary>Results of one specimen that do not go together, or are more than were planned.</summary>
internal static class ResultQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind MoreDelaysThanPlanned = Kinds.Add("more-delays-than-planned", QueryRank.Time, "specimens were tested at more time points than delays_per_specimen says", "state the number of delays that was planned, and add the results of every tube");
    internal static readonly QueryKind ReplicatesDisagree = Kinds.Add("replicates-disagree", QueryRank.Measurement, "results of one tube and time differ by more than six times the between-run CV", "look for an error; the mean of such results stands for neither");
    internal static readonly QueryKind SameWordEverywhere = Kinds.Add("same-word-everywhere", QueryRank.NotRecorded, "every result of an analyte at a time point is the same word in place of a number", "see whether the right column was exported and read");
    // csharpier-ignore-end

    /// <summary>So many tubes do not all fail in one way.</summary>
    private const int FewestOfOneWord = 5;

    /// <summary>Replicates of one run differ by less, but for one in some thousand.</summary>
    private const double MostCvsApart = 6;

    public static IEnumerable<DataQuery> Of(StudyRows rows) =>
        SideBySide.Of(
            () => OfMoreDelaysThanPlanned(rows.Inputs),
            () => ReplicatesApart(rows.Inputs),
            () => TypingSlipQueries.Of(rows),
            () => OneWord(rows.Inputs)
        );

    private static IEnumerable<DataQuery> OfMoreDelaysThanPlanned(StudyInputs inputs)
    {
        if (inputs.Protocol.DelaysPerSpecimen is not { } planned)
        {
            return [];
        }

        var more = inputs
            .Results.Where(row => row.Occasion.TimePoint is not null)
            .GroupBy(row => (row.Specimen, row.Analyte))
            .Where(rows => rows.Select(row => row.Occasion).Distinct().Count() > planned)
            .Select(rows => rows.Key.Specimen)
            .Distinct()
            .Count();
        return more == 0
            ? []
            :
            [
                FoundRows.Attention(
                    MoreDelaysThanPlanned,
                    new("protocol.toml", null, "delays_per_specimen"),
                    $"{Counted.Of(more, "specimen")} tested at more than the planned {Counted.Of(planned, "delay")}; a result that is missing elsewhere may then be one that was taken away."
                ),
            ];
    }

    /// <summary>Replicates far apart have a mean that stands for neither.</summary>
    private static IEnumerable<DataQuery> ReplicatesApart(StudyInputs inputs)
    {
        var cvs = inputs
            .Protocol.Analytes.Where(analyte => analyte.BetweenRunCvPercent is > 0)
            .ToDictionary(analyte => analyte.Id, analyte => (double)analyte.BetweenRunCvPercent!);
        var repeated = inputs.Results.Where(row => row.Replicate > 1).Select(PlaceOf).ToHashSet();
        var apart = inputs
            .Results.Where(row =>
                repeated.Count > 0
                && row.Result is MeasuredResult
                && cvs.ContainsKey(row.Analyte)
                && repeated.Contains(PlaceOf(row))
            )
            .GroupBy(PlaceOf)
            .Where(rows => SpreadPercent(rows) > MostCvsApart * cvs[rows.Key.Analyte])
            .ToImmutableArray();
        return FoundRows.OfResults(
            ReplicatesDisagree,
            "result",
            [.. apart.SelectMany(rows => rows)],
            () =>
                $"{Counted.Of(apart.Length, "tube")} with results of one time that differ by more than {MostCvsApart:0} times the between-run CV; specimen {apart[0].Key.Specimen} at {apart[0].Key.Occasion} is the first.",
            "Look for an error of transcription or measurement; the mean of such results stands for neither."
        );
    }

    private static (string Specimen, string Tube, string Analyte, TestOccasion Occasion) PlaceOf(
        ResultRow row
    ) => (row.Specimen, row.Tube, row.Analyte, row.Occasion);

    /// <summary>A column that was exported empty, or before the results were there, and was filled with one word.</summary>
    private static IEnumerable<DataQuery> OneWord(StudyInputs inputs)
    {
        var missing = inputs
            .Results.Where(row => row.Result is MissingResult)
            .GroupBy(row => (row.Analyte, row.Occasion))
            .Where(rows =>
                rows.Count() >= FewestOfOneWord
                && rows.DistinctBy(row => row.Result.Text).Count() == 1
            )
            .ToImmutableArray();
        var onlyMissing = missing.Select(rows => rows.Key).ToHashSet();
        foreach (var row in inputs.Results)
        {
            if (onlyMissing.Count == 0)
            {
                break;
            }

            if (row.Result is not MissingResult)
            {
                onlyMissing.Remove((row.Analyte, row.Occasion));
            }
        }

        return missing
            .Where(rows => onlyMissing.Contains(rows.Key))
            .SelectMany(rows =>
                FoundRows.OfResults(
                    SameWordEverywhere,
                    "result",
                    [.. rows],
                    () =>
                        $"{rows.Key.Analyte} at {rows.Key.Occasion}: all {rows.Count()} results are {(rows.First().Result.Text.Length == 0 ? "empty" : $"\"{rows.First().Result.Text}\"")}.",
                    "See whether the right column was exported and read; where the tubes really gave no result, nothing."
                )
            );
    }

    private static double SpreadPercent(IEnumerable<ResultRow> rows)
    {
        var values = rows.Select(row => (double)ValueOf(row)).ToArray();
        return values.Average() == 0 ? 0 : 100 * (values.Max() - values.Min()) / values.Average();
    }

    private static decimal ValueOf(ResultRow row) => ((MeasuredResult)row.Result).Value;
}
