namespace StabilityStudy.SignedPdf.Reading;

/// <summary>Why a file could not be read or used.</summary>
/// <param name="Offset">Bytes from the start of the file (or of the decoded object stream that the text names); null when no place can be named.</param>
/// <param name="What">What is wrong, in words.</param>
public sealed record PdfFailure(long? Offset, string What);
