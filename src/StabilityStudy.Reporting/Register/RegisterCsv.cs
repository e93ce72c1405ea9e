using System.Text;
using StabilityStudy.Core.Register;

namespace StabilityStudy.Reporting.Register;

/// <summary>The register as a table: a row a window, in force or not, and a row a study without a report.</summary>
public static class RegisterCsv
{
    /// <summary>Each column with its text for a window.</summary>
    private static readonly ImmutableArray<(
        string Name,
        Func<StandingWindow, string?> Text
    )> s_columns =
    [
        ("standing", item => RegisterWords.Word(item.Standing)),
        ("analyte", item => item.Window.Row.Analyte),
        ("group", item => item.Window.Row.Group),
        ("group_name", item => item.Window.GroupName),
        ("storage", item => item.Window.Row.Storage),
        ("storage_words", item => item.Window.StorageWords),
        ("instruments", item => string.Join("; ", item.Window.Row.Instruments)),
        ("lots", item => string.Join("; ", item.Window.Row.Reagents)),
        ("lots_until", item => AnswerWords.Day(item.Window.LotsUntil)),
        ("today", item => Time(item.Window.Row.Today)),
        ("supported", item => Time(item.Window.Row.Supported)),
        ("approved", item => Time(item.Window.Approved)),
        ("interim", item => Time(item.Window.Interim)),
        ("conditions", item => string.Join("; ", item.Window.Conditions)),
        ("from", item => item.Report.Counts ? AnswerWords.Day(item.Report.From) : null),
        ("review_by", item => AnswerWords.Day(item.Review)),
        ("decided_by", item => item.Report.DecidedBy),
        ("study", item => item.Report.Code),
        ("report", item => item.Report.Name),
        ("file", item => item.Report.File),
        ("superseded_by", item => item.SupersededBy),
        ("also_claimed_by", item => string.Join("; ", item.AlsoClaimedBy)),
        ("notices", item => string.Join("; ", item.Notices.Select(notice => notice.File))),
        (
            "why",
            item =>
                item.Doubt
                ?? item.TakenAwayBy?.Notice.Reason
                ?? item.Report.Reason
                ?? item.Report.Why
        ),
    ];

    /// <summary>Writes the table: UTF-8, a line feed after each row.</summary>
    public static ReadOnlyMemory<byte> Write(WindowRegister register, DateOnly day)
    {
        var text = new StringBuilder();
        Append(text, [.. s_columns.Select(column => column.Name).Prepend("as_of")]);
        foreach (var item in register.On(day))
        {
            Append(
                text,
                [.. s_columns.Select(column => column.Text(item)).Prepend(AnswerWords.Day(day))]
            );
        }

        foreach (var study in register.WithoutReport(day))
        {
            Append(
                text,
                [
                    .. s_columns
                        .Select(column =>
                            column.Name switch
                            {
                                "standing" => "study " + RegisterWords.Word(study.Stage),
                                "study" => study.Code,
                                "file" => study.Place,
                                "from" => AnswerWords.Day(study.On),
                                "why" => study.Why,
                                _ => null,
                            }
                        )
                        .Prepend(AnswerWords.Day(day)),
                ]
            );
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string Time(TimeSpan? time) => time is { } known ? AnswerWords.Time(known) : "";

    private static void Append(StringBuilder text, ImmutableArray<string?> fields) =>
        text.AppendJoin(',', fields.Select(Field)).Append('\n');

    /// <summary>A text that a spreadsheet would take for a formula gets an apostrophe before it.</summary>
    private static string Field(string? text)
    {
        var safe = text is ['=' or '+' or '-' or '@', ..] ? "'" + text : text ?? "";
        return safe.AsSpan().IndexOfAny("\",\r\n") >= 0
            ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : safe;
    }
}
