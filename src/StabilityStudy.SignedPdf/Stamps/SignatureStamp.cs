using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.Stamps;

/// <summary>What a signature shows on the page: lines on white, in a thin frame.</summary>
/// <param name="Font">The font of all lines.</param>
/// <param name="Lines">The lines from the top.</param>
public sealed record SignatureStamp(StampFont Font, ImmutableArray<StampLine> Lines)
{
    /// <summary>Width that a line has in a field, points.</summary>
    public static double LineWidthIn(PageRectangle field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return StampAppearance.LineWidth(field.Width);
    }

    /// <summary>Whether all lines fit into a field at their size; else they are drawn smaller.</summary>
    public bool FitsIn(PageRectangle field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return StampAppearance.ScaleIn(this, field.Width, field.Height) >= 1;
    }
}
