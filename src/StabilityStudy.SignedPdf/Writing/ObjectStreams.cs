using System.Buffers;
using System.Text;
using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.SignedPdf.Writing;

/// <summary>Small objects packed into compressed streams (ISO 32000-1:2008, 7.5.7): a tag tree has tens of thousands of them.</summary>
/// <param name="Streams">The object streams and the objects that stay outside, by ascending number.</param>
/// <param name="Places">Stream and place in it of each packed object.</param>
internal sealed record ObjectStreams(
    ImmutableArray<PdfIndirectObject> Streams,
    IReadOnlyDictionary<int, (int Stream, int Index)> Places
)
{
    /// <summary>A reader unpacks a whole stream for one object in it.</summary>
    private const int ObjectsPerStream = 200;

    /// <summary>Packs every object that may be packed: those of generation 0 that are no streams.</summary>
    /// <param name="objects">The objects by ascending number, each number once.</param>
    /// <exception cref="ArgumentException">The numbers do not ascend, or one is below 1.</exception>
    public static ObjectStreams Pack(ImmutableArray<PdfIndirectObject> objects)
    {
        PdfFileWriter.RequireAscending(objects);
        var next = objects.IsEmpty ? 1 : objects[^1].Reference.Number + 1;
        var outside = ImmutableArray.CreateBuilder<PdfIndirectObject>();
        outside.AddRange(objects.Where(value => !MayBePacked(value)));
        var places = new Dictionary<int, (int Stream, int Index)>();
        foreach (var group in objects.Where(MayBePacked).Chunk(ObjectsPerStream))
        {
            foreach (var (index, value) in group.Index())
            {
                places.Add(value.Reference.Number, (next, index));
            }

            outside.Add(new PdfIndirectObject(new PdfReference(next++, 0), StreamOf(group)));
        }

        return new ObjectStreams(outside.ToImmutable(), places);
    }

    /// <summary>The same with another stream under a number that has one.</summary>
    public ObjectStreams With(PdfReference reference, PdfStream stream) =>
        this with
        {
            Streams =
            [
                .. Streams.Select(value =>
                    value.Reference == reference ? value with { Value = stream } : value
                ),
            ],
        };

    private static bool MayBePacked(PdfIndirectObject value) =>
        value is { Reference.Generation: 0, Value: not PdfStream };

    private static PdfStream StreamOf(PdfIndirectObject[] objects)
    {
        var header = new StringBuilder();
        var body = new ArrayBufferWriter<byte>();
        foreach (var value in objects)
        {
            header.Append(
                CultureInfo.InvariantCulture,
                $"{value.Reference.Number} {body.WrittenCount} "
            );
            PdfWriter.Write(body, value.Value);
            body.Write("\n"u8);
        }

        byte[] data = [.. Encoding.ASCII.GetBytes(header.ToString()), .. body.WrittenSpan];
        return StreamRecompression.Compress(
            PdfDictionary.Of(
                new PdfEntry("Type", new PdfName("ObjStm")),
                new PdfEntry("N", new PdfInteger(objects.Length)),
                new PdfEntry("First", new PdfInteger(header.Length))
            ),
            data
        );
    }
}
