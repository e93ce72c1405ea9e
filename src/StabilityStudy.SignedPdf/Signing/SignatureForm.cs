namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Finds the signature fields of a document's form (ISO 32000-1:2008, 12.7.3).</summary>
internal static class SignatureForm
{
    private const int MostFields = 10_000;
    private const int DeepestLevel = 32;

    /// <summary>The fields in the order of the form; null when the form has another structure than the standard says, or passes the bounds.</summary>
    public static ImmutableArray<SignatureField>? Fields(PdfDocument document)
    {
        var form = document.Resolve(document.Catalog.Find("AcroForm"));
        if (form is null)
        {
            return [];
        }

        if (
            form is not PdfDictionary dictionary
            || document.Resolve(dictionary.Find("Fields")) is not PdfArray top
        )
        {
            return null;
        }

        var found = ImmutableArray.CreateBuilder<SignatureField>();
        var seen = new HashSet<PdfReference>();
        var pending = new Stack<(PdfObject Node, string Prefix, bool IsSignature, int Level)>();
        Push(pending, top, "", isSignature: false, 0);
        for (var count = 0; pending.TryPop(out var next); count++)
        {
            if (
                count >= MostFields
                || next.Level > DeepestLevel
                || document.ResolveDictionary(next.Node) is not { } node
                || (next.Node is PdfReference reference && !seen.Add(reference))
            )
            {
                return null;
            }

            var isSignature = document.Resolve(node.Find("FT")) switch
            {
                null => next.IsSignature,
                PdfName { Value: "Sig" } => true,
                _ => false,
            };
            var part = (document.Resolve(node.Find("T")) as PdfString)?.ToText();
            var name = (next.Prefix, part) switch
            {
                (_, null) => next.Prefix,
                ("", _) => part,
                _ => next.Prefix + "." + part,
            };
            if (document.Resolve(node.Find("Kids")) is PdfArray kids)
            {
                Push(pending, kids, name, isSignature, next.Level + 1);
            }

            if (isSignature && (part is not null || node.Find("V") is not null))
            {
                found.Add(
                    new SignatureField(
                        name,
                        next.Node as PdfReference,
                        node,
                        node.Find("V") as PdfReference,
                        document.ResolveDictionary(node.Find("V"))
                    )
                );
            }
        }

        return found.DrainToImmutable();
    }

    private static void Push(
        Stack<(PdfObject, string, bool, int)> pending,
        PdfArray kids,
        string prefix,
        bool isSignature,
        int level
    )
    {
        // A bound here too: one long array may stand in many fields.
        for (var i = Math.Min(kids.Items.Length, MostFields) - 1; i >= 0; i--)
        {
            pending.Push((kids.Items[i], prefix, isSignature, level));
        }
    }
}
