namespace StabilityStudy.SignedPdf.Signing;

/// <summary>A rectangle on a page.</summary>
/// <param name="Left">Points (1/72 inch) from the left edge of the page's coordinates.</param>
/// <param name="Bottom">Points from their lower edge, upwards.</param>
/// <param name="Right">Points from the left edge; more than <paramref name="Left"/>.</param>
/// <param name="Top">Points from the lower edge; more than <paramref name="Bottom"/>.</param>
public sealed record PageRectangle(double Left, double Bottom, double Right, double Top)
{
    /// <summary>Width in points.</summary>
    public double Width => Right - Left;

    /// <summary>Height in points.</summary>
    public double Height => Top - Bottom;
}
