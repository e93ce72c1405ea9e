using StabilityStudy.Reporting.Report.Drift;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>The publications of the field that a report uses: those that its protocol names as sources, and that of the published drift it draws.</summary>
internal static class FieldReferences
{
    public static ImmutableArray<FieldReference> Of(StudyAnalysis analysis)
    {
        var sources = NamedSource.All(analysis.Protocol);
        var isCompared = analysis.Sequences.Any(sequence =>
            PublishedDrift.For(SequenceNames.Of(analysis, sequence)) is not null
        );
        return
        [
            FieldReference.Design,
            FieldReference.Checklist,
            .. FieldReference.OfSources.Where(reference =>
                sources.Any(source => reference.IsNamedIn(source.Text))
                || (isCompared && reference == FieldReference.Instability)
            ),
        ];
    }
}
