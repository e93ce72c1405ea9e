using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>A decision in words, the same on the stamp and in a verification.</summary>
internal static class DecisionWords
{
    /// <summary>The decision as a whole: "Decision: approved".</summary>
    public static string Headline(ApproverDecision decision) => "Decision: " + Whole(decision);

    /// <summary>The decision as a whole, without the word before it.</summary>
    public static string Whole(ApproverDecision decision) =>
        decision.Kind switch
        {
            DecisionKind.Approve => "approved",
            DecisionKind.Conditions when decision.Windows.IsEmpty =>
                $"approved with conditions: {decision.Reason}",
            DecisionKind.Conditions => "approved with shorter windows or conditions",
            DecisionKind.Decline => $"declined: {decision.Reason}",
        };

    /// <summary>What is decided on each row, a line each; none where everything is declined, or the statement has no rows.</summary>
    public static IEnumerable<string> Rows(StudyProtocol protocol, ApproverDecision decision) =>
        decision.Kind == DecisionKind.Decline
            ? []
            : decision.Windows.Select(window => $"{Name(protocol, window.Row)}: {Of(window)}");

    /// <summary>The decision on a row at its place in the table: a label, the window, and what goes with it.</summary>
    public static (string Label, string Decided, string Beside) Cell(WindowDecision window)
    {
        var today = DurationText.FormatWindow(window.Row.Today);
        var (label, decided, beside) = window switch
        {
            { Interim: { } interim } => (
                "Interim rule",
                DurationText.FormatWindow(interim),
                $"shorter than today's {today}"
            ),
            { Approved: { } approved } => (
                "Approved",
                DurationText.FormatWindow(approved),
                approved < window.Row.Today ? $"shorter than today's {today}" : ""
            ),
            _ => ("Decision", "declined", $"today's {today} stays"),
        };
        string[] parts =
        [
            .. beside.Length == 0 ? [] : new[] { beside },
            .. window.Conditions switch
            {
                [] => [],
                [var one] => new[] { FormattableString.Invariant($"condition {one}") },
                _ => [$"conditions {string.Join(", ", window.Conditions)}"],
            },
        ];
        return (label, decided, string.Join("; ", parts));
    }

    /// <summary>From when, until when, on which conditions and why, a line each; none for a statement without rows.</summary>
    public static IEnumerable<string> Terms(ApproverDecision decision)
    {
        if (decision.Windows.IsEmpty)
        {
            yield break;
        }

        if (decision.Kind != DecisionKind.Decline)
        {
            var from = decision.Effective is { } day ? Day(day) : "the time of this signature";
            var review = decision.Review is { } due ? $"; to be reviewed by {Day(due)}" : "";
            yield return $"In force from {from}{review}";
        }

        for (var i = 0; i < decision.Conditions.Length; i++)
        {
            yield return FormattableString.Invariant(
                $"Condition {i + 1}: {decision.Conditions[i]}"
            );
        }

        if (decision is { Kind: not DecisionKind.Decline, Reason: { } reason })
        {
            yield return $"Reason: {reason}";
        }

        if (decision.Earlier is { } earlier)
        {
            yield return $"Decided again ({earlier.Reason}) after {earlier.By} on {Day(DateOnly.FromDateTime(earlier.At.DateTime))}: {earlier.Words}";
        }
    }

    private static string Of(WindowDecision window)
    {
        var supported = window.Row.Supported is { } longest
            ? $"supported: {DurationText.FormatWindow(longest)}"
            : "none supported";
        var today = DurationText.FormatWindow(window.Row.Today);
        var decided =
            window.Interim is { } interim
                ? $"interim {DurationText.FormatWindow(interim)}, shorter than today's {today} ({supported})"
            : window.Approved is { } approved
                ? $"{DurationText.FormatWindow(approved)} approved"
                    + (approved == window.Row.Supported ? ", as supported" : $" ({supported})")
                    + (approved < window.Row.Today ? $", shorter than today's {today}" : "")
            : $"today's {today} stays ({supported})";
        return window.Conditions switch
        {
            [] => decided,
            [var one] => FormattableString.Invariant($"{decided}; condition {one}"),
            _ => $"{decided}; conditions {string.Join(", ", window.Conditions)}",
        };
    }

    /// <summary>The row in the words of the protocol; storage and instrument only where there are several.</summary>
    private static string Name(StudyProtocol protocol, ConcludedWindow row)
    {
        var group = protocol.Groups.FirstOrDefault(item => item.Id == row.Group)?.Name ?? row.Group;
        var storage = protocol.Storages.Length > 1 ? $", {row.Storage}" : "";
        var instrument = row.IsOfOneInstrument
            ? $", {(row.Instruments.IsEmpty ? "instrument not recorded" : string.Join(", ", row.Instruments))}"
            : "";
        return $"{row.Analyte}, {group}{storage}{instrument}";
    }

    private static string Day(DateOnly day) =>
        day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
