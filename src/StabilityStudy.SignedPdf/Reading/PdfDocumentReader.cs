using System.Collections.Frozen;

namespace StabilityStudy.SignedPdf.Reading;

/// <summary>
/// Reads a PDF file strictly (ISO 32000-1:2008, 7.5): what different readers would take differently is a failure, never
/// repaired. Not read are encrypted files, hybrid cross-references and files whose revisions do not follow each other in the file.
/// </summary>
public static class PdfDocumentReader
{
    /// <summary>The document, or the first fault found. Bounded by <see cref="ReadingLimits"/> in depth, memory and time.</summary>
    /// <param name="bytes">The whole file; the document keeps referring to it.</param>
    public static PdfResult<PdfDocument> Read(ReadOnlyMemory<byte> bytes) =>
        ReadWithin(bytes, new DecodingBudget());

    /// <summary>The same within a bound that several readings share.</summary>
    internal static PdfResult<PdfDocument> ReadWithin(
        ReadOnlyMemory<byte> bytes,
        DecodingBudget budget
    )
    {
        var cursor = new PdfCursor(bytes, 0);
        if (bytes.Length > ReadingLimits.FileLength)
        {
            return new(new PdfFailure(0, "The file is longer than the bound."));
        }

        if (!bytes.Span.StartsWith("%PDF-1."u8) && !bytes.Span.StartsWith("%PDF-2."u8))
        {
            return new(new PdfFailure(0, "The file does not begin as PDF files do."));
        }

        if (CrossReferenceChain.Parse(cursor, budget) is not { } chain)
        {
            return new(cursor.Failure ?? new PdfFailure(null, "The file has no cross-reference."));
        }

        if (chain.Trailer.Find("Encrypt") is not null)
        {
            return new(new PdfFailure(null, "The file is encrypted."));
        }

        if (
            chain.Trailer.Find("Size") is not PdfInteger size
            || chain.Entries.Any(entry =>
                entry.Value.Kind != CrossReferenceKind.Free && entry.Key >= size.Value
            )
        )
        {
            return new(
                new PdfFailure(null, "The trailer says fewer objects than the cross-reference.")
            );
        }

        if (
            !new ObjectLoader(bytes, chain.Entries, budget)
                .Load()
                .TryGet(out var objects, out var failure)
        )
        {
            return new(failure);
        }

        if (!WithoutCrossReferences(chain, objects))
        {
            return new(new PdfFailure(null, "An object refers to a cross-reference stream."));
        }

        var document = new PdfDocument(
            bytes,
            chain.Trailer,
            [.. chain.Revisions],
            objects.ToFrozenDictionary()
        );
        return document.ResolveDictionary(chain.Trailer.Find("Root")) is null
            ? new(new PdfFailure(null, "The file has no catalog."))
            : new(document);
    }

    /// <summary>
    /// Takes the cross-reference streams out of the objects: they belong to the file, not to the document. False when an object refers to one, since some reader could show what is in it.
    /// </summary>
    private static bool WithoutCrossReferences(
        CrossReferenceChain chain,
        Dictionary<int, PdfIndirectObject> objects
    )
    {
        var streams = chain
            .Revisions.Where(static revision => revision.HasCrossReferenceStream)
            .Select(static revision => revision.CrossReferenceOffset)
            .ToHashSet();
        var numbers = chain
            .Entries.Where(entry =>
                entry.Value.Kind == CrossReferenceKind.InFile && streams.Contains(entry.Value.Place)
            )
            .Select(static entry => entry.Key)
            .ToHashSet();
        foreach (var number in numbers)
        {
            objects.Remove(number);
        }

        return numbers.Count == 0
            || !objects.Values.Any(found => RefersTo(found.Value, numbers))
                && !RefersTo(chain.Trailer, numbers);
    }

    private static bool RefersTo(PdfObject value, HashSet<int> numbers) =>
        value switch
        {
            PdfReference reference => numbers.Contains(reference.Number),
            PdfArray array => array.Items.Any(item => RefersTo(item, numbers)),
            PdfDictionary dictionary => dictionary.Entries.Any(entry =>
                RefersTo(entry.Value, numbers)
            ),
            PdfStream stream => RefersTo(stream.Dictionary, numbers),
            _ => false,
        };
}
