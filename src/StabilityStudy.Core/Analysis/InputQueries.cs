using StabilityStudy.Core.Looks;

namespace StabilityStudy.Core.Analysis;

/// <summary>The data queries that the rows show before anything is computed, whoever read them.</summary>
internal static class InputQueries
{
    /// <summary>Every query about the rows, exclusions and reruns; a stop query leaves nothing to analyze.</summary>
    public static ImmutableArray<DataQuery> Of(StudyInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        return OfRows(new StudyRows(inputs));
    }

    /// <summary>The same for a caller who has put the rows together.</summary>
    internal static ImmutableArray<DataQuery> OfRows(StudyRows rows)
    {
        var inputs = rows.Inputs;
        return
        [
            .. DataFiles.Named(
                SideBySide.Of(
                    () => rows.Specimens.SelectMany(Disagreeing),
                    () => ResultValueQueries.Of(inputs),
                    () => OfAgreement(AnalyzedSeries.Of(rows)),
                    () => RatioQueries.Of(inputs),
                    () => PlanQueries.Of(rows),
                    () => ScopeQueries.Of(inputs),
                    () => LookQueries.OfEnd(inputs),
                    () => ExclusionDateQueries.Of(rows),
                    () => NotDrawnQueries.Of(rows),
                    () => RerunQueries.Of(rows)
                ),
                inputs.Facts.Files
            ),
        ];
    }

    private static ImmutableArray<DataQuery> OfAgreement(ImmutableArray<AnalyzedSeries> analytes) =>
        SideBySide.Of(
            () => SameResultQueries.Of(analytes),
            () => UnchangedResultQueries.Of(analytes)
        );

    /// <summary>A specimen is one draw, so its tubes share subject, group and time of collection.</summary>
    private static IEnumerable<DataQuery> Disagreeing(SpecimenRows specimen)
    {
        var tubes = specimen.TubesByLine;
        return tubes.All(tube => IsOfOneDraw(tube, tubes[0]))
            ? []
            : tubes.SelectMany(tube => Differing(tube, tubes[0]));
    }

    private static bool IsOfOneDraw(TubeRow tube, TubeRow first) =>
        tube.Subject == first.Subject
        && tube.Group == first.Group
        && tube.CollectedAt.EqualsExact(first.CollectedAt);

    private static IEnumerable<DataQuery> Differing(TubeRow tube, TubeRow first) =>
        from difference in new[]
        {
            (Column: "subject", Read: tube.Subject, Differs: tube.Subject != first.Subject),
            (Column: "group", Read: tube.Group, Differs: tube.Group != first.Group),
            (
                Column: "collected_at",
                Read: tube.CollectedAt.ToString(
                    "yyyy-MM-dd'T'HH:mm:sszzz",
                    CultureInfo.InvariantCulture
                ),
                Differs: !tube.CollectedAt.EqualsExact(first.CollectedAt)
            ),
        }
        where difference.Differs
        select new DataQuery(
            SharedKinds.TubesDisagree,
            DataFiles.SpecimensAt(tube.SourceRow, difference.Column),
            difference.Read,
            $"Tube {tube.Tube} of specimen {tube.Specimen} has another {difference.Column} than tube {first.Tube}; a specimen is one draw."
        );
}
