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
                new DefinitionList(ProtocolDefinitions.Of(protocol, CollectionDays(analysis))),
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
