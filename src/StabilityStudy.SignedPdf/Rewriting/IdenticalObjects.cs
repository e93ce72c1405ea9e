using System.Buffers;
using System.Security.Cryptography;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>
/// Merges streams and font dictionaries that are written the same, such as a font embedded once for the pages and once for an
/// imported figure. Other objects stay apart: two equal pages or annotations are two.
/// </summary>
internal static class IdenticalObjects
{
    public static ObjectGraph Merge(ObjectGraph graph)
    {
        while (true)
        {
            var replacements = FindReplacements(graph);
            if (replacements.Count == 0)
            {
                return graph;
            }

            // What refers to merged objects may now be identical itself; each round leaves fewer objects.
            var objects = graph.Objects;
            graph = GraphCollection.Collect(
                graph.Trailer,
                reference =>
                    replacements.GetValueOrDefault(reference.Number)
                    ?? objects[reference.Number - 1]
            );
        }
    }

    /// <summary>For the number of each object that equals an earlier one, a reference to that one.</summary>
    private static Dictionary<int, PdfReference> FindReplacements(ObjectGraph graph)
    {
        var kept = new Dictionary<string, int>(StringComparer.Ordinal);
        var replacements = new Dictionary<int, PdfReference>();
        var written = new ArrayBufferWriter<byte>();
        for (var number = 1; number <= graph.Objects.Length; number++)
        {
            var value = graph.Objects[number - 1];
            if (!MayMerge(value))
            {
                continue;
            }

            written.ResetWrittenCount();
            PdfWriter.Write(written, value);
            var key = Convert.ToHexString(SHA256.HashData(written.WrittenSpan));
            if (!kept.TryAdd(key, number))
            {
                replacements.Add(number, new PdfReference(kept[key], 0));
            }
        }

        return replacements;
    }

    private static bool MayMerge(PdfObject value) =>
        value switch
        {
            PdfStream => true,
            PdfDictionary dictionary => dictionary.Find("Type")
                is PdfName { Value: "Font" or "FontDescriptor" },
            _ => false,
        };
}
