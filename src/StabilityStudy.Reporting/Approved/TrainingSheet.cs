using StabilityStudy.Core.Register;
using static StabilityStudy.Reporting.Approved.ApprovedWords;

namespace StabilityStudy.Reporting.Approved;

/// <summary>The sheet on which staff show that they know the rules, and the answers for whoever trains them.</summary>
/// <param name="rules">The rules.</param>
internal sealed class TrainingSheet(BenchRules rules)
{
    private const int Signers = 8;
    private const string ToWriteIn = " ";

    private readonly ImmutableArray<BenchCase> _cases =
    [
        .. BenchCase
            .Of(rules)
            .Where(item =>
                item.Fact
                    is CaseFact.AllTrue
                        or CaseFact.PlasmaOff
                        or CaseFact.SpunEarly
                        or CaseFact.OtherLot
                        or CaseFact.NoTime
                        or CaseFact.UnfitTube
            )
            .GroupBy(item => (item.Question.Group, item.Fact, item.Answer.Verdict))
            // The last tube that is tested and the first that is not: where errors happen.
            .SelectMany(same =>
                same.Key.Verdict == BenchVerdict.Test ? same.TakeLast(1) : same.Take(1)
            ),
    ];

    /// <summary>The document.</summary>
    public ReportModel Model(PaperSize paper) =>
        new(
            $"{rules.Analyte}: training on how old a tube may be",
            "en-US",
            paper,
            new RunningHeader(
                $"{Invented(rules)}training sign-off · {Subject(rules)}",
                Valid(rules),
                Source(rules)
            ),
            [
                new Section(
                    "Read the bench card, then answer without it",
                    StartsOnNewPage: false,
                    [
                        new Paragraph(
                            $"Say for each tube: test, do not test, or ask the director. {Storage(rules)}; {Facts()}, unless said. Every answer must be right; a wrong one is talked over and asked again on another day.",
                            ParagraphStyle.Body
                        ),
                        Questions("Table 1. Tubes.", _ => ToWriteIn),
                    ]
                ),
                new Section("Sign-off", StartsOnNewPage: false, [SignOff(), Close()]),
                new Section(
                    "Answers, for the trainer",
                    StartsOnNewPage: true,
                    [
                        Questions(
                            "Table 3. The same tubes with the answers of the register.",
                            item =>
                                VerdictWords.Of(item.Answer.Verdict)
                                + (
                                    ReportedComment.Of(item.Answer) is { } text
                                        ? $": \"{text}\""
                                        : ""
                                )
                                + (
                                    item.Answer.Reason == BenchReason.ApprovedWindow
                                        ? string.Concat(
                                            item.Answer.From.SelectMany(row =>
                                                    row.Window.Conditions
                                                )
                                                .Distinct()
                                                .Select(text => $"; {text.TrimEnd('.')}")
                                        )
                                        : ""
                                )
                        ),
                    ]
                ),
            ]
        );

    private string Facts() =>
        string.Join(
            ", ",
            [
                .. rules.Scope.Instruments.Take(1),
                .. rules.Scope.Lots.Take(1).Select(lot => $"lot {lot}"),
                .. rules.Question(null, rules.SpinTakes).Spun is null
                    ? Array.Empty<string>()
                    : [$"spun {Time(rules.SpinTakes)} before the test"],
            ]
        );

    private Table Questions(string caption, Func<BenchCase, string> answer) =>
        new(
            caption,
            [
                new Column("Tube", ColumnAlignment.Right, 0.5),
                new Column("Patient", ColumnAlignment.Left, 2),
                new Column("Age at test", ColumnAlignment.Left, 1.3),
                new Column("Besides", ColumnAlignment.Left, 2.2),
                new Column("Answer", ColumnAlignment.Left, 3),
            ],
            [
                .. _cases.Select(
                    (item, i) =>
                        new Row([
                            new TableCell((i + 1).ToString(CultureInfo.InvariantCulture)),
                            new TableCell(Patient(item.Question.Group)),
                            new TableCell(CaseWords.Age(item)),
                            new TableCell(CaseWords.Besides(item)),
                            new TableCell(answer(item)),
                        ])
                ),
            ],
            null
        );

    /// <summary>Who the tube is from, in words: on this sheet "none" could be taken for a group that nobody stated.</summary>
    private string Patient(string? group) =>
        group is null ? "not stated"
        : rules.Rules.FirstOrDefault(rule => rule.Group == group) is { } known
            ? known.Name ?? "another anticoagulant"
        : group;

    private static Table SignOff() =>
        new(
            "Table 2. I know how old a tube may be, whom to ask, and what to report.",
            [
                new Column("Name", ColumnAlignment.Left, 3),
                new Column("Date", ColumnAlignment.Left, 1.4),
                new Column("Right answers", ColumnAlignment.Left, 1.4),
                new Column("Initials", ColumnAlignment.Left, 1.2),
                new Column("Trainer", ColumnAlignment.Left, 2),
            ],
            [
                .. Enumerable.Repeat(
                    // A row as high as a hand writes.
                    new Row([
                        new TableCell("\n"),
                        .. Enumerable.Repeat(new TableCell(ToWriteIn), 4),
                    ]),
                    Signers
                ),
            ],
            null
        );

    private Paragraph Close() =>
        new(
            $"{TradeWords.Capital(Valid(rules))}. {Ends(rules)} Train again when it does. From {Reports(rules)}. {Cautions}",
            ParagraphStyle.Small
        );
}
