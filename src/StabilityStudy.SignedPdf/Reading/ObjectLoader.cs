namespace StabilityStudy.SignedPdf.Reading;

/// <summary>Loads every object that the cross-reference announces, each byte of the file parsed at most once.</summary>
internal sealed class ObjectLoader(
    ReadOnlyMemory<byte> bytes,
    Dictionary<int, CrossReferenceEntry> entries,
    DecodingBudget budget
)
{
    private readonly Dictionary<int, PdfIndirectObject> _objects = [];
    private readonly ValueBudget _values = new();

    /// <summary>The objects by number, or why one could not be loaded.</summary>
    public PdfResult<Dictionary<int, PdfIndirectObject>> Load() =>
        (LoadFromFile() ?? LoadFromObjectStreams()) is { } failure ? new(failure) : new(_objects);

    private PdfFailure? LoadFromFile()
    {
        var cursor = new PdfCursor(bytes, 0, _values);
        var inFile = entries.Where(static entry => entry.Value.Kind == CrossReferenceKind.InFile);
        foreach (var (number, entry) in inFile.OrderBy(static entry => entry.Value.Place))
        {
            if (entry.Place < cursor.Position || entry.Place >= bytes.Length)
            {
                return new PdfFailure(
                    entry.Place,
                    "Objects overlap, or an object lies beyond the end of the file."
                );
            }

            cursor.Position = entry.Place;
            var reference = new PdfReference(number, entry.Detail);
            if (IndirectObjectParser.Parse(cursor, reference, LengthOf) is not { } found)
            {
                return cursor.Failure;
            }

            _objects.Add(number, found);
        }

        return null;
    }

    private PdfFailure? LoadFromObjectStreams()
    {
        var inStreams = entries.Where(static entry =>
            entry.Value.Kind == CrossReferenceKind.InObjectStream
        );
        foreach (
            var group in inStreams
                .GroupBy(static entry => entry.Value.Place)
                .OrderBy(static group => group.Key)
        )
        {
            if (_objects.GetValueOrDefault(group.Key)?.Value is not PdfStream stream)
            {
                return new PdfFailure(
                    null,
                    "An object stream that the cross-reference names is missing."
                );
            }

            if (!budget.Decode(stream).TryGet(out var data, out var failure))
            {
                return failure;
            }

            var cursor = new PdfCursor(data, 0, _values);
            if (ObjectStreamReader.Parse(stream.Dictionary, cursor) is not { } contained)
            {
                return cursor.Failure;
            }

            foreach (var (number, entry) in group.OrderBy(static entry => entry.Key))
            {
                if (
                    entry.Detail >= contained.Count
                    || contained[entry.Detail].Reference.Number != number
                )
                {
                    return new PdfFailure(
                        null,
                        "An object is not at its announced place in an object stream."
                    );
                }

                _objects.Add(number, contained[entry.Detail]);
            }
        }

        return null;
    }

    private long? LengthOf(PdfReference reference) =>
        entries.TryGetValue(reference.Number, out var entry)
        && entry is { Kind: CrossReferenceKind.InFile }
        && entry.Place < bytes.Length
        && entry.Detail == reference.Generation
            ? IndirectObjectParser.TryParseLength(new PdfCursor(bytes, entry.Place), reference)
            : null;
}
