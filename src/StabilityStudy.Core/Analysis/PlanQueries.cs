namespace StabilityStudy.Core.Analysis;

/// <summary>Rows that the plan has no place for: results where an analyte is not studied, a person in two groups at once.</summary>
internal static class PlanQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind SubjectInTwoGroups = Kinds.Add("subject-in-two-groups", QueryRank.Specimen, "a person counts in two patient groups", "correct the group of one of the specimens");
    internal static readonly QueryKind ResultNotPlanned = Kinds.Add("result-not-planned", QueryRank.WithoutEffect, "a result is of a time point, group or storage that the protocol does not plan for its analyte", "nothing, or correct the row; it is not used");
    // csharpier-ignore-end

    public static IEnumerable<DataQuery> Of(StudyInputs inputs) =>
        [
            .. inputs.Protocol.Analytes.SelectMany(analyte => NotStudied(analyte, inputs)),
            .. TwoGroups(inputs),
        ];

    private static IEnumerable<DataQuery> NotStudied(Analyte analyte, StudyInputs inputs)
    {
        if (
            analyte is { TimePoints.IsEmpty: true, Groups.IsEmpty: true, Storages.IsEmpty: true }
            && analyte.GroupWindows.All(window => window.TimePoints.IsEmpty)
        )
        {
            yield break;
        }

        var tubes = inputs.Tubes.ToLookup(tube => (tube.Specimen, tube.Tube));
        var rows = inputs
            .Results.Where(row =>
                row.Analyte == analyte.Id
                && (
                    tubes[(row.Specimen, row.Tube)]
                        .Any(tube =>
                            (
                                row.Occasion.TimePoint is { } timePoint
                                && !inputs
                                    .Protocol.TimePointsOf(analyte, tube.Group)
                                    .Contains(timePoint)
                            )
                            || (!analyte.Groups.IsEmpty && !analyte.Groups.Contains(tube.Group))
                            || (
                                !row.Occasion.IsBaseline
                                && !analyte.Storages.IsEmpty
                                && !analyte.Storages.Contains(tube.Storage)
                            )
                        )
                )
            )
            .ToImmutableArray();
        if (!rows.IsEmpty)
        {
            yield return new(
                ResultNotPlanned,
                DataFiles.ResultsAt(rows.Min(row => row.SourceRow), null),
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Counted.Of(rows.Length, "result")} of {analyte.Id} at a time point, in a group or in a storage where the protocol does not study it; not used."
                ),
                "Nothing when the tests were made for another purpose; otherwise correct the rows."
            );
        }
    }

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
