namespace StabilityStudy.SignedPdf.Attachments;

/// <summary>A file found in a document.</summary>
/// <param name="Name">The name the document gives it. From a foreign document it may hold anything, also folders: never a path to write to.</param>
/// <param name="Bytes">The content.</param>
public sealed record EmbeddedFile(string Name, ReadOnlyMemory<byte> Bytes);
