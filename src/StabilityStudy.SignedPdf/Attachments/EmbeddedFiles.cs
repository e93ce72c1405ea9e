namespace StabilityStudy.SignedPdf.Attachments;

/// <summary>Takes the attached files out of a document (ISO 32000-1:2008, 7.11.4).</summary>
public static class EmbeddedFiles
{
    /// <summary>The files in the order of the document's name tree, all together at most <see cref="ReadingLimits.StreamLength"/> bytes; or why one cannot be read.</summary>
    public static PdfResult<ImmutableArray<EmbeddedFile>> Extract(PdfDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var root = document
            .ResolveDictionary(document.Catalog.Find("Names"))
            ?.Find("EmbeddedFiles");
        if (document.Resolve(root) is null)
        {
            return new(ImmutableArray<EmbeddedFile>.Empty);
        }

        if (!NameTree.Read(root, document.Resolve).TryGet(out var names, out var failure))
        {
            return new(failure);
        }

        var files = ImmutableArray.CreateBuilder<EmbeddedFile>(names.Count);
        var left = ReadingLimits.StreamLength;
        foreach (var (key, value) in names)
        {
            if (
                document.ResolveDictionary(value) is not { } specification
                || document.ResolveDictionary(specification.Find("EF")) is not { } versions
                || document.Resolve(versions.Find("UF") ?? versions.Find("F"))
                    is not PdfStream stream
            )
            {
                return new(new PdfFailure(null, "An attached file has no content."));
            }

            if (!StreamDecoder.Decode(stream, left).TryGet(out var bytes, out failure))
            {
                return new(failure);
            }

            left -= bytes.Length;
            var name =
                document.Resolve(specification.Find("UF") ?? specification.Find("F")) as PdfString
                ?? key;
            files.Add(new EmbeddedFile(name.ToText(), bytes));
        }

        return new(files.DrainToImmutable());
    }
}
