using StabilityStudy.SignedPdf.Reading;

namespace StabilityStudy.Pipeline.Proving;

/// <summary>A signed report in which one byte was changed.</summary>
/// <param name="Place">Where, in words.</param>
/// <param name="Report">The changed file.</param>
internal sealed record ChangedByte(string Place, ReadOnlyMemory<byte> Report)
{
    /// <summary>Bytes from where a stream or a signature is announced to well within it.</summary>
    private const int Within = 64;

    private static ReadOnlySpan<byte> Carried => "/EmbeddedFile>>"u8;

    private static ReadOnlySpan<byte> Signature => "/Contents <"u8;

    /// <summary>The file, each time changed in another place; empty where it cannot be read.</summary>
    public static ImmutableArray<ChangedByte> Of(ReadOnlyMemory<byte> report)
    {
        if (!PdfDocumentReader.Read(report).TryGet(out var document, out _))
        {
            return [];
        }

        var bytes = report.Span;
        var drawn = (int)document.Revisions[0].End;
        var additions = (int)document.Revisions[^2].End;
        return
        [
            At(report, "in the middle of the report before anybody signed", drawn / 2),
            At(report, "in a file that it carries", bytes.IndexOf(Carried) + Within),
            At(report, "in the first signature", bytes.IndexOf(Signature) + Within),
            At(report, "in what the last signature added", additions + Within),
            At(report, "in the last signature", bytes.LastIndexOf(Signature) + Within),
        ];
    }

    private static ChangedByte At(ReadOnlyMemory<byte> report, string place, int offset)
    {
        var changed = report.ToArray();
        changed[offset] ^= 1;
        return new ChangedByte(place, changed);
    }
}
