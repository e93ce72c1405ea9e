using StabilityStudy.Core.Register;
using static StabilityStudy.Reporting.Approved.ApprovedWords;

namespace StabilityStudy.Reporting.Approved;

/// <summary>The text for the procedure manual: which tubes are accepted, what is done with them, what is reported, and where it comes from.</summary>
/// <param name="rules">The rules.</param>
internal sealed class ProcedureText(BenchRules rules)
{
    /// <summary>The document.</summary>
    public ReportModel Model(PaperSize paper) =>
        new(
            $"{rules.Analyte}: how old a tube may be tested",
            "en-US",
            paper,
            new RunningHeader(
                $"{Invented(rules)}procedure text · {Subject(rules)}",
                Valid(rules),
                Source(rules)
            ),
            [Scope(), Limits(), Steps(), Basis(), Approval()]
        );

    private Section Scope() =>
        new(
            "What it is for",
            StartsOnNewPage: false,
            [
                new Paragraph(
                    $"{rules.Any.Handling?.AnalyteName ?? rules.Analyte} ({rules.Analyte}) in tubes that wait as {rules.Any.StorageWords}. Age is the time from {Origin(rules)} to the start of the test, rounded up to the whole minute. It is judged when the test starts, not at receipt; a rerun is judged by its own time.",
                    ParagraphStyle.Body
                ),
                new Paragraph(
                    rules.Approved.IsEmpty
                        ? "No window beyond today's rule is in force."
                        : $"The approved windows hold for {Subject(rules)} and no other.",
                    ParagraphStyle.Body
                ),
            ]
        );

    private Section Limits() =>
        new(
            "How old a tube may be",
            StartsOnNewPage: false,
            [
                new Table(
                    "Table 1. Longest age at the start of the test; the last minute counts.",
                    [
                        new Column("Patient", ColumnAlignment.Left, 2.2),
                        new Column("Accept until", ColumnAlignment.Left, 1.1),
                        new Column("Spin by", ColumnAlignment.Left, 1.1),
                        new Column("What it follows from", ColumnAlignment.Left, 3),
                    ],
                    [
                        .. rules.Rules.Select(rule => new Row([
                            new TableCell(Group(rule), Emphasis.Strong),
                            new TableCell(
                                rule.Limit is not { } limit ? "ask the director"
                                    : rule.AsPlasma is null ? Time(limit)
                                    : $"{Time(limit)} as {StorageWords.Of(rules.Any.State)}",
                                Emphasis.Strong
                            ),
                            new TableCell(
                                rules.Any.State != StorageState.WholeBlood ? "–"
                                : rule.AsPlasma is not null ? Time(rule.Today)
                                : SpinBy(rules, rule.Limit) is { } spin ? Time(spin)
                                : "at once"
                            ),
                            new TableCell(Follows(rule)),
                        ])),
                    ],
                    $"\"Spin by\" leaves this bench {Time(rules.SpinTakes)} from the spin to the test."
                ),
            ]
        );

    private static string Follows(BenchRule rule)
    {
        var step = rule.AsPlasma is { } plasma
            ? $" Plasma taken off the cells within {Time(rule.Today)}: until {Time(plasma)}."
            : "";
        if (rule.IsApproved)
        {
            var conditions = rule
                .Within.From.SelectMany(item => item.Window.Conditions)
                .Distinct()
                .Select(text => $" Condition beyond {Time(rule.Today)}: {text.TrimEnd('.')}.");
            return $"Approved from {string.Join(", ", rule.Within.From.Select(item => item.Report.Name).Distinct())}.{string.Concat(conditions)}{step}";
        }

        return rule switch
        {
            { Within.Reason: BenchReason.NoRuleForHeparin } =>
                "No rule for heparin is in the register, and it may be shorter.",
            { Group: null } or { IsOfOthers: true } => $"The shortest of today's rules.{step}",
            { IsShortened: true } =>
                $"A decision that is shorter than today's rule ({rule.Within.From[0].Report.Name}).{step}",
            { Refused: { } standing } =>
                $"Today's rule ({rule.Within.From[0].Window.Handling?.TodaysRule.Source}); {ApprovedWords.Refused(standing)}.{step}",
            _ => $"Today's rule ({rule.Within.From[0].Window.Handling?.TodaysRule.Source}).{step}",
        };
    }

    private Section Steps() =>
        new(
            "What is done",
            StartsOnNewPage: false,
            [
                new Bullets([
                    $"Read the time of {Origin(rules)} and the anticoagulant on the request. If one is missing, ask; until it is known, do not test, or use the shortest age of Table 1.",
                    $"Do not test a tube that is {Unfit(rules)}, whatever its age.",
                    .. rules.Any.Handling?.Storage.SpinToTest is { } spin
                        ? new[]
                        {
                            $"Spin at most {Time(spin)} before the test. A tube spun earlier has not waited as whole blood: only today's rule holds for it.",
                        }
                        : [],
                    .. rules
                        .Rules.Where(rule =>
                            rule is { AsPlasma: not null, Group: not null, IsOfOthers: false }
                        )
                        .Select(rule =>
                            $"{Group(rule)}: spin within {Time(rule.Today)}, take the plasma off the cells at once, write the time, test by {Time(rule.AsPlasma)}."
                        ),
                    "Start the test within the age of Table 1, and record when it started.",
                    .. rules
                        .Rules.Where(rule => rule.IsApproved)
                        .SelectMany(rule =>
                            rule.Within.From.SelectMany(item => item.Window.Conditions)
                                .Distinct()
                                .Select(text =>
                                    $"{Group(rule)}, older than {Time(rule.Today)}: {text.TrimEnd('.')}."
                                )
                        ),
                    $"Too old: do not test. Report what fits: {Comments()}",
                    $"Another lot, analyzer or tube type, or past the review date: only today's rule holds. Beyond it ask the director; do not test meanwhile.",
                ]),
            ]
        );

    private string Comments() =>
        string.Join(
            " · ",
            rules
                .Rules.Select(rule =>
                    ReportedComment.Of(rules.Answer(rules.Question(rule.Group, TooOld(rule))))
                )
                .OfType<string>()
                .Distinct()
                .Select(text => $"\"{text}\"")
        );

    private static TimeSpan TooOld(BenchRule rule) =>
        new[] { rule.Limit, rule.AskedUpTo, rule.Today }.OfType<TimeSpan>().Max()
        + TimeSpan.FromMinutes(1);

    private Section Basis() =>
        new(
            "What it is based on",
            StartsOnNewPage: false,
            [
                new Bullets([
                    .. rules.Reports.Select(report =>
                        $"Report {report.Name}, inputs {Digest(report)} …, verified when this text was made from the register as of {Day(rules.Day)}."
                    ),
                    .. ApprovedBy(rules) is { Length: > 0 } by ? new[] { by } : [],
                    .. Modified(rules) is { Length: > 0 } modified
                        ? new[] { modified.TrimEnd() }
                        : [],
                    $"{TradeWords.Capital(Valid(rules))}. {Ends(rules)}",
                ]),
                new Paragraph(Cautions, ParagraphStyle.Small),
            ]
        );

    private static Section Approval() =>
        new(
            "Approval of this procedure",
            StartsOnNewPage: false,
            [
                new Paragraph(
                    "Written by ______________________ on ______________   Approved by ______________________ on ______________",
                    ParagraphStyle.Body
                ),
            ]
        );
}
