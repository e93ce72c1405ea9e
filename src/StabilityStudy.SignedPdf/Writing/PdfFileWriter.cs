using System.Buffers;
using System.Text;

namespace StabilityStudy.SignedPdf.Writing;

/// <summary>Puts objects together to a file, or to a revision appended to one (ISO 32000-1:2008, 7.5).</summary>
internal static class PdfFileWriter
{
    // The comment of bytes above 127 tells programs that copy files that this one is not text (7.5.2).
    private static ReadOnlySpan<byte> Header => "%PDF-1.7\n%\u00E2\u00E3\u00CF\u00D3\n"u8;

    // A signature with its stamp; a longer revision makes the buffer grow.
    private const int RoomForRevision = 256 * 1024;

    /// <summary>A whole file with a cross-reference table, every object in plain sight.</summary>
    /// <param name="objects">The objects by ascending number, each number once.</param>
    /// <param name="trailer">The trailer's entries other than /Size, among them /Root.</param>
    /// <exception cref="ArgumentException">The numbers do not ascend, or one is below 1.</exception>
    public static byte[] Write(ImmutableArray<PdfIndirectObject> objects, PdfDictionary trailer)
    {
        ArgumentNullException.ThrowIfNull(trailer);
        var output = new ArrayBufferWriter<byte>();
        output.Write(Header);
        var offsets = WriteObjects(output, objects);
        WriteTable(output, offsets, trailer.With("Size", SizeOf(objects)), isFirst: true);
        return output.WrittenSpan.ToArray();
    }

    /// <summary>A whole file with a cross-reference stream and small objects packed into streams: a fraction of the length.</summary>
    /// <param name="packed">The objects in streams.</param>
    /// <param name="trailer">The trailer's entries other than /Size, among them /Root.</param>
    public static ReadOnlyMemory<byte> WritePacked(ObjectStreams packed, PdfDictionary trailer)
    {
        ArgumentNullException.ThrowIfNull(packed);
        ArgumentNullException.ThrowIfNull(trailer);
        var output = new ArrayBufferWriter<byte>(LengthOf(packed));
        output.Write(Header);
        var offsets = WriteObjects(output, packed.Streams);

        // Object streams are numbered after the objects.
        var last = packed.Streams.IsEmpty ? 0 : packed.Streams[^1].Reference.Number;
        var rows = new CrossReferenceRow[last + 1];
        rows[0] = new CrossReferenceRow(0, 0, 0, ushort.MaxValue);
        for (var number = 1; number <= last; number++)
        {
            // A whole file must have no gaps: numbers without an object are free.
            rows[number] = packed.Places.TryGetValue(number, out var place)
                ? new CrossReferenceRow(number, 2, place.Stream, (ushort)place.Index)
                : new CrossReferenceRow(number, 0, 0, 1);
        }

        foreach (var row in Rows(offsets))
        {
            rows[row.Number] = row;
        }

        WriteStream(output, rows, last + 1, trailer);
        return output.WrittenMemory;
    }

    /// <summary>About how long the file becomes, so that its buffer need not grow: the streams, some room for what surrounds each, and the cross-reference.</summary>
    private static int LengthOf(ObjectStreams packed) =>
        packed.Streams.Sum(static value =>
            value.Value is PdfStream stream ? stream.Encoded.Length + 256 : 256
        ) + (8 * packed.Places.Count);

    /// <summary>
    /// The bytes of a document followed by a revision that replaces or adds objects; the document's own bytes stay as they are. The revision has a cross-reference of the kind that the
    /// document has, and all its objects stand in plain sight.
    /// </summary>
    /// <param name="document">The document.</param>
    /// <param name="objects">The new objects by ascending number, each number once.</param>
    /// <exception cref="ArgumentException">The numbers do not ascend, or one is below 1.</exception>
    public static byte[] Append(PdfDocument document, ImmutableArray<PdfIndirectObject> objects)
    {
        ArgumentNullException.ThrowIfNull(document);
        var output = new ArrayBufferWriter<byte>(document.Bytes.Length + RoomForRevision);
        output.Write(document.Bytes.Span);
        if (document.Bytes.Span[^1] is not (byte)'\n' and not (byte)'\r')
        {
            output.Write("\n"u8);
        }

        var offsets = WriteObjects(output, objects);
        var size = Math.Max(
            (document.Trailer.Find("Size") as PdfInteger)?.Value ?? 0,
            SizeOf(objects).Value
        );
        var newest = document.Revisions[^1];
        var trailer = document.Trailer.With("Prev", new PdfInteger(newest.CrossReferenceOffset));
        if (newest.HasCrossReferenceStream)
        {
            WriteStream(output, [.. Rows(offsets)], (int)size, trailer);
        }
        else
        {
            WriteTable(output, offsets, trailer.With("Size", new PdfInteger(size)), isFirst: false);
        }

        return output.WrittenSpan.ToArray();
    }

    private static PdfInteger SizeOf(ImmutableArray<PdfIndirectObject> objects) =>
        new(objects.IsEmpty ? 1 : objects[^1].Reference.Number + 1L);

    /// <exception cref="ArgumentException">The numbers do not ascend, or one is below 1.</exception>
    internal static void RequireAscending(ImmutableArray<PdfIndirectObject> objects)
    {
        var last = 0;
        foreach (var value in objects)
        {
            if (value.Reference.Number <= last)
            {
                throw new ArgumentException(
                    "Object numbers do not ascend from 1.",
                    nameof(objects)
                );
            }

            last = value.Reference.Number;
        }
    }

    private static List<(PdfReference Reference, int Offset)> WriteObjects(
        ArrayBufferWriter<byte> output,
        ImmutableArray<PdfIndirectObject> objects
    )
    {
        RequireAscending(objects);
        var offsets = new List<(PdfReference Reference, int Offset)>(objects.Length);
        foreach (var value in objects)
        {
            offsets.Add((value.Reference, output.WrittenCount));
            PdfWriter.WriteIndirect(output, value);
        }

        return offsets;
    }

    private static IEnumerable<CrossReferenceRow> Rows(
        List<(PdfReference Reference, int Offset)> offsets
    ) =>
        offsets.Select(item => new CrossReferenceRow(
            item.Reference.Number,
            1,
            item.Offset,
            (ushort)item.Reference.Generation
        ));

    /// <summary>The stream, which is an object too and has a row of its own, and the end of the revision.</summary>
    private static void WriteStream(
        ArrayBufferWriter<byte> output,
        IReadOnlyList<CrossReferenceRow> rows,
        int number,
        PdfDictionary trailer
    )
    {
        var start = output.WrittenCount;
        var stream = CrossReferenceStreamWriter.Make(
            [.. rows, new CrossReferenceRow(number, 1, start, 0)],
            trailer.With("Size", new PdfInteger(number + 1L))
        );
        PdfWriter.WriteIndirect(output, new PdfIndirectObject(new PdfReference(number, 0), stream));
        WriteEnding(output, start);
    }

    private static void WriteTable(
        ArrayBufferWriter<byte> output,
        List<(PdfReference Reference, int Offset)> offsets,
        PdfDictionary trailer,
        bool isFirst
    )
    {
        var start = output.WrittenCount;
        WriteText(output, "xref\n");
        WriteRows(output, offsets, isFirst);
        WriteText(output, "trailer\n");
        PdfWriter.Write(output, trailer);
        WriteText(output, "\n");
        WriteEnding(output, start);
    }

    private static void WriteEnding(ArrayBufferWriter<byte> output, int start) =>
        WriteText(
            output,
            string.Create(CultureInfo.InvariantCulture, $"startxref\n{start}\n%%EOF\n")
        );

    private static void WriteRows(
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
