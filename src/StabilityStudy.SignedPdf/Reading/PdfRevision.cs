namespace StabilityStudy.SignedPdf.Reading;

/// <summary>One revision of a file: the bytes from the start of the file to its end are a complete file by themselves.</summary>
/// <param name="CrossReferenceOffset">Where its cross-reference table or stream begins, bytes from the start of the file.</param>
/// <param name="HasCrossReferenceStream">Whether it is a stream.</param>
/// <param name="End">First offset after its end-of-file marker and the end of line there.</param>
public sealed record PdfRevision(long CrossReferenceOffset, bool HasCrossReferenceStream, long End)
{
    /// <summary>Numbers in its cross-reference, ascending; that of the cross-reference stream itself is not among them.</summary>
    internal ImmutableArray<int> Numbers { get; init; } = [];
}
