namespace StabilityStudy.Core.Analysis;

/// <summary>Rows that the plan has no place for: results where an analyte is not studied, a person in two groups at once.</summary>
internal static class PlanQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind SubjectInTwoGroups = Kinds.Add("subject-in-two-groups", QueryRank.Specimen, "a person counts in two patient groups", "correct the group of one of the specimens");
    internal static readonly QueryKind ResultNotPlanned = Kinds.Add("result-not-planned", QueryRank.WithoutEffect, "a result is of a time point, group or storage that the protocol does not plan for its analyte", "nothing, or correct the row; it is not used");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(StudyRows rows) =>
        [
            .. rows.Inputs.Protocol.Analytes.SelectMany(analyte => NotStudied(analyte, rows)),
            .. TwoGroups(rows.Inputs),
        ];

    private static IEnumerable<DataQuery> NotStudied(Analyte analyte, StudyRows study)
    {
        if (
            analyte is { TimePoints.IsEmpty: true, Groups.IsEmpty: true, Storages.IsEmpty: true }
            && analyte.GroupWindows.All(window => window.TimePoints.IsEmpty)
        )
        {
            yield break;
        }

        var rows = NotPlanned(analyte, study);
        if (rows.Count > 0)
        {
            yield return new(
                ResultNotPlanned,
                DataFiles.ResultsAt(rows.Min(row => row.SourceRow), null),
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Counted.Of(rows.Count, "result")} of {analyte.Id} at a time point, in a group or in a storage where the protocol does not study it; not used."
                ),
                "Nothing when the tests were made for another purpose; otherwise correct the rows."
            );
        }
    }

    private static List<ResultRow> NotPlanned(Analyte analyte, StudyRows study)
    {
        var timePoints = study
            .Inputs.Tubes.Select(tube => tube.Group)
            .Distinct()
            .ToDictionary(
                patients => patients,
                patients => study.Inputs.Protocol.TimePointsOf(analyte, patients)
            );
        var found = new List<ResultRow>();
        foreach (var specimen in study.Specimens)
        {
            foreach (var row in study.Of(analyte.Id, specimen).Span)
            {
                if (
                    specimen.Tube(row.Tube) is { } tube
                    && IsNotPlanned(row.Occasion, tube, analyte, timePoints[tube.Group])
                )
                {
                    found.Add(row);
                }
            }
        }

        return found;
    }

    private static bool IsNotPlanned(
        TestOccasion occasion,
        TubeRow tube,
        Analyte analyte,
        ImmutableArray<TimePoint> timePoints
    ) =>
        (occasion.TimePoint is { } timePoint && !timePoints.Contains(timePoint))
        || (!analyte.Groups.IsEmpty && !analyte.Groups.Contains(tube.Group))
        || (
            !occasion.IsBaseline
            && !analyte.Storages.IsEmpty
            && !analyte.Storages.Contains(tube.Storage)
        );

    private static IEnumerable<DataQuery> TwoGroups(StudyInputs inputs) =>
        inputs
            .Tubes.OrderBy(tube => tube.SourceRow)
            .DistinctBy(tube => tube.Specimen)
            .GroupBy(tube => (Subject: tube.Subject.ToUpperInvariant(), tube.CollectedAt))
            .Where(same => same.Select(tube => tube.Group).Distinct().Skip(1).Any())
            .Select(same => same.ToImmutableArray())
            .Select(same => new DataQuery(
                SubjectInTwoGroups,
                DataFiles.SpecimensAt(
                    same.First(tube => tube.Group != same[0].Group).SourceRow,
                    "group"
                ),
                "",
                $"Subject {same[0].Subject} is in more than one group at the same collection: {string.Join(", ", same.Select(tube => $"{tube.Specimen} in {tube.Group}"))}.",
                "Correct group, subject or time of collection."
            ));
}
