namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>The instruments of a study over several, in words.</summary>
internal static class ScopeWords
{
    /// <summary>"instrument AN2"; "an instrument that is not recorded".</summary>
    public static string Of(string code) =>
        code.Length == 0 ? "an instrument that is not recorded" : $"instrument {code}";

    /// <summary>" · by instrument: AN1 6 h, AN2 none" where they differ, " · on each of AN1, AN2" where they do not; empty without several.</summary>
    public static string InHeadline(Sequence sequence)
    {
        var parts = sequence.Parts;
        return parts.IsEmpty ? ""
            : parts.Any(part => part.Window?.Time != sequence.Window?.Time)
                ? $" · by instrument: {string.Join(", ", parts.Select(part => $"{Code(part)} {Window(part)}"))}"
            : sequence.Window is null ? ""
            : $" · on each of {string.Join(", ", parts.Select(Code))}";
    }

    /// <summary>What each instrument supports on its own specimens, as a sentence; empty where none of them has a window.</summary>
    public static string Sentence(StudyAnalysis analysis, Sequence sequence)
    {
        if (sequence.Parts.All(part => part.Window is null))
        {
            return "";
        }

        var origin = sequence.Window is null
            ? " "
                + OriginWords.Sentence(
                    analysis.Protocol,
                    SequenceNames.Of(analysis, sequence).Storage
                )
            : "";
        return $" By instrument, each on its own specimens: {string.Join("; ", sequence.Parts.Select(Standing))}.{origin}";
    }

    /// <summary>"6 h", "8 h (modified test)" or "none".</summary>
    public static string Window(ScopePart part) =>
        part.Window is not { } window
            ? "none"
            : DurationText.FormatWindow(window.Time)
                + (
                    window.ManufacturerLimit == ManufacturerStanding.Beyond
                        ? " (modified test)"
                        : ""
                )
                + (window.WithinStandard ? " (not longer than today's)" : "");

    /// <summary>Parts in a list with "and" before the last.</summary>
    public static string List(IEnumerable<string> items)
    {
        string[] all = [.. items];
        return all.Length < 2
            ? string.Concat(all)
            : $"{string.Join(", ", all[..^1])} and {all[^1]}";
    }

    private static string Code(ScopePart part) =>
        part.Code.Length == 0 ? "not recorded" : part.Code;

    /// <summary>What one instrument supports on its own specimens: "testing on instrument AN1 is supported up to 6 h".</summary>
    public static string Standing(ScopePart part)
    {
        var open = part.TimePoints.FirstOrDefault(item => item.Conclusion != Conclusion.Supported);
        var end = open is null
            ? ""
            : $"{TradeWords.Of(open.Conclusion)} at {open.TimePoint} ({NumberText.Count(open.Counted)} counted)";
        return part.Window is not null
                ? $"testing on {Of(part.Code)} is supported up to {Window(part)}{(open is null ? "" : $", and {end}")}"
            : open is null ? $"no window is supported on {Of(part.Code)}"
            : $"testing on {Of(part.Code)} is {end}";
    }
}
