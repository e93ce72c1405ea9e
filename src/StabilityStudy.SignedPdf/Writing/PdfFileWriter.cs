using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;

namespace StabilityStudy.SignedPdf.Writing;

/// <summary>Puts objects together to a file, or to a revision appended to one (ISO 32000-1:2008, 7.5).</summary>
public static class PdfFileWriter
{
    // The comment of bytes above 127 tells programs that copy files that this one is not text (7.5.2).
    private static ReadOnlySpan<byte> Header => "%PDF-1.7\n%\u00E2\u00E3\u00CF\u00D3\n"u8;

    /// <summary>A whole file with a cross-reference table.</summary>
    /// <param name="objects">The objects by ascending number, each number once.</param>
    /// <param name="trailer">The trailer's entries other than /Size, among them /Root.</param>
    /// <exception cref="ArgumentException">The numbers do not ascend, or one is below 1.</exception>
    public static byte[] Write(ImmutableArray<PdfIndirectObject> objects, PdfDictionary trailer)
    {
        ArgumentNullException.ThrowIfNull(trailer);
        var output = new ArrayBufferWriter<byte>();
        output.Write(Header);
        var size = objects.IsEmpty ? 1 : objects[^1].Reference.Number + 1L;
        WriteBody(output, 0, objects, trailer.With("Size", new PdfInteger(size)), isFirst: true);
        return output.WrittenSpan.ToArray();
    }

    /// <summary>The bytes of a document followed by a revision that replaces or adds objects; the document's own bytes stay as they are.</summary>
    /// <param name="document">The document, whose cross-reference must be a table (not a stream).</param>
    /// <param name="objects">The new objects by ascending number, each number once.</param>
    /// <exception cref="ArgumentException">The numbers do not ascend, one is below 1, or the document has a cross-reference stream.</exception>
    public static byte[] Append(PdfDocument document, ImmutableArray<PdfIndirectObject> objects)
    {
        ArgumentNullException.ThrowIfNull(document);
        if (document.Trailer.Find("Type") is PdfName { Value: "XRef" })
        {
            throw new ArgumentException(
                "A table cannot follow a cross-reference stream.",
                nameof(document)
            );
        }

        var output = new ArrayBufferWriter<byte>();
        output.Write(document.Bytes.Span);
        if (document.Bytes.Span[^1] is not (byte)'\n' and not (byte)'\r')
        {
            output.Write("\n"u8);
        }

        var size = Math.Max(
            (document.Trailer.Find("Size") as PdfInteger)?.Value ?? 0,
            objects.IsEmpty ? 1 : objects[^1].Reference.Number + 1L
        );
        var trailer = document
            .Trailer.With("Prev", new PdfInteger(document.Revisions[^1].CrossReferenceOffset))
            .With("Size", new PdfInteger(size));
        WriteBody(output, 0, objects, trailer, isFirst: false);
        return output.WrittenSpan.ToArray();
    }

    private static void WriteBody(
        ArrayBufferWriter<byte> output,
        int lastNumber,
        ImmutableArray<PdfIndirectObject> objects,
        PdfDictionary trailer,
        bool isFirst
    )
    {
        var offsets = new List<(PdfReference Reference, int Offset)>(objects.Length);
        foreach (var value in objects)
        {
            if (value.Reference.Number <= lastNumber)
            {
                throw new ArgumentException(
                    "Object numbers do not ascend from 1.",
                    nameof(objects)
                );
            }

            lastNumber = value.Reference.Number;
            offsets.Add((value.Reference, output.WrittenCount));
            PdfWriter.WriteIndirect(output, value);
        }

        var start = output.WrittenCount;
        WriteText(output, "xref\n");
        WriteTable(output, offsets, isFirst);
        WriteText(output, "trailer\n");
        PdfWriter.Write(output, trailer);
        WriteText(
            output,
            string.Create(CultureInfo.InvariantCulture, $"\nstartxref\n{start}\n%%EOF\n")
        );
    }

    private static void WriteTable(
        ArrayBufferWriter<byte> output,
        List<(PdfReference Reference, int Offset)> offsets,
        bool isFirst
    )
    {
        // Numbers without an object are left out in a revision, and free in a whole file, which must have no gaps.
        var next = 0;
        if (isFirst)
        {
            var size = offsets.Count == 0 ? 1 : offsets[^1].Reference.Number + 1;
            WriteText(
                output,
                string.Create(CultureInfo.InvariantCulture, $"0 {size}\n0000000000 65535 f \n")
            );
            next = 1;
        }

        for (var i = 0; i < offsets.Count; i++)
        {
            var (reference, offset) = offsets[i];
            if (isFirst)
            {
                for (; next < reference.Number; next++)
                {
                    WriteText(output, "0000000000 00001 f \n");
                }
            }
            else if (i == 0 || reference.Number != next)
            {
                var end = i;
                while (
                    end < offsets.Count
                    && offsets[end].Reference.Number - reference.Number == end - i
                )
                {
                    end++;
                }

                WriteText(
                    output,
                    string.Create(CultureInfo.InvariantCulture, $"{reference.Number} {end - i}\n")
                );
            }

            WriteText(
                output,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{offset:D10} {reference.Generation:D5} n \n"
                )
            );
            next = reference.Number + 1;
        }
    }

    private static void WriteText(ArrayBufferWriter<byte> output, string text) =>
        output.Write(Encoding.ASCII.GetBytes(text));
}
