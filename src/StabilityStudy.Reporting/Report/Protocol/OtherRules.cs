namespace StabilityStudy.Reporting.Report.Protocol;

/// <summary>What other rules allow today, and what others found: it plans, and decides nothing.</summary>
internal static class OtherRules
{
    public static IEnumerable<Definition> Of(StudyProtocol protocol) =>
        protocol
            .Analytes.Select(analyte => new Definition(
                analyte.Id,
                string.Join(" ", Sentences(protocol, analyte))
            ))
            .Where(item => item.Explanation.Length > 0);

    private static IEnumerable<string> Sentences(StudyProtocol protocol, Analyte analyte)
    {
        if (!analyte.OtherWindows.IsEmpty)
        {
            yield return $"Other rules: {string.Join("; ", analyte.OtherWindows.Select(item => $"{item.Name}{(item.Group is { } group ? $", {Name(protocol, group)}" : "")}, {Rule(item.Rule)}"))}.";
        }

        foreach (
            var published in analyte.ExpectedChanges.GroupBy(change =>
                (change.Group, change.Storage, change.Source, change.Criterion, change.Why)
            )
        )
        {
            yield return Published(protocol, published.Key.Group, [.. published]);
        }
    }

    private static string Published(
        StudyProtocol protocol,
        string group,
        ImmutableArray<ExpectedChange> changes
    )
    {
        var first = changes[0];
        var found = string.Join(
            ", ",
            changes.Select(change =>
                $"{NumberText.Change((double)change.Percent, 1)} % at {change.TimePoint}"
            )
        );
        var whose = protocol.Groups.Length > 1 ? $" ({Name(protocol, group)})" : "";
        var criterion = first.Criterion is { } by ? $"; called stable by: {by}" : "";
        var why = first.Why is { } reason ? $" Remark: {RationaleWords.Unstopped(reason)}." : "";
        return $"Expected{whose} {found} ({RationaleWords.Unstopped(first.Source)}{criterion}).{why}";
    }

    private static string Rule(WindowRule rule) =>
        $"{DurationText.FormatWindow(rule.Time)} ({RationaleWords.Unstopped(rule.Source)})";

    private static string Name(StudyProtocol protocol, string group) =>
        protocol.Groups.FirstOrDefault(item => item.Id == group) is { } known
            ? TradeWords.InSentence(known.Name)
            : group;
}
