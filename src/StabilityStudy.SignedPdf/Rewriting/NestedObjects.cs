namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>
/// Goes through an object and all that is written inside it, not following references. The reader bounds how deep that is.
/// </summary>
internal static class NestedObjects
{
    /// <summary>The object with each reference replaced; an entry whose value becomes null is left out.</summary>
    public static PdfObject MapReferences(PdfObject value, Func<PdfReference, PdfObject> change) =>
        value switch
        {
            PdfReference reference => change(reference),
            PdfArray array => array.MapItems(item => MapReferences(item, change)),
            PdfDictionary dictionary => MapReferences(dictionary, change),
            PdfStream stream => stream.WithDictionary(MapReferences(stream.Dictionary, change)),
            PdfNull or PdfBoolean or PdfInteger or PdfReal or PdfString or PdfName => value,
            _ => throw new ArgumentException("A kind of object that is not known.", nameof(value)),
        };

    public static PdfDictionary MapReferences(
        PdfDictionary dictionary,
        Func<PdfReference, PdfObject> change
    ) => dictionary.MapValues(value => MapReferences(value, change));

    /// <summary>The object with each dictionary in it changed, inner ones first.</summary>
    public static PdfObject MapDictionaries(
        PdfObject value,
        Func<PdfDictionary, PdfDictionary> change
    ) =>
        value switch
        {
            PdfArray array => array.MapItems(item => MapDictionaries(item, change)),
            PdfDictionary dictionary => MapInner(dictionary, change),
            PdfStream stream => stream.WithDictionary(MapInner(stream.Dictionary, change)),
            PdfNull
            or PdfBoolean
            or PdfInteger
            or PdfReal
            or PdfString
            or PdfName
            or PdfReference => value,
            _ => throw new ArgumentException("A kind of object that is not known.", nameof(value)),
        };

    private static PdfDictionary MapInner(
        PdfDictionary dictionary,
        Func<PdfDictionary, PdfDictionary> change
    ) => change(dictionary.MapValues(value => MapDictionaries(value, change)));
}
