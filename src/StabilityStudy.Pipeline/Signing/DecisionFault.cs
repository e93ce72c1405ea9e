using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>What is wrong with the decision that somebody signs with.</summary>
internal enum DecisionFault
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The one who decides states none.</summary>
    Missing,

    /// <summary>Somebody states one who does not decide.</summary>
    NotTheirs,

    /// <summary>A refusal, or a shorter window, without a reason; in format 1 conditions that are not said.</summary>
    WithoutReason,

    /// <summary>A plain approval with a text, which could hold conditions.</summary>
    PlainWithText,

    /// <summary>The rows are not those that the report concludes, with what it supports.</summary>
    OtherRows,

    /// <summary>A window longer than supported.</summary>
    TooLong,

    /// <summary>An interim rule that is not shorter than today's, or beside an approved window.</summary>
    InterimNotShorter,

    /// <summary>The rows decide something else than the decision says of them all.</summary>
    Contradictory,

    /// <summary>In force before it is signed, or to be reviewed before it is in force.</summary>
    DatesOutOfOrder,
}

/// <summary>The rules by which a decision is signed, and by which a signed one is read.</summary>
internal static class DecisionFaults
{
    /// <param name="analysis">The study, computed again.</param>
    /// <param name="signatory">Who signs.</param>
    /// <param name="decision">What is decided; null for nothing.</param>
    /// <param name="format">Number of the form of the statement that holds it.</param>
    /// <param name="signedOn">Day of the signature where it was made.</param>
    public static DecisionFault Of(
        StudyAnalysis analysis,
        Signatory signatory,
        ApproverDecision? decision,
        int format,
        DateOnly signedOn
    ) =>
        (analysis.Protocol.Decides(signatory), decision) switch
        {
            (true, null) => DecisionFault.Missing,
            (false, null) => DecisionFault.None,
            (false, _) => DecisionFault.NotTheirs,
            (true, { } stated) => format == SignedStatement.FormatWithoutRows
                ? WithoutRows(stated)
                : WithRows(analysis, stated, signedOn),
        };

    private static DecisionFault WithoutRows(ApproverDecision decision) =>
        (decision.Kind, decision.Reason) switch
        {
            (DecisionKind.Approve, not null) => DecisionFault.PlainWithText,
            (DecisionKind.Approve, null) => DecisionFault.None,
            (DecisionKind.Conditions or DecisionKind.Decline, null) => DecisionFault.WithoutReason,
            (DecisionKind.Conditions or DecisionKind.Decline, _) => DecisionFault.None,
        };

    private static DecisionFault WithRows(
        StudyAnalysis analysis,
        ApproverDecision decision,
        DateOnly signedOn
    )
    {
        var windows = decision.Windows;
        var numbers = windows.SelectMany(window => window.Conditions).ToImmutableHashSet();
        return !IsOf(windows, ConcludedWindow.Of(analysis)) ? DecisionFault.OtherRows
            : windows.Any(window => window.Approved > (window.Row.Supported ?? TimeSpan.Zero))
                ? DecisionFault.TooLong
            : windows.Any(window =>
                window.Interim is { } interim
                && (interim >= window.Row.Today || window.Approved is not null)
            )
                ? DecisionFault.InterimNotShorter
            : windows.Any(window => (window.Approved ?? window.Interim) <= TimeSpan.Zero)
            || !numbers.SetEquals(Enumerable.Range(1, decision.Conditions.Length))
            || decision.Kind != KindOf(decision)
                ? DecisionFault.Contradictory
            : decision.Reason is null && NeedsReason(decision) ? DecisionFault.WithoutReason
            : decision is { Kind: DecisionKind.Approve, Reason: not null }
                ? DecisionFault.PlainWithText
            : decision.Effective < signedOn || decision.Review <= (decision.Effective ?? signedOn)
                ? DecisionFault.DatesOutOfOrder
            : DecisionFault.None;
    }

    /// <summary>What the rows together amount to; a refusal of everything approves nothing, and is told from an approval of nothing by what it says.</summary>
    private static DecisionKind KindOf(ApproverDecision decision) =>
        decision.Kind == DecisionKind.Decline
        && decision.Windows.All(window => (window.Approved, window.Interim) is (null, null))
            ? DecisionKind.Decline
        : decision.Windows.Any(window => window.IsLess) ? DecisionKind.Conditions
        : DecisionKind.Approve;

    private static bool NeedsReason(ApproverDecision decision) =>
        decision.Kind == DecisionKind.Decline
        || decision.Windows.Any(window => window.Approved != window.Row.Supported);

    private static bool IsOf(
        ImmutableArray<WindowDecision> windows,
        ImmutableArray<ConcludedWindow> rows
    ) =>
        windows.Length == rows.Length
        && windows
            .Zip(rows)
            .All(pair =>
                (
                    pair.First.Row.Analyte,
                    pair.First.Row.Group,
                    pair.First.Row.Storage,
                    pair.First.Row.Supported,
                    pair.First.Row.Today
                )
                    == (
                        pair.Second.Analyte,
                        pair.Second.Group,
                        pair.Second.Storage,
                        pair.Second.Supported,
                        pair.Second.Today
                    )
                && pair.First.Row.Instruments.SequenceEqual(pair.Second.Instruments)
                && pair.First.Row.Reagents.SequenceEqual(pair.Second.Reagents)
                && pair.First.Row.Sites.SequenceEqual(pair.Second.Sites)
            );
}
