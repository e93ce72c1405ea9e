using StabilityStudy.Core.Register;
using static StabilityStudy.Reporting.Approved.ApprovedWords;

namespace StabilityStudy.Reporting.Approved;

/// <summary>The table by which a laboratory information system is set up, and the cases with which it is tried.</summary>
/// <param name="rules">The rules.</param>
internal sealed class RuleTable(BenchRules rules)
{
    private readonly ImmutableArray<SystemRule> _lines = SystemRule.Of(rules);
    private readonly ImmutableArray<BenchCase> _cases = BenchCase.Of(rules);

    private RuleComments Comments => RuleComments.Of(rules, _lines, _cases);

    /// <summary>The document.</summary>
    public ReportModel Model(PaperSize paper) =>
        new(
            $"{rules.Analyte}: when may the system let a tube be tested?",
            "en-US",
            paper,
            new RunningHeader(
                Invented(rules) + "rule table for the laboratory information system",
                rules.Until is { } until
                    ? $"valid {Day(rules.From)} to {Day(until)}"
                    : Valid(rules),
                Source(rules)
            ),
            [
                new Section(
                    "First rule that applies, from the top, answers. A missing fact never lengthens a window.",
                    StartsOnNewPage: false,
                    [
                        new Paragraph(
                            $"Age = test start − {Origin(rules)}, both with offset, rounded up to the whole minute. Judge when the test starts, not at receipt; a rerun is judged by its own time. Codes of the register: {Codes(rules.Rules.Where(rule => !rule.IsOfOthers).Select(rule => rule.Group).OfType<string>().Order(StringComparer.Ordinal))}; any other word and an empty field are the unknown group. {Storage(rules)}.",
                            ParagraphStyle.Small
                        ),
                        Lines(),
                        Cases(),
                        new Paragraph(
                            string.Join(
                                " ",
                                Comments.Texts.Select(text =>
                                    $"{Comments.Number(text)} {text.TrimEnd('.')}."
                                )
                            ),
                            ParagraphStyle.Body
                        ),
                        new Paragraph(
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"Entered by _____________________ · {_cases.Length} cases run on _______________ · all as shown ☐ · approved _____________________"
                            ),
                            ParagraphStyle.Body
                        ),
                        new Paragraph(
                            $"From {Reports(rules)}. {ApprovedBy(rules)} {Modified(rules)}{Ends(rules)} {Cautions}",
                            ParagraphStyle.Small
                        ),
                    ]
                ),
            ]
        );

    private Table Lines() =>
        new(
            "Table 1. Rules. Answers: test · do not test · ask the director.",
            [
                new Column("Rule", ColumnAlignment.Right, 0.45),
                new Column("Applies when", ColumnAlignment.Left, 5),
                new Column("Answer", ColumnAlignment.Left, 1.5),
                new Column("Comment or hold", ColumnAlignment.Left, 2.2),
            ],
            [
                .. _lines
                    .GroupBy(line => (line.Step, line.Verdict, line.InScope, IsAlone(line)))
                    .Select(alike => Line([.. alike])),
            ],
            null
        );

    /// <summary>Windows are a row each; the others of a step stand in one.</summary>
    private int IsAlone(SystemRule line) => line.InScope ? _lines.IndexOf(line) : -1;

    private Row Line(ImmutableArray<SystemRule> alike) =>
        new([
            new TableCell(Number(alike[0].Step)),
            new TableCell(Applies(alike)),
            new TableCell(VerdictWords.Of(alike[0].Verdict), Emphasis.Strong),
            new TableCell(Reported(alike)),
        ]);

    private string Applies(ImmutableArray<SystemRule> alike) =>
        alike[0].Step switch
        {
            SystemStep.TimeNotKnown =>
                $"time of {Origin(rules)} missing, or exists twice (clock change), or later than the test",
            SystemStep.TubeUnfit => "tube " + Unfit(rules),
            SystemStep.TodaysRule =>
                $"today's rule: {string.Join(". ", alike.GroupBy(Who).OrderByDescending(same => same.Min(line => line.UpTo)).Select(same => $"{same.Key}: age up to {string.Join(", or up to ", same.OrderBy(line => line.UpTo).Select(line => Time(line.UpTo) + As(line)))}"))}",
            SystemStep.ApprovedWindow =>
                $"approved window: {Who(alike[0])}, age up to {Time(alike[0].UpTo)}, and every one true: {Facts()}",
            SystemStep.OutsideScope => string.Join(
                ". ",
                alike.Select(line =>
                    $"{Who(line)}, age up to {Time(line.UpTo)}"
                    + (
                        line.ForOthers ? ""
                        : rules.Approved.IsEmpty ? ": its window is for another instrument or lot"
                        : $", but a fact of rule {Number(SystemStep.ApprovedWindow)} is not true or not stated"
                    )
                )
            ),
            SystemStep.AnythingElse when alike[0].InScope =>
                $"{Who(alike[0])}, age over {Time(alike[0].Over)}, and every fact of rule {Number(SystemStep.ApprovedWindow)} true, whatever the day",
            SystemStep.AnythingElse => "anything else",
        };

    private string As(SystemRule line) =>
        line.SeparatedBy is { } by ? $" as plasma taken off the cells within {Time(by)}"
        : _lines.Any(other => other.SeparatedBy == line.UpTo && Who(other) == Who(line))
            ? $" as {StorageWords.Of(rules.Any.State)}"
        : "";

    private string Who(SystemRule line) =>
        string.Join(
            ", ",
            [.. line.Groups, .. line.ForOthers ? new[] { "empty or any other word" } : []]
        );

    /// <summary>What must be true for the approved window.</summary>
    private string Facts() =>
        string.Join(
            " · ",
            [
                rules.Any.StorageWords,
                .. rules.Any.Handling?.Storage.SpinToTest is { } spin
                    ? new[] { $"spun at most {Time(spin)} before the test" }
                    : [],
                $"analyzer {string.Join(" or ", rules.Scope.Instruments)}",
                $"lot {string.Join(" or ", rules.Scope.Lots)}",
                rules.Until is { } until
                    ? $"test on {Day(rules.From)} to {Day(until)}"
                    : $"test on {Day(rules.From)} or later",
            ]
        );

    private string Reported(ImmutableArray<SystemRule> alike) =>
        alike[0] switch
        {
            { Verdict: BenchVerdict.Test } when !alike[0].Conditions.IsEmpty =>
                $"condition: {Comments.Number(alike[0], rules)}",
            { Verdict: BenchVerdict.Test } => "",
            { Step: SystemStep.AnythingElse } => string.Join(
                "; ",
                alike
                    .GroupBy(line => Comments.Number(line, rules))
                    .Select(same =>
                        $"{same.Key} {string.Join(", ", same.Select(line => line.ForOthers ? "others" : Who(line)))}"
                    )
            ),
            _ => Comments.Number(alike[0], rules),
        };

    private Table Cases()
    {
        var question = rules.Question(rules.Rules[^2].Group, rules.SpinTakes);
        string?[] facts =
        [
            question.Instrument,
            question.Lot,
            question.Spun is null
                ? rules.Any.StorageWords
                : $"{StorageWords.Of(rules.Any.State)} spun {Time(rules.SpinTakes)} before the test",
            Day(rules.Day),
        ];
        return new(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Table 2. Boundary cases. Enter each in the test system before going live; all {_cases.Length} must give the answer shown. Unless said: {string.Join(", ", facts.OfType<string>())}."
            ),
            [
                new Column("Case", ColumnAlignment.Right, 0.5),
                new Column("Group", ColumnAlignment.Left, 1.6),
                new Column("Age at test", ColumnAlignment.Left, 1.6),
                new Column("Besides", ColumnAlignment.Left, 2.6),
                new Column("Answer", ColumnAlignment.Left, 2.2),
                new Column("Rule", ColumnAlignment.Right, 0.5),
            ],
            [.. _cases.Select(Case)],
            null
        );
    }

    private Row Case(BenchCase item, int index) =>
        new([
            new TableCell((index + 1).ToString(CultureInfo.InvariantCulture)),
            new TableCell(item.Question.Group ?? "empty"),
            new TableCell(CaseWords.Age(item)),
            new TableCell(CaseWords.Besides(item)),
            new TableCell(
                VerdictWords.Of(item.Answer.Verdict)
                    + (
                        Comments.Number(item.Answer) is { Length: > 0 } number ? $" ({number})" : ""
                    ),
                Emphasis.Strong
            ),
            new TableCell(Number(SystemRule.Of(item.Answer))),
        ]);

    private static string Number(SystemStep step) =>
        SystemRule.Number(step).ToString(CultureInfo.InvariantCulture);
}
