using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Reporting.Tests.Model;

/// <summary>An invented study report with every kind of block, as a laboratory would see it.</summary>
internal static class DemoReport
{
    public static ReportModel Create(PaperSize paper = PaperSize.A4) =>
        new(
            "Stability of citrated whole blood at room temperature",
            "en-US",
            paper,
            new RunningHeader(
                "WB-RT-12 version 2 · digest 3F2A 91C0 77DE 05B1",
                "valid only with the signatures on page 1",
                "3F2A91C077DE05B1 · inputs and results are attached to this file"
            ),
            [FirstPage(), DemoCell.Section(), Method(), Pairs(), Groups()]
        );

    private static Section FirstPage() =>
        new(
            "Conclusion",
            false,
            [
                new Paragraph(
                    "May a citrated specimen for aPTT wait longer than the standard 4 h, in a closed tube of whole blood at 18 °C to 25 °C, before it is tested?",
                    ParagraphStyle.Lead
                ),
                new VerdictBlock([
                    new VerdictLine(
                        VerdictShape.Supported,
                        "Supported to 12 h",
                        "No anticoagulant",
                        "In 40 specimens the mean change after 12 h was +2.9 % (90 % interval +2.2 % to +3.6 %), within the allowable bias of 7.5 %; 38 of 40 specimens changed by no more than 15 %."
                    ),
                    new VerdictLine(
                        VerdictShape.NotSupported,
                        "Supported to 6 h only",
                        "Unfractionated heparin",
                        "After 8 h the mean change was −8.1 % (90 % interval −9.4 % to −6.8 %), which is not within the allowable bias of 7.5 %. The longest supported delay is 6 h."
                    ),
                ]),
                Conclusions(),
                new ChartRow([
                    DemoCharts.Drift("No anticoagulant", 0.24, 1),
                    DemoCharts.Drift("Unfractionated heparin", -1.02, 2),
                ]),
                new Heading("What could change this conclusion"),
                new KeyMessage(
                    "Criteria first?",
                    "The protocol was locked by this computer’s clock only."
                )
                {
                    IsPlain = true,
                },
                new KeyMessage(
                    "Attention:",
                    "two heparin specimens reached the laboratory later than planned; without them the 6 h conclusion stays."
                ),
                new DecisionTable(
                    new EvidenceHead("Waited", "Mean change", "Within limit", "Conclusion"),
                    [
                        new DecisionRow(
                            0,
                            "No anticoagulant",
                            VerdictShape.ShorterThanToday,
                            "Supported to 12 h, shorter than today, with 1 reservation",
                            "Today 24 h.",
                            [
                                new EvidenceLine(
                                    "12 h",
                                    "+1.2 (+0.8 to +1.6) %",
                                    "40 of 40 (≥ 92.8 %)",
                                    VerdictShape.Supported,
                                    "supported",
                                    IsMuted: false
                                ),
                            ],
                            ["Left out: 12 h 1 of 41."],
                            [
                                new Reservation(
                                    "One specimen decides.",
                                    "If one more had been outside, 12 h would be inconclusive.",
                                    Contradicts: true
                                ),
                            ],
                            "a window",
                            "No anticoagulant: supported to 12 h."
                        )
                        {
                            Code = "aPTT none: 12 h",
                            DecideNow = "an interim rule.",
                        },
                    ],
                    "Change: from the baseline test."
                ),
            ]
        )
        {
            Foot =
            [
                new KeepTogether([
                    new SignatureBoxes([
                        new SignatureBox("Author", "ran this study", "NOT SIGNED"),
                        new SignatureBox("Approver", "approves its conclusion", "NOT SIGNED"),
                    ]),
                ]),
            ],
        };

    private static Table Conclusions()
    {
        Row Line(string time, string n, string bias, string limit, string share, VerdictShape s) =>
            new([
                new TableCell(time),
                new TableCell(n),
                new TableCell(bias),
                new TableCell(limit),
                new TableCell(share),
                new TableCell(Word(s), Emphasis.Strong, s),
            ]);
        return new Table(
            "Table 1. Conclusions by patient group and delay",
            [
                new Column("Delay", ColumnAlignment.Left, 1),
                new Column("Specimens", ColumnAlignment.DecimalPoint, 1),
                new Column("Mean change, % (90 % interval)", ColumnAlignment.DecimalPoint, 2.4),
                new Column("Allowable bias, %", ColumnAlignment.DecimalPoint, 1.2),
                new Column("Within ±15 %", ColumnAlignment.Center, 1.2),
                new Column("Conclusion", ColumnAlignment.Left, 1.8),
            ],
            [
                new Row([new TableCell("No anticoagulant")], RowKind.GroupHeading),
                Line("6 h", "40", "+1.4 (+0.9 to +1.9)", "7.5", "40 of 40", VerdictShape.Supported),
                Line("8 h", "40", "+1.9 (+1.3 to +2.5)", "7.5", "39 of 40", VerdictShape.Supported),
                Line(
                    "12 h",
                    "40",
                    "+2.9 (+2.2 to +3.6)",
                    "7.5",
                    "38 of 40",
                    VerdictShape.Supported
                ),
                new Row([new TableCell("Unfractionated heparin")], RowKind.GroupHeading),
                Line("6 h", "38", "−5.2 (−6.3 to −4.1)", "7.5", "36 of 38", VerdictShape.Supported),
                Line(
                    "8 h",
                    "38",
                    "−8.1 (−9.4 to −6.8)",
                    "7.5",
                    "30 of 38",
                    VerdictShape.NotSupported
                ),
                Line(
                    "12 h",
                    "38",
                    "−12.2 (−13.9 to −10.5)",
                    "7.5",
                    "24 of 38",
                    VerdictShape.NotReached
                ),
            ],
            "Each conclusion presumes that every shorter delay of its group is supported."
        );
    }

    private static string Word(VerdictShape shape) =>
        shape switch
        {
            VerdictShape.Supported => "supported",
            VerdictShape.NotSupported => "not supported",
            VerdictShape.NotReached => "not reached",
            VerdictShape.NotAssessed => "not assessed",
            _ => "inconclusive",
        };

    private static Section Method() =>
        new(
            "How the study was run",
            false,
            [
                new Paragraph(
                    "Each specimen was drawn into five tubes. One was spun and tested within one hour of collection; the others stood closed at room temperature and were spun and tested at their time point. The actual delay, not the planned one, enters every estimate.",
                    ParagraphStyle.Body
                ),
                new Bullets([
                    "Eligible: fill at least 90 %, hematocrit at most 55 %, no clot.",
                    "Excluded pairs stay in the data with reason, person and date; none was deleted.",
                    "Results beyond the measuring interval (20 s to 180 s) count as outside, never as a number.",
                ]),
                new Heading("Words"),
                new DefinitionList([
                    new Definition(
                        "Supported",
                        "Every criterion of the protocol is met at this delay and at every shorter one."
                    ),
                    new Definition(
                        "Inconclusive",
                        "The data decide neither way, or an assumption does not hold."
                    ),
                    new Definition(
                        "Allowable bias",
                        "Limit for the mean change, fixed before the first result."
                    ),
                ]),
                new Heading("How to verify this file"),
                new MonospaceLines([
                    "stability-study verify signed/WB-RT-12-3F2A91C0.pdf --trust laboratory.pem",
                    "SHA-256 3f2a91c077de05b19d8ab6b3f1c24de6a1a5c8f2e1d7b9406c55e0d1f8a3b2c4",
                ]),
                new Paragraph(
                    "Shapes used in this report: each conclusion has a shape of its own and always stands with its word.",
                    ParagraphStyle.Small
                ),
                new Table(
                    "Table 3. Shapes",
                    [
                        new Column("Conclusion", ColumnAlignment.Left, 1),
                        new Column("Meaning", ColumnAlignment.Left, 3),
                    ],
                    [
                        .. Enum.GetValues<VerdictShape>()
                            .Select(s => new Row([
                                new TableCell(Word(s), Emphasis.Strong, s),
                                new TableCell(
                                    "Printed where the conclusion of a cell is " + Word(s) + "."
                                ),
                            ])),
                    ],
                    null
                ),
            ]
        );

    private static Section Pairs()
    {
        var rows = Enumerable
            .Range(1, 120)
            .Select(i =>
            {
                var baseline = 28 + (60 * DemoCharts.Noise(i, 7));
                var delayed = baseline * (1.02 + (0.06 * (DemoCharts.Noise(i, 8) - 0.5)));
                return new Row([
                    new TableCell(Number("S{0:000}", i)),
                    new TableCell(i % 3 == 0 ? "Unfractionated heparin" : "No anticoagulant"),
                    new TableCell(Number("{0:0.0}", baseline)),
                    new TableCell(Number("{0:0.0}", delayed)),
                    new TableCell(Signed(delayed - baseline)),
                    new TableCell(Signed(100 * ((delayed / baseline) - 1))),
                    i % 17 == 0
                        ? new TableCell("excluded: clot seen after spinning", Emphasis.Muted)
                        : new TableCell("analyzed"),
                ]);
            });
        return new Section(
            "Every pair",
            true,
            [
                new Table(
                    "Table 4. aPTT at baseline and after 12 h",
                    [
                        new Column("Specimen", ColumnAlignment.Left, 1),
                        new Column("Patient group", ColumnAlignment.Left, 1.8),
                        new Column("Baseline, s", ColumnAlignment.DecimalPoint, 1),
                        new Column("After 12 h, s", ColumnAlignment.DecimalPoint, 1),
                        new Column("Change, s", ColumnAlignment.DecimalPoint, 1),
                        new Column("Change, %", ColumnAlignment.DecimalPoint, 1),
                        new Column("Disposition", ColumnAlignment.Left, 1.8),
                    ],
                    [.. rows],
                    "Actual delays are in the attached results.csv."
                ),
            ]
        );
    }

    private static Section Groups() =>
        new(
            "Specimens and groups",
            true,
            [
                new FlowFigure(
                    ["80 planned", "80 received"],
                    [
                        new FlowBranch("6 h: 78", "2 not eligible"),
                        new FlowBranch("12 h: 77", "3 not eligible"),
                    ],
                    "Of 80 specimens 78 count at 6 h and 77 at 12 h."
                ),
                new PageBreak(),
                new Paragraph("Both groups side by side.", ParagraphStyle.Body),
                new Floating(DemoCharts.Groups(), 40),
            ]
        );

    private static string Number(string format, double value) =>
        string.Format(CultureInfo.InvariantCulture, format, value);

    private static string Signed(double value) =>
        (value < 0 ? "−" : "+") + Number("{0:0.0}", Math.Abs(value));
}
