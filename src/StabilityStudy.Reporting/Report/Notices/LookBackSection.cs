using StabilityStudy.Core.Notices;

namespace StabilityStudy.Reporting.Report.Notices;

/// <summary>Which reported results to look at again after a window was taken away.</summary>
internal static class LookBackSection
{
    public static Section Of(Notice notice) =>
        new(
            "What to look back at",
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "Every result that was reported under a withdrawn window: tested later after collection than what stays allows, and at most as late as the window allowed, from the first day in force to the day before this withdrawal; later ones too, where the bench went on by the window after that day. Judge for each, with the physician where it matters, whether it can stand.",
                    ParagraphStyle.Body
                ),
                new Table(
                    "Results to look back at",
                    [
                        new Column("Analyte", ColumnAlignment.Left, 1),
                        new Column("Patient group", ColumnAlignment.Left, 2),
                        new Column("Storage", ColumnAlignment.Left, 1.2),
                        new Column("Older than", ColumnAlignment.Right, 1.2),
                        new Column("Up to", ColumnAlignment.Right, 1.1),
                        new Column("Reported from", ColumnAlignment.Left, 1.5),
                        new Column("To", ColumnAlignment.Left, 1.5),
                        new Column("Instruments; lots", ColumnAlignment.Left, 2.2),
                    ],
                    [
                        .. notice
                            .Reports.SelectMany(report => report.Windows)
                            .Select(window => Row(window, notice.From)),
                    ],
                    "An age counts as the window does: from collection, or from thawing where the storage says so."
                ),
            ]
        );

    private static Row Row(NoticedWindow window, DateOnly? from) =>
        new([
            new TableCell(window.Analyte),
            new TableCell(window.GroupName),
            new TableCell(window.Storage),
            new TableCell(DurationText.FormatWindow(window.Kept)),
            new TableCell(NoticeWords.Time(window.Window)),
            .. window.InForceFrom < from
                ?
                [
                    new TableCell(NumberText.Day(window.InForceFrom)),
                    new TableCell(NumberText.Day(from.Value.AddDays(-1))),
                ]
                : new[] { new TableCell("never in force"), new TableCell("", Emphasis.Muted) },
            new TableCell($"{Codes(window.Instruments)}; {Codes(window.Lots)}"),
        ]);

    private static string Codes(ImmutableArray<string> codes) =>
        codes.IsEmpty ? "not recorded" : string.Join(", ", codes);
}
