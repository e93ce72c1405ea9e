namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// How many specimens a new study would need to decide an inconclusive time point, were the truth what was observed.
/// An extension of this study counts only if it was planned; otherwise only a new study concludes.
/// </summary>
/// <param name="Specimens">Smallest number, at most 200, with a chance of about 0.80 of meeting every criterion with error control together, with as many specimens a day as here; null when none does or more are unlikely to help.</param>
/// <param name="UnlikelyToHelp">Whether more specimens are unlikely to help: the observed change itself is at or beyond a limit, or the doubt is of another kind, such as few collection days or many pairs left out.</param>
public sealed record MoreSpecimens(int? Specimens, bool UnlikelyToHelp)
{
    /// <summary>The figure that decides: the one beyond its limit where more are unlikely to help, else the one that needs most; null where only other doubts are open.</summary>
    public JudgedFigure? Deciding { get; init; }

    /// <summary>What stays open however many specimens there are.</summary>
    public ImmutableArray<VerdictReason> Beside { get; init; } = [];
}
