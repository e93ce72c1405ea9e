using StabilityStudy.SignedPdf.Rewriting;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Gives a field its place in the structure tree of a tagged document (ISO 32000-1:2008, 14.7.4.3 and 14.8.4.5).</summary>
internal static class FieldTags
{
    /// <summary>The graph with a Form element around the field, after all others; unchanged when the document is not tagged.</summary>
    public static PdfResult<ObjectGraph> Apply(
        ObjectGraph graph,
        PdfReference field,
        PdfReference page,
        ReservedField reserved
    )
    {
        if (
            graph.Catalog.Find("StructTreeRoot") is not PdfReference rootReference
            || graph.Resolve(rootReference) is not PdfDictionary root
        )
        {
            return new(graph);
        }

        if (
            graph.Resolve(root.Find("ParentTree")) is not PdfDictionary tree
            || NextKey(graph, root, tree) is not { } key
        )
        {
            return new(new PdfFailure(null, "The parent tree of the tags cannot be read."));
        }

        var parent = DocumentElement(graph, root) ?? rootReference;
        var content = PdfDictionary.Of(
            new("Type", new PdfName("OBJR")),
            new("Obj", field),
            new("Pg", page)
        );
        graph = graph.Add(
            PdfDictionary.Of(
                new("Type", new PdfName("StructElem")),
                new("S", new PdfName("Form")),
                new("P", parent),
                new("Pg", page),
                new("Alt", PdfString.OfText(reserved.Description)),
                new("K", content)
            ),
            out var element
        );
        graph = Change(graph, parent, dictionary => WithKid(graph, dictionary, element));
        graph = Change(graph, field, dictionary => dictionary.With("StructParent", key));
        graph = Change(graph, page, static dictionary => dictionary.With("Tabs", new PdfName("S")));
        return new(
            Change(
                graph,
                rootReference,
                dictionary =>
                    dictionary
                        .With("ParentTree", WithEntry(graph, tree, key, element))
                        .With("ParentTreeNextKey", new PdfInteger(key.Value + 1))
            )
        );
    }

    private static ObjectGraph Change(
        ObjectGraph graph,
        PdfReference reference,
        Func<PdfDictionary, PdfDictionary> change
    ) =>
        graph.Resolve(reference) is PdfDictionary dictionary
            ? graph with
            {
                Objects = graph.Objects.SetItem(reference.Number - 1, change(dictionary)),
            }
            : graph;

    private static PdfReference? DocumentElement(ObjectGraph graph, PdfDictionary root)
    {
        var kids = graph.Resolve(root.Find("K")) is PdfArray { Items: [var only] }
            ? only
            : root.Find("K");
        return
            kids is PdfReference reference
            && graph.Resolve(reference) is PdfDictionary element
            && element.Find("S") is PdfName { Value: "Document" }
            ? reference
            : null;
    }

    private static PdfDictionary WithKid(
        ObjectGraph graph,
        PdfDictionary parent,
        PdfReference element
    ) =>
        parent.With(
            "K",
            graph.Resolve(parent.Find("K")) switch
            {
                PdfArray present => new PdfArray([.. present.Items, element]),
                null => new PdfArray([element]),
                _ => new PdfArray([parent.Find("K") ?? new PdfNull(), element]),
            }
        );

    private static PdfDictionary WithEntry(
        ObjectGraph graph,
        PdfDictionary tree,
        PdfInteger key,
        PdfReference element
    )
    {
        if (graph.Resolve(tree.Find("Kids")) is PdfArray kids)
        {
            var leaf = PdfDictionary.Of(
                new("Limits", new PdfArray([key, key])),
                new("Nums", new PdfArray([key, element]))
            );
            return tree.With("Kids", new PdfArray([.. kids.Items, leaf]));
        }

        var numbers = graph.Resolve(tree.Find("Nums")) is PdfArray array ? array.Items : [];
        return tree.With("Nums", new PdfArray([.. numbers, key, element]));
    }

    /// <summary>A key above all in the tree; null when the tree's last key cannot be found.</summary>
    private static PdfInteger? NextKey(ObjectGraph graph, PdfDictionary root, PdfDictionary tree)
    {
        var next = (graph.Resolve(root.Find("ParentTreeNextKey")) as PdfInteger)?.Value ?? 0;
        var node = tree;
        for (var level = 0; graph.Resolve(node.Find("Kids")) is PdfArray kids; level++)
        {
            if (
                level > 32
                || kids.Items.IsEmpty
                || graph.Resolve(kids.Items[^1]) is not PdfDictionary kid
            )
            {
                return null;
            }

            node = kid;
        }

        if (graph.Resolve(node.Find("Nums")) is not PdfArray { Items: var numbers })
        {
            return new PdfInteger(Math.Max(0, next));
        }

        if (numbers.Length >= 2 && graph.Resolve(numbers[^2]) is PdfInteger last)
        {
            next = Math.Max(next, Math.Min(last.Value, int.MaxValue) + 1);
        }

        return next is >= 0 and < int.MaxValue ? new PdfInteger(next) : null;
    }
}
