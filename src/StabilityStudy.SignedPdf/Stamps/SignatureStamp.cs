using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.Stamps;

/// <summary>What a signature shows on the page: lines on white, in a thin frame, and parts elsewhere in the field; between them the page stays seen.</summary>
/// <param name="Font">The font of all lines.</param>
/// <param name="Lines">The lines from the top.</param>
public sealed record SignatureStamp(StampFont Font, ImmutableArray<StampLine> Lines)
{
    /// <summary>Where the lines stand, in the page's coordinates; null for the whole field.</summary>
    public PageRectangle? Box { get; init; }

    /// <summary>What stands elsewhere in the field.</summary>
    public ImmutableArray<StampPart> Parts { get; init; } = [];

    /// <summary>Width that a line has in a field, points.</summary>
    public static double LineWidthIn(PageRectangle field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return StampAppearance.LineWidth(field.Width);
    }

    /// <summary>Whether the lines of its box fit at their size; else they are drawn smaller, as those of a part are.</summary>
    public bool FitsIn(PageRectangle field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return StampAppearance.ScaleIn(Font, Lines, Box ?? field) >= 1;
    }

    /// <summary>Every line that is shown.</summary>
    internal IEnumerable<StampLine> AllLines => Lines.Concat(Parts.SelectMany(part => part.Lines));
}

/// <summary>A part of a stamp: lines on white beside a bar.</summary>
/// <param name="Area">Where it stands, in the page's coordinates.</param>
/// <param name="Lines">The lines from the top.</param>
public sealed record StampPart(PageRectangle Area, ImmutableArray<StampLine> Lines);
