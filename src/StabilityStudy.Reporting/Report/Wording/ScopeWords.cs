namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>The instruments or sites of a study over several, in words.</summary>
internal static class ScopeWords
{
    /// <summary>"instrument AN2"; "the site that is not recorded".</summary>
    public static string Of(ScopeKind kind, string code) =>
        code.Length == 0 ? $"the {Name(kind)} that is not recorded" : $"{Name(kind)} {code}";

    /// <summary>"instrument" or "site".</summary>
    public static string Name(ScopeKind kind) =>
        kind switch
        {
            ScopeKind.Instrument => "instrument",
            ScopeKind.Site => "site",
        };

    /// <summary>" · by instrument: AN1 6 h, AN2 none" where they differ, " · on each of AN1, AN2" where they do not; empty without several.</summary>
    public static string InHeadline(Sequence sequence)
    {
        if (sequence.Parts.IsEmpty)
        {
            return "";
        }

        var parts = sequence.Parts;
        return parts.All(part => part.Window?.Time == sequence.Window?.Time)
            ? sequence.Window is null
                ? ""
                : $" · on each of {string.Join(", ", parts.Select(Code))}"
            : $" · by {Name(parts[0].Kind)}: {string.Join(", ", parts.Select(part => $"{Code(part)} {Window(part)}"))}";
    }

    /// <summary>" By instrument, each on its own specimens: instrument AN1 is supported up to 6 h; instrument AN2 is inconclusive at 4 h." Empty where no single one has a window.</summary>
    public static string Sentence(Sequence sequence) =>
        sequence.Parts.All(part => part.Window is null)
            ? ""
            : $" By {Name(sequence.Parts[0].Kind)}, each on its own specimens: {string.Join("; ", sequence.Parts.Select(Standing))}.";

    /// <summary>"6 h" or "none".</summary>
    public static string Window(ScopePart part) =>
        part.Window is { } window ? DurationText.FormatWindow(window.Time) : "none";

    /// <summary>The code, or that there is none.</summary>
    public static string Code(ScopePart part) => part.Code.Length == 0 ? "not recorded" : part.Code;

    private static string Standing(ScopePart part)
    {
        var open = part.TimePoints.FirstOrDefault(item => item.Conclusion != Conclusion.Supported);
        var end = open is null
            ? ""
            : $"{TradeWords.Of(open.Conclusion)} at {open.TimePoint} ({NumberText.Count(open.Counted)} counted)";
        var code = Of(part.Kind, part.Code);
        return part.Window is null
            ? $"{code} is {(open is null ? "without a window" : end)}"
            : $"{code} is supported up to {Window(part)}{(open is null ? "" : $", and {end}")}";
    }
}
