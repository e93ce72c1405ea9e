using StabilityStudy.Core.Study;

namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>Who chose a limit or a share, and why, as far as the protocol states it: the program never guesses it.</summary>
internal static class RationaleWords
{
    /// <summary>One sentence: "The medical director (MD1) chose this share: …".</summary>
    /// <param name="what">What was chosen: "this share".</param>
    /// <param name="rationale">What the protocol states.</param>
    /// <param name="people">Persons of the study, by whose codes the protocol may name them; empty where none are known yet.</param>
    public static string Sentence(
        string what,
        Rationale rationale,
        ImmutableArray<Person> people
    ) =>
        rationale switch
        {
            { ChosenBy: { } by, Reason: { } reason } =>
                $"{TradeWords.Capital(Who(by, people))} chose {what}: {Unstopped(reason)}.",
            { ChosenBy: { } by } =>
                $"{TradeWords.Capital(Who(by, people))} chose {what}; the protocol gives no reason.",
            { Reason: { } reason } =>
                $"The protocol does not state who chose {what}; its reason: {Unstopped(reason)}.",
            _ => $"The protocol does not state who chose {what}, or why.",
        };

    /// <summary>The same with a space before it where the protocol states something; else nothing.</summary>
    public static string Stated(string what, Rationale rationale, ImmutableArray<Person> people) =>
        rationale == Rationale.NotStated ? "" : " " + Sentence(what, rationale, people);

    /// <summary>"the medical director (MD1)" for the code of a person; else as written.</summary>
    public static string Who(string by, ImmutableArray<Person> people) =>
        people.FirstOrDefault(person => person.Code == by) is { } person
            ? $"the {TradeWords.InSentence(person.Role)} ({person.Code})"
            : Unstopped(by);

    /// <summary>A text of the laboratory that stands inside or at the end of a sentence of ours.</summary>
    public static string Unstopped(string text) => text.TrimEnd('.');
}
