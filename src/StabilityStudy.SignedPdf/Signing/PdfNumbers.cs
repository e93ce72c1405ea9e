namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Writes lengths on a page to a thousandth of a point, far finer than any printer.</summary>
internal static class PdfNumbers
{
    public static string Text(double points) =>
        (Math.Round(points, 3) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);

    public static PdfObject Of(double points)
    {
        var text = Text(points);
        return PdfReal.IsReal(text)
            ? new PdfReal(text)
            : new PdfInteger(long.Parse(text, CultureInfo.InvariantCulture));
    }

    public static PdfArray Rectangle(PageRectangle rectangle) =>
        new([Of(rectangle.Left), Of(rectangle.Bottom), Of(rectangle.Right), Of(rectangle.Top)]);
}
