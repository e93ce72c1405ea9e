using System.Text.Json;
using System.Xml;
using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Approved;
using StabilityStudy.Reporting.Register;

namespace StabilityStudy.Cli.Console;

/// <summary>Writes the register, or an answer from it, for a program to read: windows as durations of ISO 8601, days as in ISO 8601.</summary>
internal static class RegisterJson
{
    /// <summary>The register on a day.</summary>
    public static void Write(Terminal terminal, WindowRegister register, DateOnly day) =>
        terminal.WriteJson(json =>
        {
            json.WriteString("asOf", AnswerWords.Day(day));
            json.WriteStartArray("reports");
            foreach (var report in register.Reports)
            {
                Write(json, report);
            }

            json.WriteEndArray();
            json.WriteStartArray("notices");
            var without = register.NoticesWithoutEffect();
            foreach (var item in register.Notices)
            {
                Write(
                    json,
                    item,
                    without.FirstOrDefault(pair => ReferenceEquals(pair.Notice, item)).Why
                );
            }

            json.WriteEndArray();
            json.WriteStartArray("studiesWithoutReport");
            foreach (var study in register.WithoutReport(day))
            {
                json.WriteStartObject();
                json.WriteString("place", study.Place);
                json.WriteString("study", study.Code);
                json.WriteString("stage", Coded(study.Stage));
                json.WriteString("on", study.On is { } on ? AnswerWords.Day(on) : null);
                json.WriteString("why", study.Why);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("windows");
            foreach (var item in register.On(day))
            {
                Write(json, item);
            }

            json.WriteEndArray();
        });

    /// <summary>An answer at the bench.</summary>
    public static void Write(Terminal terminal, BenchAnswer answer) =>
        terminal.WriteJson(json =>
        {
            json.WriteString("verdict", Coded(AnswerWords.Verdict(answer.Verdict)));
            json.WriteString("reason", Coded(answer.Reason));
            json.WriteString("analyte", answer.Question.Analyte);
            json.WriteString("group", answer.Question.Group);
            json.WriteBoolean("groupKnown", answer.KnowsGroup);
            json.WriteString("storage", answer.Storage);
            json.WriteString("asOf", AnswerWords.Day(answer.Question.Day));
            json.WriteString("age", Duration(answer.Age));
            json.WriteString("today", Duration(answer.Today));
            json.WriteString("asPlasma", Duration(answer.AsPlasma));
            json.WriteString("limit", Duration(answer.Limit));
            json.WriteString("due", answer.Due is { } due ? Coded(due) : null);
            json.WriteString("sentence", AnswerWords.Sentence(answer));
            json.WriteString("comment", ReportedComment.Of(answer));
            json.WriteTexts("notTrusted", answer.NotTrusted.Select(report => report.File));
            json.WriteStartArray("from");
            foreach (var item in answer.From)
            {
                Write(json, item);
            }

            json.WriteEndArray();
        });

    private static void Write(Utf8JsonWriter json, RegisteredReport report)
    {
        json.WriteStartObject();
        json.WriteString("file", report.File);
        json.WriteString("study", report.Code);
        json.WriteString("inputDigest", report.InputDigest);
        json.WriteString("standing", Coded(report.Standing));
        json.WriteString("why", report.Why);
        json.WriteString("decidedBy", report.DecidedBy);
        json.WriteString(
            "decidedAt",
            report.DecidedAt?.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture)
        );
        json.WriteString("from", report.Counts ? AnswerWords.Day(report.From) : null);
        json.WriteString("review", report.Review is { } day ? AnswerWords.Day(day) : null);
        json.WriteString("reason", report.Reason);
        json.WriteString("replaces", report.Replaces);
        json.WriteString(
            "decidedAgainAfter",
            report.DecidedAgainAfter?.ToString(
                "yyyy-MM-ddTHH:mm:sszzz",
                CultureInfo.InvariantCulture
            )
        );
        json.WriteTexts("notChecked", report.Reservations);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, RegisteredNotice item, string? why)
    {
        var notice = item.Notice;
        json.WriteStartObject();
        json.WriteString("file", item.File);
        json.WriteString("kind", Coded(notice.Kind));
        json.WriteString("standing", Coded(item.Standing));
        json.WriteString("notAppliedBecause", why);
        json.WriteString("by", notice.By);
        json.WriteString("reason", notice.Reason);
        json.WriteString(
            "signedAt",
            item.SignedAt?.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture)
        );
        json.WriteString("from", notice.From is { } from ? AnswerWords.Day(from) : null);
        json.WriteString("review", notice.Review is { } review ? AnswerWords.Day(review) : null);
        json.WriteBoolean("lookBack", notice.LooksBack);
        json.WriteTexts("reports", notice.Reports.Select(report => report.Name));
        json.WriteString("study", notice.Study?.Code);
        json.WriteTexts("notChecked", item.Reservations);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, StandingWindow item)
    {
        var (window, row) = (item.Window, item.Window.Row);
        json.WriteStartObject();
        json.WriteString("report", item.Report.File);
        json.WriteString("standing", Coded(item.Standing));
        json.WriteString("analyte", row.Analyte);
        json.WriteString("group", row.Group);
        json.WriteString("storage", row.Storage);
        json.WriteString("storageInWords", window.StorageWords);
        json.WriteTexts("instruments", row.Instruments);
        json.WriteTexts("lots", row.Reagents);
        json.WriteString(
            "lotsUntil",
            window.LotsUntil is { } until ? AnswerWords.Day(until) : null
        );
        json.WriteString("today", Duration(row.Today));
        json.WriteString("supported", Duration(row.Supported));
        json.WriteString("approved", Duration(window.Approved));
        json.WriteString("interim", Duration(window.Interim));
        json.WriteTexts("conditions", window.Conditions);
        json.WriteBoolean("inWordsOnly", window.IsInWordsOnly);
        json.WriteString("review", item.Review is { } day ? AnswerWords.Day(day) : null);
        json.WriteString("supersededBy", item.SupersededBy);
        json.WriteTexts("notices", item.Notices.Select(notice => notice.File));
        json.WriteString("doubt", item.Doubt);
        json.WriteTexts("alsoClaimedBy", item.AlsoClaimedBy);
        json.WriteEndObject();
    }

    /// <summary>The name of a member as files write it: "not-trusted".</summary>
    private static string Coded(Enum member) =>
        JsonNamingPolicy.KebabCaseLower.ConvertName($"{member}");

    private static string Coded(string words) => words.ToLowerInvariant().Replace(' ', '-');

    private static string? Duration(TimeSpan? time) =>
        time is { } known ? XmlConvert.ToString(known) : null;
}
