using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Report.Decision;

namespace StabilityStudy.Reporting.Report.Conduct;

/// <summary>How the study was run: specimens, storage, times, instruments, people, deviations.</summary>
internal static class ConductSection
{
    public const string Title = "How the study was run";

    public static Section Of(StudyAnalysis analysis)
    {
        var protocol = analysis.Protocol;
        return new Section(
            Title,
            // Page 1 is read, signed and copied alone.
            StartsOnNewPage: FirstPage.InFull(analysis) is null,
            [
                new DefinitionList([
                    .. protocol.Analytes.Select(AnalyteLine),
                    .. protocol.Storages.Select(storage => new Definition(
                        "Storage " + storage.Id,
                        StorageLine(storage)
                    )),
                    .. protocol.Groups.Select(group => new Definition(
                        "Group " + group.Id,
                        GroupLine(group, protocol.Instruments)
                    )),
                    new Definition("Tubes", TradeWords.Of(protocol.TubePlan) + "."),
                    new Definition(
                        "Baseline",
                        $"tested within {DurationText.Format(protocol.BaselineWithin)} of collection."
                    ),
                    new Definition(
                        "Time points",
                        $"{string.Join(", ", protocol.TimePoints)} after collection; at most {DurationText.Format(protocol.Tolerance.Early)} early and {DurationText.Format(protocol.Tolerance.Late)} late."
                    ),
                    new Definition("Eligibility", EligibilityLine(protocol.Eligibility)),
                    new Definition(
                        "Replicates",
                        $"{NumberText.Count(protocol.Replicates)} result a tube and time; the first valid result counts."
                    ),
                    new Definition("Collection days", CollectionDays(analysis)),
                    new Definition(
                        "Looks at the data",
                        protocol.PlannedLooks == 1
                            ? "one, when the planned specimens are in; specimens added after it are not counted."
                            : "two, when the planned specimens are in and after an extension that is locked before its specimens are collected, each with the confidence of two."
                    ),
                    new Definition("Controls", Controls(protocol)),
                    new Definition("Reruns", Reruns(protocol)),
                    new Definition(
                        "Repeat draws",
                        protocol.RepeatDraws == RepeatDraws.OneCluster
                            ? "all draws of a person count; they share a cluster, and for single specimens the person counts once."
                            : "only the first draw of a person counts."
                    ),
                ]),
                new Heading("Instruments, lots and clocks"),
                new DefinitionList([
                    .. analysis.Facts.Instruments.Select(item => new Definition(
                        "Instrument " + item.Id,
                        item.Name + (item.Site is { } site ? $", site {site}" : "")
                    )),
                    .. analysis.Facts.Lots.Select(item => new Definition(
                        "Lot " + item.Id,
                        $"{item.Kind} for {item.Analyte}"
                            + (
                                item.Expires is { } day
                                    ? ", expires "
                                        + day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
                                    : ""
                            )
                    )),
                    .. analysis.Facts.Clocks.Select(item => new Definition(
                        "Clock of " + item.Column,
                        item.Description
                    )),
                ]),
                new Heading("People"),
                new DefinitionList([
                    .. analysis.Facts.People.Select(person => new Definition(
                        person.Code,
                        $"{person.Name}, {person.Role}"
                    )),
                ]),
                .. Amendments(analysis),
                new Heading("Deviations from the protocol"),
                Deviations(analysis),
                Exclusions(analysis),
            ]
        );
    }

    private static IEnumerable<Block> Amendments(StudyAnalysis analysis)
    {
        var amendments = analysis.Lock.Locks.Where(item => item.Number > 1).ToImmutableArray();
        if (amendments.IsEmpty)
        {
            yield break;
        }

        yield return new Heading("Amendments of the protocol");
        foreach (var amendment in amendments)
        {
            yield return new Paragraph(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Lock {amendment.Number}, {amendment.At:yyyy-MM-dd HH:mm zzz} by {amendment.By}: {amendment.Reason} {AmendmentWords.Headline(amendment)}"
                ),
                ParagraphStyle.Body
            );
            if (AmendmentWords.Lines(amendment).ToImmutableArray() is { IsEmpty: false } lines)
            {
                yield return new Bullets(lines);
            }
        }
    }

    private static string Controls(StudyProtocol protocol) =>
        protocol.Controls == ControlRule.KeptElsewhere
            ? "Control results were not checked by this program: the protocol keeps them elsewhere."
            : "every run needs a control result within its range; what was tested in another run is not assessed. See \"Controls\".";

    private static string Reruns(StudyProtocol protocol) =>
        protocol.RerunReasons.IsEmpty
            ? "the protocol names no reason for testing again: the first valid result counts."
            : $"only for {string.Join(", ", protocol.RerunReasons)}; every rerun is documented.";

    private static Definition AnalyteLine(Analyte analyte)
    {
        var parts = new[]
        {
            analyte.Method,
            analyte.IsQualitative
                ? "classes " + string.Join(", ", analyte.Categories)
                : "unit " + analyte.ShownUnit,
            analyte.Loinc is null ? null : "LOINC " + analyte.Loinc,
            $"today's window {DurationText.Format(analyte.StandardWindow.Time)} ({analyte.StandardWindow.Source})"
                + string.Concat(
                    analyte.GroupWindows.Select(item =>
                        $", {item.Group} {DurationText.Format(item.Rule.Time)} ({item.Rule.Source})"
                        + (
                            item.TimePoints.IsEmpty
                                ? ""
                                : $" tested there at {string.Join(", ", item.TimePoints)}"
                        )
                    )
                ),
            analyte.ManufacturerLimit is { } limit
                ? $"manufacturer's limit {DurationText.Format(limit.Time)} ({limit.Source})"
                : "the protocol states no manufacturer's limit",
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
        $"{group.Name}, {Counted.Of(group.Specimens, "specimen")} planned{On(instruments)}"
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

    private static string CollectionDays(StudyAnalysis analysis)
    {
        var days = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Pairs)
            .Select(pair => pair.CollectionDay)
            .Distinct()
            .Order()
            .ToImmutableArray();
        return days.IsEmpty
            ? "none."
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{days.Length}, from {days[0]:yyyy-MM-dd} to {days[^1]:yyyy-MM-dd}; a mean needs at least {analysis.Protocol.MinimumDays}."
            );
    }

    private static Block Deviations(StudyAnalysis analysis) =>
        analysis.Facts.Deviations.IsEmpty
            ? new Paragraph("None recorded.", ParagraphStyle.Body)
            : new Bullets([
                .. analysis.Facts.Deviations.Select(item =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{item.Text} ({item.By}, {item.On:yyyy-MM-dd})"
                    )
                ),
            ]);

    private static Block Exclusions(StudyAnalysis analysis) =>
        analysis.Facts.Exclusions.IsEmpty
            ? new Paragraph("No pair was left out by decision of a person.", ParagraphStyle.Body)
            : new Table(
                "Pairs left out by decision of a person",
                [
                    new Column("Specimen", ColumnAlignment.Left, 1),
                    new Column("Analyte", ColumnAlignment.Left, 1),
                    new Column("Time", ColumnAlignment.Left, 0.8),
                    new Column("Reason", ColumnAlignment.Left, 5),
                    new Column("By", ColumnAlignment.Left, 0.8),
                    new Column("On", ColumnAlignment.Left, 1.2),
                ],
                [
                    .. analysis.Facts.Exclusions.Select(item => new Row([
                        new TableCell(item.Specimen),
                        new TableCell(item.Analyte ?? "all"),
                        new TableCell(item.TimePoint?.ToString() ?? "all"),
                        new TableCell(item.Reason),
                        new TableCell(item.By),
                        new TableCell(
                            item.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
                                + (
                                    item.Time is { } time
                                        ? time.ToString(" HH:mm", CultureInfo.InvariantCulture)
                                        : ""
                                )
                        ),
                    ])),
                ],
                null
            );
}
