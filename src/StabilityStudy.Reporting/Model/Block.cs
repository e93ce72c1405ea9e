namespace StabilityStudy.Reporting.Model;

/// <summary>One piece of a section. The kinds are closed: each drawing knows all of them.</summary>
public abstract record Block
{
    private protected Block() { }
}

/// <summary>A second-level heading; it never stands alone at the foot of a page.</summary>
internal sealed record Heading(string Text) : Block;

/// <summary>Running text; a line feed in it starts a new line.</summary>
internal sealed record Paragraph(string Text, ParagraphStyle Style) : Block;

/// <summary>How large a paragraph is set.</summary>
internal enum ParagraphStyle
{
    /// <summary>Text of the report.</summary>
    Body,

    /// <summary>Remarks and sources.</summary>
    Small,

    /// <summary>An opening sentence, slightly larger.</summary>
    Lead,

    /// <summary>A sentence that sums up, heavier.</summary>
    Strong,
}

/// <summary>A list of unnumbered points.</summary>
internal sealed record Bullets(ImmutableArray<string> Items) : Block;

/// <summary>Terms with their explanations.</summary>
internal sealed record DefinitionList(ImmutableArray<Definition> Items) : Block
{
    /// <summary>Whether the terms follow each other in running text, where paper is dear.</summary>
    public bool IsRunIn { get; init; }

    /// <summary>Whether each term is a statement that is decided on: wider terms, with a rule between them.</summary>
    public bool IsRuled { get; init; }
}

/// <summary>One term of a <see cref="DefinitionList"/>.</summary>
internal sealed record Definition(string Term, string Explanation)
{
    /// <summary>What stands below in softer ink, such as a source; empty for nothing.</summary>
    public string Aside { get; init; } = "";
}

/// <summary>Lines of fixed-width text, such as digests or commands; too long lines are broken, spaces kept.</summary>
internal sealed record MonospaceLines(ImmutableArray<string> Lines) : Block;

/// <summary>Blocks that stand on one page if a page can hold them.</summary>
internal sealed record KeepTogether(ImmutableArray<Block> Blocks) : Block
{
    /// <summary>Whether they do so however much of the page before stays blank.</summary>
    public bool IsWhole { get; init; }
}

/// <summary>
/// A figure that takes the room which the rest of its section leaves on the page where the section starts; where that is
/// less than it needs, it stands at the end of the section. A page break has no effect in a section that has one.
/// </summary>
/// <param name="Figure">The figure; its height is the most that it takes.</param>
/// <param name="LeastHeightMillimeters">The least that it needs.</param>
internal sealed record Floating(ChartBlock Figure, double LeastHeightMillimeters) : Block;

/// <summary>What follows starts on a new page.</summary>
internal sealed record PageBreak : Block;
