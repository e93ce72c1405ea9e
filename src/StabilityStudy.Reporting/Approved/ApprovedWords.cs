using StabilityStudy.Core.Register;

namespace StabilityStudy.Reporting.Approved;

/// <summary>What every document of approved windows says of its source, its validity and its tubes.</summary>
internal static class ApprovedWords
{
    private const int DigestShown = 16;
    private const int LowestCold = 8;

    /// <summary>What is carried by every document.</summary>
    public const string Cautions =
        "For qualified laboratory staff; the medical director decides. Local regulation, the manufacturer's instructions and the accreditor's rules prevail. It holds only for what was studied. Blood is handled under standard precautions. Not a medical device.";

    public static string Time(TimeSpan? time) =>
        time is { } known ? DurationText.FormatWindow(known) : "none";

    /// <summary>A time as it is called out: "5 h 30", "45 min".</summary>
    public static string Short(TimeSpan time) =>
        time > TimeSpan.FromHours(1) && time.Minutes != 0
            ? Time(time).Replace(" min", "", StringComparison.Ordinal)
            : Time(time);

    /// <summary>What became of a study of a longer wait.</summary>
    public static string Refused(WindowStanding standing) =>
        standing switch
        {
            WindowStanding.Declined => "a longer wait was studied and declined",
            WindowStanding.Withdrawn => "a longer window was withdrawn",
            WindowStanding.EndedByNewDirector => "a longer window was ended by a new director",
            _ => "a longer wait was studied and not supported",
        };

    public static string Day(DateOnly day) =>
        day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>"INVENTED EXAMPLE · ", or nothing.</summary>
    public static string Invented(BenchRules rules) =>
        rules.Rows.Any(item => item.Window.Handling?.IsInvented == true)
            ? "INVENTED EXAMPLE · "
            : "";

    /// <summary>"aPTT on AN1, lot R-2601".</summary>
    public static string Subject(BenchRules rules) =>
        rules.Analyte
        + (
            rules.Scope.Instruments.IsEmpty
                ? ""
                : $" on {string.Join(" or ", rules.Scope.Instruments)}"
        )
        + (
            rules.Scope.Lots.IsEmpty ? "" : $", reagent lot {string.Join(" or ", rules.Scope.Lots)}"
        );

    /// <summary>"Whole blood, closed, 18 to 25 °C".</summary>
    public static string Storage(BenchRules rules) => TradeWords.Capital(rules.Any.StorageWords);

    /// <summary>From when to when, as the head of a page says it.</summary>
    public static string Valid(BenchRules rules) =>
        $"valid from {Day(rules.From)} · "
        + (
            rules.Until is { } until ? $"review by {Day(until)}"
            : rules.Approved.IsEmpty ? "today's rule, no review set"
            : "no review set: ask the director"
        );

    /// <summary>"from report WB-RT-APTT-e33e04c4 · inputs e33e 04c4 122a ebc5 · register as of 2026-04-01"; several are named at the end.</summary>
    public static string Source(BenchRules rules) =>
        rules.Reports is [var only]
            ? $"from report {only.Name} · inputs {Digest(only)} · register as of {Day(rules.Day)}"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"from {rules.Reports.Length} reports, named in it · register as of {Day(rules.Day)}"
            );

    /// <summary>Every report with its digest.</summary>
    public static string Reports(BenchRules rules) =>
        string.Join(
            "; ",
            rules.Reports.Select(report => $"{report.Name}, inputs {Digest(report)}")
        );

    /// <summary>The digest of a report's inputs in blocks of four.</summary>
    public static string Digest(RegisteredReport report) =>
        report.InputDigest is { Length: >= DigestShown } digest
            ? string.Join(' ', digest[..DigestShown].Chunk(4).Select(part => new string(part)))
            : "not known";

    /// <summary>Who put which windows into force, when, and on which conditions.</summary>
    public static string ApprovedBy(BenchRules rules) =>
        string.Join(
            " ",
            rules
                .Approved.GroupBy(item => item.Report)
                .Select(rows =>
                    $"Approved by {rows.Key.DecidedBy}, {rows.Key.DecidedAt?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}: {string.Join(", ", rows.Select(item => $"{InSentence(item.Window.GroupName)} {Time(item.Window.Approved)}{(item.Window.Conditions.IsEmpty ? "" : " on a condition")}"))}."
                )
        );

    /// <summary>Whether a window is longer than the manufacturer allows; a sentence.</summary>
    public static string Modified(BenchRules rules)
    {
        var limits = rules
            .Approved.Select(item => item.Window.Handling?.ManufacturerLimit?.Time)
            .Distinct()
            .ToImmutableArray();
        return limits.IsEmpty ? ""
            : limits.Any(limit => limit is null) ? "The protocol states no manufacturer's limit. "
            : rules.Approved.Any(item =>
                item.Window.Approved > item.Window.Handling?.ManufacturerLimit?.Time
            )
                ? $"Longer than the manufacturer's limit of {Time(limits.Min())}: a modified test. "
            : "";
    }

    /// <summary>What ends it.</summary>
    public static string Ends(BenchRules rules) =>
        $"It ends {(rules.Until is { } until ? $"after {Day(until)}, " : "")}when a newer one is made, when a report named here is withdrawn or superseded, or when reagent, lot, instrument, tube or transport change.";

    /// <summary>"clotted, filled below 90 %, or kept cold".</summary>
    public static string Unfit(BenchRules rules)
    {
        var handling = rules.Any.Handling;
        string[] faults =
        [
            "clotted",
            .. handling?.Eligibility.FillPercentMinimum is { } fill
                ? new[] { $"filled below {NumberText.Plain(fill)} %" }
                : [],
            handling is { Storage: { State: StorageState.WholeBlood, LowestCelsius: > LowestCold } }
                ? "kept cold"
                : $"not kept as {rules.Any.StorageWords}",
        ];
        return $"{string.Join(", ", faults[..^1])}, or {faults[^1]}";
    }

    /// <summary>Name of a rule's group as a title.</summary>
    public static string Group(BenchRule rule) =>
        rule.Name ?? (rule.IsOfOthers ? "Any other anticoagulant" : "Anticoagulant unknown");

    /// <summary>Whether changes are counted from thawing.</summary>
    public static string Origin(BenchRules rules) =>
        rules.Any.Handling?.TimeOrigin == TimeOrigin.Thawing ? "thawing" : "collection";

    public static string InSentence(string name) =>
        name.Length > 1 && char.IsUpper(name[0]) && char.IsLower(name[1])
            ? char.ToLowerInvariant(name[0]) + name[1..]
            : name;

    /// <summary>"none, other".</summary>
    public static string Codes(IEnumerable<string> codes) => string.Join(", ", codes);

    /// <summary>By when the tube is spun, or null where there is no such time.</summary>
    public static TimeSpan? SpinBy(BenchRules rules, TimeSpan? limit) =>
        rules.Any.State == StorageState.WholeBlood && limit > rules.SpinTakes
            ? limit - rules.SpinTakes
            : null;

    /// <summary>The window that others have, which a tube outside must not be given.</summary>
    public static ImmutableArray<TimeSpan> ApprovedWindows(BenchRules rules) =>
        [
            .. rules
                .Rules.Where(rule => rule.IsApproved)
                .Select(rule => rule.Limit)
                .OfType<TimeSpan>()
                .Distinct()
                .Order(),
        ];
}
