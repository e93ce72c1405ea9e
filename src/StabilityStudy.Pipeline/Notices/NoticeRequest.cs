using StabilityStudy.Core.Notices;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline.Notices;

/// <summary>A notice about signed reports as it is asked for.</summary>
/// <param name="Kind">What it does; not to end a study.</param>
/// <param name="By">Printed name of the person who decides and signs.</param>
/// <param name="Reason">Why, or after which review.</param>
/// <param name="Paper">Paper size.</param>
public sealed record NoticeRequest(NoticeKind Kind, string By, string Reason, PaperSize Paper)
{
    /// <summary>First day on which the windows are no longer in force; needed where windows are taken away.</summary>
    public DateOnly? From { get; init; }

    /// <summary>The day on which the notice is made, from which the protocol's interval counts.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>Day by which the windows are to be reviewed next; null for what the protocols state after a review, and to leave it as it is after an adoption.</summary>
    public DateOnly? Review { get; init; }

    /// <summary>Whether results reported under the windows are to be looked at again.</summary>
    public bool LooksBack { get; init; }

    /// <summary>The windows to take away, each a row and what stays, "none" for today's rule; empty for all.</summary>
    public ImmutableArray<RowText> Windows { get; init; } = [];
}

/// <summary>A signed report with the name under which people know its file.</summary>
/// <param name="Name">The name.</param>
/// <param name="Bytes">Its bytes.</param>
public sealed record SignedReportFile(string Name, ReadOnlyMemory<byte> Bytes);

/// <summary>A notice ready to be signed, or why there is none.</summary>
public abstract record NoticeAttempt
{
    private NoticeAttempt() { }

    /// <summary>The drawn notice.</summary>
    /// <param name="Notice">What it says.</param>
    /// <param name="Pdf">The bytes of the file.</param>
    public sealed record Drawn(Notice Notice, ReadOnlyMemory<byte> Pdf) : NoticeAttempt;

    /// <summary>Nothing was made.</summary>
    /// <param name="Why">Why not, in words.</param>
    public sealed record Refused(string Why) : NoticeAttempt;
}
