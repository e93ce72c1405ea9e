using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.Rewriting;

/// <summary>What the rewritten file says about itself; nothing is taken from clock, machine or the information in the drawn file.</summary>
/// <param name="Title">Title of the document.</param>
/// <param name="Author">Who wrote the document; null to say nothing.</param>
/// <param name="CreatorTool">The program that made it, with its version.</param>
/// <param name="Language">Language of the text as a BCP 47 tag, such as <c>en-US</c>; null to keep what the drawn file says.</param>
/// <param name="Date">Date of the document and its attachments; null for no date at all.</param>
/// <param name="Attachments">Files to attach; one already in the drawn file under the same name is replaced.</param>
public sealed record RewriteOptions(
    string Title,
    string? Author,
    string CreatorTool,
    string? Language,
    DateTimeOffset? Date,
    ImmutableArray<Attachment> Attachments
)
{
    /// <summary>Empty signature fields in the order of signing; null to leave the document without a form of them.</summary>
    public ImmutableArray<ReservedField>? Fields { get; init; }

    /// <summary>
    /// Whether the file says of itself that it is PDF/A-3a (ISO 19005-3:2012) and PDF/UA-1 (ISO 14289-1:2014). Rewriting and signing keep what these ask for and add what they need; that the
    /// drawn document is tagged, has alternative texts and embeds its fonts is for the one who draws it.
    /// </summary>
    public bool ClaimsArchive { get; init; }
}
