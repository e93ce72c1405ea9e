namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>What all sequences of a study have in common, so that page 1 says it once.</summary>
internal static class SharedSubject
{
    /// <summary>The full name of the analyte when the study has one analyte and one storage; null otherwise.</summary>
    public static string? Of(StudyAnalysis analysis) =>
        analysis
            is { Protocol: { Analytes.Length: 1, Storages.Length: 1 }, Sequences: [var first, ..] }
            ? SequenceNames.Of(analysis, first).Analyte.Name
            : null;
}
