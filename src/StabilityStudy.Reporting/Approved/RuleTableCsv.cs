using System.Text;
using StabilityStudy.Core.Register;
using static StabilityStudy.Reporting.Approved.ApprovedWords;

namespace StabilityStudy.Reporting.Approved;

/// <summary>The rule table and its cases for a system to read: UTF-8, comma, a header line, times in whole minutes, empty for any.</summary>
/// <param name="rules">The rules.</param>
internal sealed class RuleTableCsv(BenchRules rules)
{
    private const string Any = "*";
    private const char Between = ';';

    /// <summary>The rules, the first that applies answers.</summary>
    public string Lines()
    {
        var text = new StringBuilder();
        Write(
            text,
            "rule",
            "applies",
            "groups",
            "age_over_minutes",
            "age_up_to_minutes",
            "separated_by_minutes",
            "spun_within_minutes",
            "instruments",
            "lots",
            "tested_from",
            "tested_until",
            "answer",
            "comment",
            "source"
        );
        var scope = rules.Any.Handling?.Storage.SpinToTest;
        foreach (var line in SystemRule.Of(rules))
        {
            Write(
                text,
                SystemRule.Number(line.Step).ToString(CultureInfo.InvariantCulture),
                Coded(line.Step),
                string.Join(Between, [.. line.Groups, .. line.ForOthers ? new[] { Any } : []]),
                Minutes(line.Over),
                Minutes(line.UpTo),
                Minutes(line.SeparatedBy),
                line.InScope ? Minutes(scope) : "",
                line.InScope ? string.Join(Between, rules.Scope.Instruments) : "",
                line.InScope ? string.Join(Between, rules.Scope.Lots) : "",
                line.Step == SystemStep.ApprovedWindow ? Day(rules.From) : "",
                line.Step == SystemStep.ApprovedWindow && rules.Until is { } until
                    ? Day(until)
                    : "",
                VerdictWords.Of(line.Verdict),
                line.Reported is { } answer
                    ? ReportedComment.Of(answer) ?? ""
                    : string.Join("; ", line.Conditions),
                Sources
            );
        }

        return text.ToString();
    }

    /// <summary>The cases with the answers that a system must give.</summary>
    public string Cases()
    {
        var text = new StringBuilder();
        Write(
            text,
            "case",
            "analyte",
            "storage",
            "group",
            "age_seconds",
            "separated_at_minutes",
            "spun_at_minutes",
            "instrument",
            "lot",
            "tested_on",
            "tube_fault",
            "answer",
            "rule",
            "comment",
            "in_words"
        );
        foreach (var (index, item) in BenchCase.Of(rules).Index())
        {
            var question = item.Question;
            Write(
                text,
                (index + 1).ToString(CultureInfo.InvariantCulture),
                question.Analyte,
                question.Storage ?? "",
                question.Group ?? "",
                question.Waited is { } waited
                    ? ((long)waited.TotalSeconds).ToString(CultureInfo.InvariantCulture)
                    : "",
                Minutes(question.Separated),
                Minutes(question.Spun),
                question.Instrument ?? "",
                question.Lot ?? "",
                Day(question.Day),
                question.Unfit ?? "",
                VerdictWords.Of(item.Answer.Verdict),
                SystemRule
                    .Number(SystemRule.Of(item.Answer))
                    .ToString(CultureInfo.InvariantCulture),
                ReportedComment.Of(item.Answer) ?? "",
                CaseWords.Besides(item)
            );
        }

        return text.ToString();
    }

    private string Sources => string.Join(Between, rules.Reports.Select(report => report.Name));

    private static string Coded(SystemStep step) =>
        System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName($"{step}");

    private static string Minutes(TimeSpan? time) =>
        time is { } known ? ((long)known.TotalMinutes).ToString(CultureInfo.InvariantCulture) : "";

    private static void Write(StringBuilder text, params ReadOnlySpan<string> fields)
    {
        for (var i = 0; i < fields.Length; i++)
        {
            text.Append(i == 0 ? "" : ",").Append(Quoted(fields[i]));
        }

        text.Append('\n');
    }

    private static string Quoted(string field) =>
        field.AsSpan().IndexOfAny("\",\n\r") >= 0
            ? $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : field;
}
