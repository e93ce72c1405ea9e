namespace StabilityStudy.SignedPdf.Reading;

/// <summary>What one revision says about its objects.</summary>
/// <param name="Entries">Entries by object number.</param>
/// <param name="Trailer">The trailer dictionary; of a stream, without what belongs to the stream alone.</param>
/// <param name="IsStream">Whether a stream says so.</param>
internal sealed record CrossReferenceSection(
    IReadOnlyList<KeyValuePair<int, CrossReferenceEntry>> Entries,
    PdfDictionary Trailer,
    bool IsStream
);
