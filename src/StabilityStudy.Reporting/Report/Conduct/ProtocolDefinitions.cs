using StabilityStudy.Core.Queries;

namespace StabilityStudy.Reporting.Report.Conduct;

/// <summary>How the protocol says that a study is run, a term each.</summary>
internal static class ProtocolDefinitions
{
    /// <param name="protocol">The protocol.</param>
    /// <param name="collectionDays">On which days specimens were, or are to be, collected.</param>
    public static ImmutableArray<Definition> Of(StudyProtocol protocol, string collectionDays) =>
        [.. InBrief(protocol, collectionDays), .. InDetail(protocol)];

    /// <summary>What is looked up: the analytes with their rules of today, tubes, eligibility, replicates, looks, controls, reruns.</summary>
    /// <param name="protocol">The protocol.</param>
    public static ImmutableArray<Definition> InDetail(StudyProtocol protocol) =>
        [
            .. protocol.Analytes.Select(analyte => AnalyteLine(analyte, withRules: true)),
            .. Conduct(protocol, HandlingDefinitions.Planned(protocol)),
        ];

    /// <summary>The same where handling is told elsewhere: a rule of several analytes is told once.</summary>
    public static ImmutableArray<Definition> WithRulesTogether(StudyProtocol protocol) =>
        [
            .. protocol.Analytes.Select(analyte => AnalyteLine(analyte, withRules: false)),
            new Definition(
                "Today's rule",
                string.Join("; ", Told(protocol, StandardWindows)) + "."
            ),
            new Definition(
                "Manufacturer's limit",
                string.Join("; ", Told(protocol, ManufacturerLimits)) + "."
            ),
            .. Conduct(protocol, []),
        ];

    /// <summary>Texts of analytes, each once, with those that have it in front where not all do.</summary>
    private static IEnumerable<string> Told(StudyProtocol protocol, Func<Analyte, string> text) =>
        protocol
            .Analytes.GroupBy(text)
            .Select(same =>
                same.Count() == protocol.Analytes.Length
                    ? same.Key
                    : $"{string.Join(", ", same.Select(analyte => analyte.Id))} {same.Key}"
            );

    private static ImmutableArray<Definition> Conduct(
        StudyProtocol protocol,
        IEnumerable<Definition> handling
    ) =>
        [
            new Definition("Tubes", TradeWords.Of(protocol.TubePlan) + "."),
            new Definition("Eligibility", EligibilityLine(protocol.Eligibility)),
            .. handling,
            new Definition(
                "Replicates",
                $"{NumberText.Count(protocol.Replicates)} result a tube and time; the first valid result counts."
            ),
            new Definition(
                "Looks at the data",
                protocol.PlannedLooks == 1
                    ? "one, when the planned specimens are in; specimens added after it are not counted."
                    : "two, when the planned specimens are in and after an extension that is locked before its specimens are collected, each with the confidence of two."
            ),
            .. protocol.ReviewAfter is { } after
                ? new[]
                {
                    new Definition(
                        "Review",
                        $"of a window {DurationText.Format(after)} after it came into force, unless the decision states another day."
                    ),
                }
                : [],
            new Definition("Controls", Controls(protocol)),
            new Definition("Reruns", Reruns(protocol)),
            new Definition(
                "Repeat draws",
                protocol.RepeatDraws == RepeatDraws.OneCluster
                    ? "all draws of a person count; they share a cluster, and for single specimens the person counts once."
                    : "only the first draw of a person counts."
            ),
        ];

    /// <summary>What a reader needs beside the decision: what waited, whose specimens, how long and on how many days.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="collectionDays">On which days specimens were, or are to be, collected.</param>
    public static ImmutableArray<Definition> InBrief(
        StudyProtocol protocol,
        string collectionDays
    ) =>
        [
            .. protocol.Repeat is { } repeat
                ? [new Definition("Repeats", RepeatLine(repeat))]
                : ImmutableArray<Definition>.Empty,
            .. protocol.Storages.Select(storage => new Definition(
                "Storage " + storage.Id,
                StorageLine(storage)
            )),
            .. protocol.Groups.Select(group => new Definition(
                "Group " + group.Id,
                GroupLine(group, protocol.Instruments)
            )),
            new Definition(
                "Baseline",
                $"tested within {DurationText.Format(protocol.BaselineWithin)} of {OriginWords.Start(protocol.TimeOrigin)}."
            ),
            new Definition(
                "Time points",
                $"{string.Join(", ", protocol.TimePoints)} after {OriginWords.Start(protocol.TimeOrigin)}; at most {DurationText.Format(protocol.Tolerance.Early)} early and {DurationText.Format(protocol.Tolerance.Late)} late{string.Concat(protocol.Tolerance.Later.Select(step => $", from {DurationText.Format(step.From)} on {DurationText.Format(step.Late)}"))}."
            ),
            new Definition("Collection days", collectionDays),
        ];

    private static string RepeatLine(RepeatOf repeat) =>
        repeat.Tier == RepeatTier.Reduced
            ? $"{repeat.Report} (inputs {repeat.Digest}), reduced to its longest approved times, by its limits: {repeat.Reason}."
            : $"{repeat.Report} (inputs {repeat.Digest}), in full: {repeat.Reason}.";

    private static string Controls(StudyProtocol protocol) =>
        protocol.Controls == ControlRule.KeptElsewhere
            ? "Control results were not checked by this program: the protocol keeps them elsewhere."
            : "every run needs a control result within its range; what was tested in another run is not assessed.";

    private static string Reruns(StudyProtocol protocol) =>
        protocol.RerunReasons.IsEmpty
            ? "the protocol names no reason for testing again: the first valid result counts."
            : $"only for {string.Join(", ", protocol.RerunReasons)}; every rerun is documented.";

    private static string StandardWindows(Analyte analyte) =>
        $"{TodaysRule.Of(analyte.StandardWindow)} ({analyte.StandardWindow.Source})"
        + string.Concat(
            analyte.GroupWindows.Select(item =>
                $", {item.Group}{(item.Storage is null ? "" : $" in {item.Storage}")} {TodaysRule.Of(item.Rule)} ({item.Rule.Source})"
                + (
                    item.TimePoints.IsEmpty
                        ? ""
                        : $" tested there at {string.Join(", ", item.TimePoints)}"
                )
            )
        );

    private static string ManufacturerLimits(Analyte analyte) =>
        analyte.ManufacturerLimit is { } limit
            ? $"{DurationText.Format(limit.Time)} ({limit.Source})"
            : "not stated in the protocol";

    private static Definition AnalyteLine(Analyte analyte, bool withRules)
    {
        var parts = new[]
        {
            analyte.Method,
            analyte.IsQualitative
                ? "classes " + string.Join(", ", analyte.Categories)
                : "unit " + analyte.ShownUnit,
            analyte.Loinc is null ? null : "LOINC " + analyte.Loinc,
            withRules ? "today's window " + StandardWindows(analyte) : null,
            !withRules ? null
            : analyte.ManufacturerLimit is null ? "the protocol states no manufacturer's limit"
            : "manufacturer's limit " + ManufacturerLimits(analyte),
            analyte.BetweenRunCvPercent is { } cv
                ? $"between-run CV {NumberText.Plain(cv)} %"
                : null,
            analyte.MeasuringInterval is { } interval
                ? $"measuring interval {NumberText.Plain(interval.Lowest)} to {NumberText.Plain(interval.Highest)} {analyte.ShownUnit}"
                : null,
            analyte.DecisionLevels.IsEmpty
                ? null
                : "decision levels "
                    + string.Join(", ", analyte.DecisionLevels.Select(NumberText.Plain))
                    + " "
                    + analyte.ShownUnit,
        };
        return new Definition(
            analyte.Id,
            $"{analyte.Name}: {string.Join("; ", parts.OfType<string>())}."
        );
    }

    private static string StorageLine(Storage storage) =>
        TradeWords.Of(storage)
        + (
            storage.SpinToTest is { } time
                ? $"; spun at most {DurationText.Format(time)} before the test."
                : "."
        );

    private static string GroupLine(PatientGroup group, ImmutableArray<string> instruments) =>
        $"{group.Name}, {Counted.Of(group.Specimens, "specimen")} planned{On(instruments)}{(group.WhySoMany is { } why ? $" ({why})" : "")}"
        + (
            group.BaselineSpunWithin is { } time
                ? $"; baseline tube spun within {DurationText.Format(time)} of collection."
                : "."
        );

    private static string On(ImmutableArray<string> instruments) =>
        instruments.IsEmpty ? "" : $" on each of {ScopeWords.List(instruments)}";

    private static string EligibilityLine(Eligibility rules)
    {
        var parts = new[]
        {
            rules.FillPercentMinimum is { } fill
                ? $"fill at least {NumberText.Plain(fill)} % of nominal"
                : null,
            rules.HematocritPercentMaximum is { } hematocrit
                ? $"hematocrit at most {NumberText.Plain(hematocrit)} %"
                : null,
            rules.RejectClot ? "no clot in the baseline tube" : null,
        };
        return $"{string.Join("; ", parts.OfType<string>())} ({rules.Source}).";
    }
}
