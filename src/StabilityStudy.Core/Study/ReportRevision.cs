namespace StabilityStudy.Core.Study;

/// <summary>That the report replaces an earlier report of the study.</summary>
/// <param name="Number">Number of the revision; the first report has none and counts as 1.</param>
/// <param name="Replaces">The input digest of the report that it replaces, or its beginning as the foot of each page shows it.</param>
/// <param name="Reason">Why.</param>
public sealed record ReportRevision(int Number, string Replaces, string Reason);
