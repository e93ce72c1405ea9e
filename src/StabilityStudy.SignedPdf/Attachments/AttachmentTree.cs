using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.SignedPdf.Attachments;

/// <summary>
/// Attaches files to a document: embedded in the name tree, and associated with the document as a whole (ISO 32000-2:2020, 14.13).
/// </summary>
internal static class AttachmentTree
{
    /// <summary>The graph with the files added to, or in place of, those in it; or why those in it cannot be read.</summary>
    /// <exception cref="ArgumentException">Two attachments have the same name.</exception>
    public static PdfResult<ObjectGraph> Apply(
        ObjectGraph graph,
        ImmutableArray<Attachment> attachments,
        DateTimeOffset? date
    )
    {
        var names =
            graph.Resolve(graph.Catalog.Find("Names")) as PdfDictionary ?? PdfDictionary.Empty;
        var files = new SortedDictionary<string, (PdfString Name, PdfDictionary Specification)>(
            StringComparer.Ordinal
        );
        if (graph.Resolve(names.Find("EmbeddedFiles")) is { } root)
        {
            if (!NameTree.Read(root, graph.Resolve).TryGet(out var present, out var failure))
            {
                return new(failure);
            }

            foreach (var (name, value) in present)
            {
                if (graph.Resolve(value) is PdfDictionary specification)
                {
                    files[SortKey(name)] = (name, WithRelationship(specification));
                }
            }
        }

        var added = new HashSet<string>(StringComparer.Ordinal);
        foreach (var attachment in attachments.IsDefault ? [] : attachments)
        {
            var name = PdfString.OfText(attachment.Name);
            if (!added.Add(SortKey(name)))
            {
                throw new ArgumentException(
                    "Two attachments have the same name.",
                    nameof(attachments)
                );
            }

            graph = graph.Add(Content(attachment, date), out var content);
            files[SortKey(name)] = (name, Specification(attachment, name, content));
        }

        return new(files.Count == 0 ? graph : WithTree(graph, names, files.Values));
    }

    private static ObjectGraph WithTree(
        ObjectGraph graph,
        PdfDictionary names,
        IEnumerable<(PdfString Name, PdfDictionary Specification)> files
    )
    {
        var specifications = new List<(PdfString Name, PdfReference Value)>();
        foreach (var (name, specification) in files)
        {
            graph = graph.Add(specification, out var reference);
            specifications.Add((name, reference));
        }

        graph = graph.Add(NameTree.Write(specifications), out var tree);
        var associated = new PdfArray([.. specifications.Select(static file => file.Value)]);
        return graph.WithCatalog(
            graph.Catalog.With("AF", associated).With("Names", names.With("EmbeddedFiles", tree))
        );
    }

    private static PdfStream Content(Attachment attachment, DateTimeOffset? date)
    {
        var parameters = PdfDictionary.Of(
            new PdfEntry("Size", new PdfInteger(attachment.Bytes.Length))
        );
        if (date is { } given)
        {
            parameters = parameters.With("ModDate", PdfDate.Of(given));
        }

        var dictionary = PdfDictionary.Of(
            new("Type", new PdfName("EmbeddedFile")),
            new("Subtype", new PdfName(attachment.MimeType)),
            new("Params", parameters)
        );
        return StreamRecompression.Compress(dictionary, attachment.Bytes);
    }

    private static PdfDictionary Specification(
        Attachment attachment,
        PdfString name,
        PdfReference content
    ) =>
        PdfDictionary.Of(
            new("Type", new PdfName("Filespec")),
            new("F", name),
            new("UF", name),
            new("Desc", PdfString.OfText(attachment.Description)),
            new("AFRelationship", new PdfName(attachment.Relationship.ToString())),
            new("EF", PdfDictionary.Of(new("F", content), new("UF", content)))
        );

    private static PdfDictionary WithRelationship(PdfDictionary specification) =>
        specification.Find("AFRelationship") is null
            ? specification.With(
                "AFRelationship",
                new PdfName(nameof(AttachmentRelationship.Unspecified))
            )
            : specification;

    // Name trees are in the order of the bytes of their names (7.9.6).
    private static string SortKey(PdfString name) =>
        System.Text.Encoding.Latin1.GetString(name.Bytes.AsSpan());
}
