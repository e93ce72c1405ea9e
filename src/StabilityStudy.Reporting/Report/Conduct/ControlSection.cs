namespace StabilityStudy.Reporting.Report.Conduct;

/// <summary>What the controls say about the runs in which the pairs were tested, and what their results were.</summary>
internal static class ControlSection
{
    public const string Title = "Controls";

    public static Section Of(StudyAnalysis analysis)
    {
        ImmutableArray<Block> tables =
        [
            .. new[] { ControlTable.Of(analysis), ControlResultTable.Of(analysis) }
                .OfType<Table>()
                .Select(table => new KeepTogether([table])),
        ];
        return new Section(
            Title,
            StartsOnNewPage: false,
            tables.IsEmpty
                ?
                [
                    new Paragraph(
                        analysis.Protocol.Controls == ControlRule.KeptElsewhere
                            ? "The protocol keeps its control results elsewhere: they were not checked here, and the laboratory's own record has them."
                            : "No control result is in the data.",
                        ParagraphStyle.Body
                    ),
                ]
                : tables
        );
    }
}
