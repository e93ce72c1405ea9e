namespace StabilityStudy.Reporting.Model;

/// <summary>
/// A finished report: every sentence, number and tick label is already text. Drawing it, as PDF or as plain text,
/// places these texts and neither computes nor decides anything.
/// </summary>
/// <param name="Title">Title of the document, printed at the top of page 1.</param>
/// <param name="Language">Language of all texts as a BCP 47 tag, for example <c>en-US</c>.</param>
/// <param name="Paper">Paper of every page.</param>
/// <param name="Header">What is printed in the margins of every page.</param>
/// <param name="Sections">The sections in reading order; the first one starts on page 1.</param>
public sealed record ReportModel(
    string Title,
    string Language,
    PaperSize Paper,
    RunningHeader Header,
    ImmutableArray<Section> Sections
);

/// <summary>Paper of the report, always upright.</summary>
public enum PaperSize
{
    /// <summary>210 × 297 mm.</summary>
    A4,

    /// <summary>8.5 × 11 in.</summary>
    Letter,
}

/// <summary>Texts in the margins of every page; the drawing adds "page x of y".</summary>
/// <param name="Left">Top left: study code and digest.</param>
/// <param name="Right">Top right: what makes the pages valid.</param>
/// <param name="Fingerprint">Bottom left: the text that ties a sheet of paper to the file.</param>
public sealed record RunningHeader(string Left, string Right, string Fingerprint);

/// <summary>A section: a first-level heading, a bookmark and its blocks.</summary>
/// <param name="Title">Heading and bookmark.</param>
/// <param name="StartsOnNewPage">Whether the heading is the first thing on a page.</param>
/// <param name="Blocks">Content in reading order; may be empty.</param>
public sealed record Section(string Title, bool StartsOnNewPage, ImmutableArray<Block> Blocks)
{
    /// <summary>Whether it is looked up, not read: its running text is set as small as its tables.</summary>
    public bool IsLookedUp { get; init; }

    /// <summary>Whether it also stands in a brief form of the report: what decides, what speaks against it and what is open.</summary>
    public bool IsInBrief { get; init; }

    /// <summary>
    /// What closes the page on which the section starts: where the content is longer than that page, the rest of it
    /// follows on the next.
    /// </summary>
    public ImmutableArray<Block> Foot { get; init; } = [];
}
