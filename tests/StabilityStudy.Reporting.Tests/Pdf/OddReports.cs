using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Tests.Model;

namespace StabilityStudy.Reporting.Tests.Pdf;

/// <summary>Reports of shapes that a careless layout breaks on.</summary>
internal static class OddReports
{
    private const string LongName =
        "Activated partial thromboplastin time with a lupus-insensitive reagent";

    private static readonly string Prose = string.Concat(
        Enumerable.Repeat("The actual delay, not the planned one, enters every estimate. ", 60)
    );

    public static ImmutableSortedDictionary<string, ReportModel> All { get; } =
        new Dictionary<string, ReportModel>(StringComparer.Ordinal)
        {
            ["demo"] = DemoReport.Create(),
            ["no section"] = Report(),
            ["empty section"] = Report(new Section("Nothing here", false, []), Section()),
            ["200 rows"] = Report(Section(Numbers(200, 5))),
            ["one row"] = Report(Section(Numbers(1, 3))),
            ["no rows"] = Report(Section(Numbers(0, 4))),
            ["twelve columns"] = Report(Section(Numbers(70, 12))),
            ["long names"] = Report(
                new Section(
                    LongName + ", " + LongName,
                    false,
                    [
                        new Heading(LongName + " " + LongName),
                        new VerdictBlock([
                            new VerdictLine(VerdictShape.Supported, LongName, LongName, LongName),
                        ]),
                        LongNames(),
                    ]
                )
            ),
            ["foreign characters"] = Report(
                Section(
                    new Paragraph(
                        "検体 12 🩸 \u202Eabc\u0007 \uD800 Größe Ｗ ≤ ≥ ✓ ✗ → −5 µg",
                        ParagraphStyle.Body
                    ),
                    new Paragraph("Cafe\u0301, İstanbul, Łódź, 2⁻³, x̄", ParagraphStyle.Body),
                    new MonospaceLines(["検体\t12 → ≤"])
                )
            ),
            ["long word"] = Report(
                Section(
                    new Paragraph(new string('x', 900), ParagraphStyle.Body),
                    new Bullets([new string('y', 300)]),
                    new MonospaceLines([new string('z', 400), "a  b   c"])
                )
            ),
            ["long paragraphs"] = Report(
                Section(
                    new Paragraph(Prose, ParagraphStyle.Lead),
                    new Paragraph(Prose + "\n" + Prose, ParagraphStyle.Body),
                    new Bullets([Prose, "short", Prose]),
                    new DefinitionList([new Definition(LongName, Prose)])
                )
            ),
            ["row higher than a page"] = Report(Section(TallRow())),
            ["group higher than a page"] = Report(
                Section(
                    new KeepTogether([
                        new Heading("Group"),
                        new Paragraph(Prose, ParagraphStyle.Body),
                        Numbers(80, 3),
                    ])
                )
            ),
            ["groups"] = Report(
                Section([
                    .. Enumerable
                        .Range(0, 9)
                        .Select(i => new KeepTogether([
                            new Heading("Group " + (char)('A' + i)),
                            Numbers(4 + i, 3),
                        ])),
                ])
            ),
            ["only headings"] = Report(
                Section([
                    .. Enumerable
                        .Range(0, 70)
                        .Select(i => new Heading("Heading " + (char)('A' + (i % 26)))),
                ])
            ),
            ["many sections"] = Report([
                .. Enumerable
                    .Range(0, 60)
                    .Select(i => new Section(
                        "Section " + (char)('A' + (i % 26)),
                        i % 9 == 0,
                        [new Paragraph("One line.", ParagraphStyle.Body)]
                    )),
            ]),
            ["five signatures"] = Report(
                Section(
                    new SignatureBoxes([
                        .. Enumerable
                            .Range(0, 5)
                            .Select(i => new SignatureBox(
                                i == 1 ? LongName : "Role " + (char)('A' + i),
                                i == 2 ? LongName : "meaning",
                                "NOT SIGNED"
                            )),
                    ])
                )
            ),
            ["page breaks"] = Report(
                Section(
                    new PageBreak(),
                    new Paragraph("second page", ParagraphStyle.Small),
                    new PageBreak(),
                    new PageBreak(),
                    new Heading("third page"),
                    new PageBreak()
                )
            ),
            ["empty texts"] = Report(
                Section(
                    new Paragraph("", ParagraphStyle.Body),
                    new Heading(""),
                    new VerdictBlock([new VerdictLine(VerdictShape.Inconclusive, "", "", "")]),
                    new KeyMessage("", ""),
                    new Bullets([]),
                    new DefinitionList([new Definition("", "")]),
                    new MonospaceLines([]),
                    new Table(
                        "",
                        [new Column("", ColumnAlignment.DecimalPoint, 1)],
                        [new Row([new TableCell("")])],
                        ""
                    ),
                    new SignatureBoxes([])
                )
            ),
            ["charts"] = Report(Section([.. OddCharts.All])),
            ["all shapes"] = Report(
                Section(
                    new VerdictBlock([
                        .. Enum.GetValues<VerdictShape>()
                            .Select(s => new VerdictLine(s, "Word", "subject", Prose)),
                    ])
                )
            ),
        }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    public static TheoryData<string> Names => [.. All.Keys];

    public static ReportModel Report(params ImmutableArray<Section> sections) =>
        new(
            "Title of the report",
            "en-US",
            PaperSize.A4,
            new RunningHeader("left", "right", "fingerprint"),
            sections
        );

    public static Section Section(params ImmutableArray<Block> blocks) =>
        new("Section of the report", false, blocks);

    public static Table Numbers(int rows, int columns) =>
        new(
            "Table of numbers",
            [
                .. Enumerable
                    .Range(0, columns)
                    .Select(c => new Column(
                        c == 0 ? "Specimen" : "Value " + (char)('A' + c),
                        c == 0 ? ColumnAlignment.Left : (ColumnAlignment)(c % 4),
                        1
                    )),
            ],
            [
                .. Enumerable
                    .Range(0, rows)
                    .Select(r => new Row([
                        .. Enumerable
                            .Range(0, columns)
                            .Select(c => new TableCell(
                                FormattableString.Invariant($"{r}.{c}"),
                                (Emphasis)((r + c) % 3)
                            )),
                    ])),
            ],
            "Note of the table."
        );

    private static Table LongNames() =>
        new(
            LongName + ": " + LongName,
            [
                new Column(LongName, ColumnAlignment.Left, 1),
                new Column("n", ColumnAlignment.DecimalPoint, 1),
                new Column(new string('W', 60), ColumnAlignment.Center, 1),
            ],
            [
                new Row([new TableCell(LongName + LongName)], RowKind.GroupHeading),
                new Row([
                    new TableCell(LongName),
                    new TableCell("not computable"),
                    new TableCell("−12.5"),
                ]),
                new Row([
                    new TableCell("x"),
                    new TableCell("12.25"),
                    new TableCell(new string('v', 90), Emphasis.Strong, VerdictShape.NotReached),
                ]),
            ],
            LongName
        );

    private static Table TallRow() =>
        new(
            "Table with a row higher than a page",
            [
                new Column("Short", ColumnAlignment.Left, 1),
                new Column("Long", ColumnAlignment.Left, 1),
            ],
            [
                new Row([new TableCell("before"), new TableCell("before")]),
                new Row([
                    new TableCell("tall"),
                    new TableCell(Prose + Prose + Prose, Emphasis.None, VerdictShape.NotAssessed),
                ]),
                new Row([new TableCell("after"), new TableCell("after")]),
            ],
            null
        );
}
