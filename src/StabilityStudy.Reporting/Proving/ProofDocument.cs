namespace StabilityStudy.Reporting.Proving;

/// <summary>A proof as a document for the file in which a laboratory keeps the validation of its software.</summary>
public static class ProofDocument
{
    /// <summary>The document.</summary>
    /// <param name="proof">What was found.</param>
    /// <param name="run">Where, when and by whom.</param>
    /// <param name="paper">Paper size.</param>
    public static ReportModel Build(ProgramProof proof, ProofRun run, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(proof);
        ArgumentNullException.ThrowIfNull(run);
        var number = 0;
        return new ReportModel(
            "Proof of the program on this computer",
            "en-US",
            paper,
            new RunningHeader(
                "proof of the program",
                "run " + run.At.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture),
                run.Program
            ),
            [
                Outcome(proof, run),
                .. proof.Parts.Select(part => new Section(
                    part.Title,
                    StartsOnNewPage: part == proof.Parts[0],
                    [
                        new Paragraph(part.Explanation, ParagraphStyle.Body),
                        .. part.Cases.Select(item => Figures(item, ++number)),
                    ]
                )),
            ]
        );
    }

    private static Section Outcome(ProgramProof proof, ProofRun run) =>
        new(
            "Outcome",
            StartsOnNewPage: false,
            [
                new Paragraph(ProofWords.Outcome(proof), ParagraphStyle.Strong),
                .. proof.Agrees ? ImmutableArray<Block>.Empty : [Differing(proof)],
                new DefinitionList([
                    .. run.Facts.Select(fact => new Definition(fact.Name, fact.Value)),
                ]),
                Counts(proof),
            ]
        )
        {
            Foot =
            [
                new Paragraph(
                    "This result shows that the program, as it is installed here, computes what others have published and what its earlier releases have signed. It does not replace the laboratory's own verification for the use that it intends; what that takes, local rules and the accreditor say. Run it again after every change of the program, the operating system or the computer. For qualified laboratory staff. Not a medical device.",
                    ParagraphStyle.Small
                ),
                SignOff(),
            ],
        };

    private static Table Differing(ProgramProof proof) =>
        new(
            "What does not agree",
            [new Column("Case", ColumnAlignment.Left, 2.4), .. Columns()],
            [
                .. from part in proof.Parts
                from item in part.Cases
                from figure in item.Figures
                where figure.Agreement == Agreement.Differs
                select new Row([new TableCell(item.Title), .. Cells(figure)]),
            ],
            null
        );

    private static Table Counts(ProgramProof proof) =>
        new(
            "Cases",
            [
                new Column("Case", ColumnAlignment.Left, 6),
                new Column("Figures that agree", ColumnAlignment.Left, 1.6),
            ],
            [
                .. proof.Parts.SelectMany(part =>
                    part.Cases.Select(item => new Row([
                            new TableCell(item.Title),
                            new TableCell(ProofWords.Count(item.Figures)),
                        ]))
                        .Prepend(new Row([new TableCell(part.Title)], RowKind.GroupHeading))
                ),
            ],
            null
        );

    private static Table Figures(ProofCase item, int number) =>
        new(
            string.Create(CultureInfo.InvariantCulture, $"Table {number}. {item.Title}"),
            Columns(),
            [.. item.Figures.Select(figure => new Row(Cells(figure)))],
            $"Source: {item.Source} Tolerance: {item.Reason}"
        );

    private static ImmutableArray<Column> Columns() =>
        [
            new Column("Figure", ColumnAlignment.Left, 3.2),
            new Column("Expected", ColumnAlignment.Left, 2),
            new Column("Found", ColumnAlignment.Left, 2.1),
            new Column("Tolerance", ColumnAlignment.Left, 1.5),
            new Column("Outcome", ColumnAlignment.Left, 1),
        ];

    private static ImmutableArray<TableCell> Cells(ProofFigure figure) =>
        [
            new TableCell(figure.Name),
            new TableCell(Printed(figure.Expected)),
            new TableCell(Printed(figure.Found)),
            new TableCell(figure.Tolerance),
            new TableCell(
                ProofWords.Of(figure.Agreement),
                figure.Agreement switch
                {
                    Agreement.Differs => Emphasis.Strong,
                    Agreement.NotChecked => Emphasis.Muted,
                    Agreement.Agrees => Emphasis.None,
                }
            ),
        ];

    /// <summary>With a true minus sign.</summary>
    private static string Printed(string figure) =>
        figure.StartsWith('-') ? '\u2212' + figure[1..] : figure;

    private static Table SignOff() =>
        new(
            "To be signed by hand",
            [
                new Column("", ColumnAlignment.Left, 1.6),
                new Column("Name", ColumnAlignment.Left, 2.6),
                new Column("Date", ColumnAlignment.Left, 1.4),
                new Column("Signature", ColumnAlignment.Left, 3),
            ],
            [ToSign("Run by"), ToSign("Reviewed by")],
            null
        );

    /// <summary>A row as high as a hand writes.</summary>
    private static Row ToSign(string who) =>
        new([new TableCell(who + "\n"), .. Enumerable.Repeat(new TableCell(" "), 3)]);
}
