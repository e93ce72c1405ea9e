using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Bench;

/// <summary>Draws the pages for the bench.</summary>
public static class BenchDrawing
{
    /// <summary>Draws pages. Equal contents give equal pages.</summary>
    /// <param name="study">The study.</param>
    /// <param name="parts">The kinds of pages, in order; at least one.</param>
    public static DrawnReport Draw(BenchStudy study, ImmutableArray<BenchPart> parts)
    {
        ArgumentNullException.ThrowIfNull(study);
        var sheets = parts.Select(part => Sheets(study, part)).ToImmutableArray();
        return PdfDrawing.DrawPages(
            Title(study),
            SheetPage.Upright(study.Paper).Frame,
            canvas =>
            {
                foreach (var part in sheets)
                {
                    foreach (var (i, draw) in part.Index())
                    {
                        draw(
                            canvas,
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"sheet {i + 1} of {part.Length}"
                            )
                        );
                    }
                }
            }
        );
    }

    /// <summary>Why labels cannot be printed, in words; null where they can.</summary>
    public static string? LabelFault(BenchStudy study, BenchPart.Labels labels)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(labels);
        return LabelPages.Fault(study, labels);
    }

    /// <summary>Title of the document.</summary>
    public static string Title(BenchStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return $"Pages for the bench: study {study.Protocol.Code}, version {study.Protocol.Version}";
    }

    private static ImmutableArray<Action<PageCanvas, string>> Sheets(
        BenchStudy study,
        BenchPart part
    ) =>
        part switch
        {
            BenchPart.Draw draw => new DrawSheet(study, draw).Sheets(),
            BenchPart.Frozen frozen => new FrozenSheet(study, frozen).Sheets(),
            BenchPart.DueTubes due => new RunListSheet(study, due).Sheets(),
            BenchPart.Temperature => new TemperatureSheet(study).Sheets(),
            BenchPart.Labels labels => new LabelPages(study, labels).Sheets(),
            _ => throw new ArgumentOutOfRangeException(nameof(part)),
        };
}
