using System.Globalization;
using System.Text.RegularExpressions;
using StabilityStudy.Core.Register;

namespace StabilityStudy.Pipeline.Tests.Bench;

/// <summary>Answers from a rule table as a laboratory information system would: from its CSV alone, the first line that applies. It knows nothing of the program's own rule.</summary>
internal sealed class RuleFile
{
    private readonly Dictionary<string, string>[] _lines;

    public RuleFile(string csv)
    {
        var rows = csv.TrimEnd('\n').Split('\n').Select(Fields).ToArray();
        _lines =
        [
            .. rows.Skip(1)
                .Select(row =>
                    rows[0].Zip(row).ToDictionary(field => field.First, field => field.Second)
                ),
        ];
    }

    private static string[] Fields(string line) =>
        [
            .. Regex
                .Matches(
                    line,
                    "(^|,)(\"(?<quoted>([^\"]|\"\")*)\"|(?<plain>[^,\"]*))",
                    RegexOptions.ExplicitCapture,
                    TimeSpan.FromSeconds(1)
                )
                .Select(match =>
                    match.Groups["quoted"].Success
                        ? match
                            .Groups["quoted"]
                            .Value.Replace("\"\"", "\"", StringComparison.Ordinal)
                        : match.Groups["plain"].Value
                ),
        ];

    public string Answer(BenchQuestion question)
    {
        var named = _lines
            .SelectMany(line => line["groups"].Split(';'))
            .Where(group => group is not ("*" or ""))
            .ToHashSet();
        var group = question.Group is { } code && named.Contains(code) ? code : "*";
        return _lines.First(line => Applies(line, question, group))["answer"];
    }

    private static bool Applies(
        Dictionary<string, string> line,
        BenchQuestion question,
        string group
    )
    {
        if (line["applies"] == "time-not-known")
        {
            return question.Waited is null || question.Waited < TimeSpan.Zero;
        }

        if (line["applies"] == "tube-unfit")
        {
            return question.Unfit is not null;
        }

        return (line["groups"].Length == 0 || line["groups"].Split(';').Contains(group))
            && (
                line["age_over_minutes"].Length == 0
                || !UpTo(line["age_over_minutes"], question.Waited)
            )
            && UpTo(line["age_up_to_minutes"], question.Waited)
            && (
                line["separated_by_minutes"].Length == 0
                || (
                    question.Separated is { } off
                    && off >= TimeSpan.Zero
                    && off <= question.Waited
                    && UpTo(line["separated_by_minutes"], off)
                )
            )
            && (
                line["spun_within_minutes"].Length == 0
                || (
                    (question.Spun ?? question.Separated) is { } spun
                    && UpTo(line["spun_within_minutes"], question.Waited - spun)
                )
            )
            && Holds(line["instruments"], question.Instrument)
            && Holds(line["lots"], question.Lot)
            && (line["tested_from"].Length == 0 || question.Day >= Day(line["tested_from"]))
            && (line["tested_until"].Length == 0 || question.Day <= Day(line["tested_until"]));
    }

    private static bool UpTo(string minutes, TimeSpan? time) =>
        minutes.Length == 0
        || (
            time is { } known
            && Math.Ceiling(known.TotalMinutes) <= int.Parse(minutes, CultureInfo.InvariantCulture)
        );

    private static bool Holds(string codes, string? code) =>
        codes.Length == 0 || (code is not null && codes.Split(';').Contains(code));

    private static DateOnly Day(string text) =>
        DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);
}
