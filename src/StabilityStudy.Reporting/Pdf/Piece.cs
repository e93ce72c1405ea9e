namespace StabilityStudy.Reporting.Pdf;

/// <summary>
/// The smallest thing that goes onto a page as a whole: a line of text, a table row, a figure. Pieces are first
/// distributed over pages, then drawn in order, because the tag tree can only be written front to back.
/// </summary>
/// <param name="Height">Height in points.</param>
/// <param name="SpaceBefore">Distance to the piece above in points; dropped at the top of a page.</param>
/// <param name="Tags">Structure elements around the piece, the outermost first.</param>
/// <param name="Draw">Draws the piece with its top at the given height.</param>
internal sealed record Piece(
    double Height,
    double SpaceBefore,
    ImmutableArray<Tag> Tags,
    Action<PageCanvas, double> Draw
)
{
    /// <summary>How firmly the piece stands on the page of the next one.</summary>
    public Hold HoldNext { get; init; }

    /// <summary>Whether the piece starts a page.</summary>
    public bool StartsPage { get; init; }

    /// <summary>Drawn again above this piece when it is the first on a page.</summary>
    public Piece? RepeatedAbove { get; init; }
}

/// <summary>How firmly two pieces belong on one page.</summary>
internal enum Hold
{
    /// <summary>A page may end between them.</summary>
    None,

    /// <summary>Together if a page can hold the whole group and not too much of the page before stays blank.</summary>
    Group,

    /// <summary>Together if a page can hold the whole group.</summary>
    Whole,

    /// <summary>Together whenever a page can hold both: a heading and its text, a row and its head.</summary>
    Firm,
}

/// <summary>A structure element; two pieces with the same object lie in the same element.</summary>
/// <param name="name">Structure type of ISO 32000, for example <c>P</c> or <c>Table</c>.</param>
/// <param name="isGrouping">Whether it only groups other elements and has no content of its own.</param>
internal sealed class Tag(string name, bool isGrouping = false)
{
    /// <summary>Whether it only groups other elements.</summary>
    public bool IsGrouping { get; } = isGrouping;

    /// <summary>Structure type of ISO 32000.</summary>
    public string Name { get; } = name;
}
