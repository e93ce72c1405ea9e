using StabilityStudy.Core.Analysis;

namespace StabilityStudy.Reporting.Report;

/// <summary>What all sequences of a study have in common, so that page 1 says it once.</summary>
internal static class SharedSubject
{
    /// <summary>Analyte and storage when there is only one of each; null when sentences must name them.</summary>
    public static string? Of(StudyAnalysis analysis) =>
        analysis
            is { Protocol: { Analytes.Length: 1, Storages.Length: 1 }, Sequences: [var first, ..] }
            ? SequenceNames.Of(analysis, first).What
            : null;
}
