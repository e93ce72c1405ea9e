namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>What the wrong side of a decision level means for a patient, in the words of the protocol and no others.</summary>
internal static class LevelMeaningWords
{
    /// <summary>
    /// Sentences for the sides to which results moved, each with a space before it: " Below it, a thrombosis could be ruled out wrongly."; what the protocol does not
    /// state stands among what the report lacks.
    /// </summary>
    /// <param name="meaning">What the protocol states of the level.</param>
    /// <param name="below">Whether results fell below it.</param>
    /// <param name="above">Whether results rose above it.</param>
    public static string Harm(LevelMeaning meaning, bool below, bool above)
    {
        string[] stated =
        [
            .. below && meaning.Below is { } falling
                ? [$" Below it, {RationaleWords.Unstopped(falling)}."]
                : Array.Empty<string>(),
            .. above && meaning.Above is { } rising
                ? [$" Above it, {RationaleWords.Unstopped(rising)}."]
                : Array.Empty<string>(),
        ];
        return string.Concat(stated);
    }

    /// <summary>Every meaning that the protocol states for an analyte: "wrongly below 40 s: …; wrongly above 40 s: …"; null without any.</summary>
    public static string? Of(Analyte analyte) =>
        analyte.LevelMeanings.IsEmpty
            ? null
            : string.Join("; ", analyte.LevelMeanings.Select(meaning => Of(meaning, analyte)));

    private static string Of(LevelMeaning meaning, Analyte analyte)
    {
        var level =
            $"{NumberText.Plain(meaning.Level)} {analyte.ShownUnit}".TrimEnd()
            + (meaning.Group is { } group ? $" ({group})" : "");
        string?[] sides =
        [
            meaning.Below is { } below
                ? $"wrongly below {level}: {RationaleWords.Unstopped(below)}"
                : null,
            meaning.Above is { } above
                ? $"wrongly above {level}: {RationaleWords.Unstopped(above)}"
                : null,
        ];
        return string.Join("; ", sides.OfType<string>());
    }

    /// <summary>The levels, or sides of them, of which the protocol states no meaning for a group that is studied around them: "40 s, below 60 s (ufh)"; null where every one is stated.</summary>
    public static string? Missing(Analyte analyte, StudyProtocol protocol)
    {
        string[] levels = [.. analyte.DecisionLevels.SelectMany(MissingOf)];
        return levels.Length == 0 ? null : string.Join(", ", levels);

        IEnumerable<string> MissingOf(decimal level)
        {
            var written = $"{NumberText.Plain(level)} {analyte.ShownUnit}".TrimEnd();
            var sides = protocol
                .Groups.Select(group => group.Id)
                .Where(group =>
                    (analyte.Groups.IsEmpty || analyte.Groups.Contains(group))
                    && analyte.IsPlannedFor(level, group)
                )
                .Select(group => (Group: group, Side: MissingSide(analyte.MeaningOf(level, group))))
                .ToArray();
            return sides.DistinctBy(item => item.Side).Count() == 1
                ? sides
                    .Take(1)
                    .Where(item => item.Side is not null)
                    .Select(item => item.Side + written)
                : sides
                    .Where(item => item.Side is not null)
                    .Select(item => $"{item.Side}{written} ({item.Group})");
        }
    }

    private static string? MissingSide(LevelMeaning meaning) =>
        meaning switch
        {
            { Below: null, Above: null } => "",
            { Below: null } => "below ",
            { Above: null } => "above ",
            _ => null,
        };
}
