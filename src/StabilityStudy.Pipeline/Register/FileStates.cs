using StabilityStudy.Files.Canonical;
using StabilityStudy.SignedPdf.Reading;

namespace StabilityStudy.Pipeline.Register;

/// <summary>Under which digests a signed file was known: revisions are only ever appended, so each of its states is its beginning up to the end of a revision.</summary>
internal static class FileStates
{
    /// <summary>SHA-256 of each state, the file as it is now last; of that alone where the file cannot be read.</summary>
    public static ImmutableArray<string> Of(ReadOnlyMemory<byte> pdf) =>
        PdfDocumentReader.Read(pdf).TryGet(out var read, out _)
            ?
            [
                .. read
                    .Revisions.Select(revision => (int)revision.End)
                    .Append(pdf.Length)
                    .Distinct()
                    .Order()
                    .Select(end => InputDigest.Sha256(pdf.Span[..end])),
            ]
            : [InputDigest.Sha256(pdf.Span)];
}
