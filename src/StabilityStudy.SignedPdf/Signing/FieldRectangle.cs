namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Where a field lies on its page.</summary>
internal static class FieldRectangle
{
    /// <summary>A key of our own (ISO 32000-1:2008, annex E) beside those of the standard.</summary>
    public const string AreasKey = "StampAreas";

    /// <summary>The rectangle with its sides in order; null when there is none with an area.</summary>
    public static PageRectangle? Of(PdfDocument document, PdfDictionary field) =>
        Of(document, field.Find("Rect"));

    /// <summary>The areas inside a field on which parts of a stamp are shown; empty where it has none, or what stands there is no list of rectangles.</summary>
    public static ImmutableArray<PageRectangle> AreasOf(PdfDocument document, PdfDictionary field)
    {
        if (document.Resolve(field.Find(AreasKey)) is not PdfArray array)
        {
            return [];
        }

        var areas = array.Items.Select(item => Of(document, item)).ToImmutableArray();
        return areas.Any(area => area is null) ? [] : [.. areas.OfType<PageRectangle>()];
    }

    private static PageRectangle? Of(PdfDocument document, PdfObject? value)
    {
        if (document.Resolve(value) is not PdfArray { Items.Length: 4 } array)
        {
            return null;
        }

        var sides = new List<double>();
        foreach (var item in array.Items)
        {
            switch (document.Resolve(item))
            {
                case PdfInteger integer:
                    sides.Add(integer.Value);
                    break;
                case PdfReal real:
                    sides.Add(real.Value);
                    break;
                default:
                    return null;
            }
        }

        var rectangle = new PageRectangle(
            Math.Min(sides[0], sides[2]),
            Math.Min(sides[1], sides[3]),
            Math.Max(sides[0], sides[2]),
            Math.Max(sides[1], sides[3])
        );
        return rectangle is { Width: > 0 and < 1e6, Height: > 0 and < 1e6 } ? rectangle : null;
    }
}
