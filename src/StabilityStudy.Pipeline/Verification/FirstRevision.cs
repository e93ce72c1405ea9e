using System.Diagnostics.CodeAnalysis;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Reading;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>A document as it was before anybody signed, which every signature covers, and the files that it carries.</summary>
/// <param name="Bytes">Its bytes.</param>
/// <param name="Files">The attached files by their names.</param>
internal sealed record FirstRevision(
    ReadOnlyMemory<byte> Bytes,
    ImmutableDictionary<string, ReadOnlyMemory<byte>> Files
)
{
    /// <summary>Takes it out of a document.</summary>
    /// <param name="document">The bytes of the file.</param>
    /// <param name="first">The revision.</param>
    /// <param name="fault">Why there is none, in words.</param>
    public static bool TryRead(
        ReadOnlyMemory<byte> document,
        [NotNullWhen(true)] out FirstRevision? first,
        [NotNullWhen(false)] out string? fault
    )
    {
        first = null;
        if (!PdfDocumentReader.Read(document).TryGet(out var read, out var failure))
        {
            fault = "The file cannot be read as a PDF: " + failure.What;
            return false;
        }

        var bytes = document[..(int)read.Revisions[0].End];
        if (
            !PdfDocumentReader.Read(bytes).TryGet(out var original, out failure)
            || !EmbeddedFiles.Extract(original).TryGet(out var attached, out failure)
        )
        {
            fault = "The attached files cannot be read: " + failure.What;
            return false;
        }

        if (attached.Select(file => file.Name).Distinct().Count() != attached.Length)
        {
            fault = "Two attached files have the same name.";
            return false;
        }

        first = new FirstRevision(
            bytes,
            attached.ToImmutableDictionary(
                file => file.Name,
                file => file.Bytes,
                StringComparer.Ordinal
            )
        );
        fault = null;
        return true;
    }
}
