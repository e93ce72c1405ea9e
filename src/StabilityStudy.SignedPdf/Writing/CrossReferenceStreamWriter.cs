using System.Buffers.Binary;
using System.Runtime.InteropServices;
using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.SignedPdf.Writing;

/// <summary>Where one object stands, as a row of a cross-reference stream.</summary>
/// <param name="Number">Number of the object.</param>
/// <param name="Kind">0 free, 1 in the file, 2 in an object stream.</param>
/// <param name="Place">Offset in the file, or number of the object stream.</param>
/// <param name="Detail">Generation, or place in the object stream.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct CrossReferenceRow(int Number, byte Kind, int Place, ushort Detail);

/// <summary>Makes the stream in which a revision says where its objects are (ISO 32000-1:2008, 7.5.8).</summary>
internal static class CrossReferenceStreamWriter
{
    private const int PlaceWidth = 4;
    private const int DetailWidth = 2;
    private const int Width = 1 + PlaceWidth + DetailWidth;

    /// <summary>The stream.</summary>
    /// <param name="rows">One row an object, by ascending number, the stream itself included.</param>
    /// <param name="trailer">The trailer's entries.</param>
    public static PdfStream Make(IReadOnlyList<CrossReferenceRow> rows, PdfDictionary trailer)
    {
        var data = new byte[rows.Count * Width];
        var ranges = new List<(int First, int Count)>();
        foreach (var (index, row) in rows.Index())
        {
            var place = data.AsSpan(index * Width, Width);
            place[0] = row.Kind;
            BinaryPrimitives.WriteInt32BigEndian(place[1..], row.Place);
            BinaryPrimitives.WriteUInt16BigEndian(place[(1 + PlaceWidth)..], row.Detail);
            if (ranges.Count > 0 && ranges[^1].First + ranges[^1].Count == row.Number)
            {
                ranges[^1] = (ranges[^1].First, ranges[^1].Count + 1);
            }
            else
            {
                ranges.Add((row.Number, 1));
            }
        }

        return StreamRecompression.Compress(
            trailer
                .With("Type", new PdfName("XRef"))
                .With("W", Integers(1, PlaceWidth, DetailWidth))
                .With(
                    "Index",
                    Integers([.. ranges.SelectMany(range => new[] { range.First, range.Count })])
                ),
            data
        );
    }

    private static PdfArray Integers(params ImmutableArray<int> values) =>
        new([.. values.Select(value => (PdfObject)new PdfInteger(value))]);
}
