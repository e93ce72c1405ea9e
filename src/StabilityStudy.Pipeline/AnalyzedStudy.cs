using StabilityStudy.Core.Analysis;
using StabilityStudy.SignedPdf.Attachments;

namespace StabilityStudy.Pipeline;

/// <summary>A study with its conclusions and the files that it was made from.</summary>
/// <param name="Analysis">What the data say.</param>
/// <param name="Sources">Protocol, study facts and canonical data, as a report carries them; none where they were not asked for.</param>
public sealed record AnalyzedStudy(StudyAnalysis Analysis, ImmutableArray<Attachment> Sources);

/// <summary>A finished report.</summary>
/// <param name="Pdf">The file.</param>
/// <param name="PageCount">Number of pages.</param>
public sealed record RenderedReport(ReadOnlyMemory<byte> Pdf, int PageCount);
