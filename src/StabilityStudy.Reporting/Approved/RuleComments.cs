using StabilityStudy.Core.Register;

namespace StabilityStudy.Reporting.Approved;

/// <summary>The comments of a rule table, each once under a number: C1, C2 …</summary>
/// <param name="Texts">The comments in the order of their numbers.</param>
internal sealed record RuleComments(ImmutableArray<string> Texts)
{
    private const string Held =
        "held: outside the approved scope; director asked. Do not test meanwhile.";

    /// <summary>The comments of the lines and cases of a table.</summary>
    public static RuleComments Of(
        BenchRules rules,
        ImmutableArray<SystemRule> lines,
        ImmutableArray<BenchCase> cases
    ) =>
        new([
            .. lines
                .Select(line => line.Reported)
                .Take(2)
                .OfType<BenchAnswer>()
                .Select(Reported)
                .Concat(
                    lines
                        .Select(line => line.Verdict)
                        .Concat(cases.Select(item => item.Answer.Verdict))
                        .Contains(BenchVerdict.AskDirector)
                        ? [HeldText(rules.Analyte)]
                        : ImmutableArray<string>.Empty
                )
                .Concat(lines.Select(line => line.Reported).OfType<BenchAnswer>().Select(Reported))
                .Concat(
                    cases
                        .Select(item => item.Answer)
                        .Where(answer => answer.Verdict == BenchVerdict.DoNotTest)
                        .Select(Reported)
                )
                .Concat(lines.SelectMany(line => line.Conditions).Select(Condition))
                .Distinct(),
        ]);

    /// <summary>Number of a comment.</summary>
    public string Number(string text) =>
        string.Create(CultureInfo.InvariantCulture, $"C{Texts.IndexOf(text) + 1}");

    /// <summary>Number of what is reported with an answer; empty for nothing.</summary>
    public string Number(BenchAnswer answer) =>
        answer.Verdict switch
        {
            BenchVerdict.AskDirector => Number(HeldText(answer.Question.Analyte)),
            BenchVerdict.DoNotTest => Number(Reported(answer)),
            BenchVerdict.Test => string.Join(
                ", ",
                Conditions(answer).Select(Condition).Select(Number)
            ),
        };

    /// <summary>Numbers of what is reported with a line of the table.</summary>
    public string Number(SystemRule line, BenchRules rules) =>
        line switch
        {
            { Verdict: BenchVerdict.AskDirector } => Number(HeldText(rules.Analyte)),
            { Reported: { } answer } => Number(Reported(answer)),
            _ => string.Join(", ", line.Conditions.Select(Condition).Select(Number)),
        };

    private static string Condition(string text) => $"Condition: {text}";

    private static ImmutableArray<string> Conditions(BenchAnswer answer) =>
        answer.Reason == BenchReason.ApprovedWindow
            ? [.. answer.From.SelectMany(item => item.Window.Conditions).Distinct()]
            : [];

    private static string HeldText(string analyte) => $"{analyte} {Held}";

    // The reason of an unfit tube is filled in by whoever reports it.
    private static string Reported(BenchAnswer answer) =>
        ReportedComment.Of(
            answer.Reason == BenchReason.TubeUnfit
                ? answer with
                {
                    Question = answer.Question with { Unfit = "reason" },
                }
                : answer
        ) ?? "";
}
