using StabilityStudy.Core.Study;

namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>That the report replaces an earlier one, in words.</summary>
internal static class RevisionWords
{
    /// <summary>" · report revision 2", after the version of the protocol; empty for the first report.</summary>
    public static string InHeader(StudyAnalysis analysis) =>
        analysis.Facts.Revision is { } revision
            ? string.Create(CultureInfo.InvariantCulture, $" · report revision {revision.Number}")
            : "";

    /// <summary>For page 1; null for the first report.</summary>
    public static string? InBrief(StudyAnalysis analysis) =>
        analysis.Facts.Revision is { } revision ? Sentence(revision, Shortened(revision)) : null;

    /// <summary>With the digest as far as it was stated; null for the first report.</summary>
    public static string? InFull(StudyAnalysis analysis) =>
        analysis.Facts.Revision is { } revision ? Sentence(revision, revision.Replaces) : null;

    private static string Sentence(ReportRevision revision, string digest) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"Revision {revision.Number} of this report replaces the report with inputs {digest}. Reason: {revision.Reason.TrimEnd('.')}."
        );

    /// <summary>As many digits as the foot of a page shows.</summary>
    private static string Shortened(ReportRevision revision) =>
        revision.Replaces[..ReportBuilder.DigestShown];
}
