using StabilityStudy.SignedPdf.Objects;

namespace StabilityStudy.SignedPdf.Reading;

/// <summary>What one revision says about its objects: entries by object number, and the trailer dictionary.</summary>
internal sealed record CrossReferenceSection(
    IReadOnlyList<KeyValuePair<int, CrossReferenceEntry>> Entries,
    PdfDictionary Trailer
);
