using StabilityStudy.Core.Register;

namespace StabilityStudy.Reporting.Register;

/// <summary>A row of the register as people read it.</summary>
/// <param name="Cells">One text a column.</param>
/// <param name="Details">What is said below it.</param>
public sealed record RegisterRow(ImmutableArray<string> Cells, ImmutableArray<string> Details);

/// <summary>What is in force on a day: a row for each approved window, else for today's rule, and for the patient whose group nobody knows.</summary>
/// <param name="register">The register.</param>
/// <param name="day">The day.</param>
public sealed class RegisterTable(WindowRegister register, DateOnly day)
{
    private readonly ImmutableArray<StandingWindow> _windows = register.On(day);

    /// <summary>Heads of the columns.</summary>
    public static ImmutableArray<string> Heads { get; } =
    ["analyte", "group", "storage", "window", "from", "review by", "report"];

    /// <summary>The rows.</summary>
    public IEnumerable<RegisterRow> Rows()
    {
        foreach (
            var cell in _windows
                .Where(item => item.Report.Counts && item.Standing != WindowStanding.Superseded)
                .GroupBy(item => (item.Window.Row.Analyte, item.Window.Row.Storage))
        )
        {
            // Questions about one analyte need no other.
            ImmutableArray<StandingWindow> windows = [.. cell];
            foreach (var group in cell.GroupBy(item => item.Window.Row.Group))
            {
                var inForce = group
                    .Where(item => item.Standing == WindowStanding.InForce)
                    .ToImmutableArray();
                foreach (var item in inForce)
                {
                    yield return InForce(item);
                }

                if (inForce.IsEmpty && Asked(windows, cell.Key, group.Key).Today is { } today)
                {
                    yield return Today(group.First(), DurationText.FormatWindow(today), group);
                }
            }

            yield return Unknown(windows, cell.Key);
        }
    }

    private static RegisterRow InForce(StandingWindow item)
    {
        var (report, window) = (item.Report, item.Window);
        var row = window.Row;
        return new(
            [
                row.Analyte,
                window.GroupName,
                row.Storage,
                window.IsInWordsOnly
                    ? "in words"
                    : AnswerWords.Time(window.Approved ?? window.Interim),
                AnswerWords.Day(report.From),
                item.Review is { } review ? AnswerWords.Day(review) : "none set",
                Short(report),
            ],
            [
                $"instrument {AnswerWords.Codes(row.Instruments)}; lot {AnswerWords.Codes(row.Reagents)}; decided by {report.DecidedBy}",
                .. window.Interim is null
                    ? []
                    : new[] { $"interim rule, shorter than today's {AnswerWords.Time(row.Today)}" },
                .. window.Conditions.Select(text => $"condition: {text}"),
                .. item.Notices.Select(RegisterWords.Of),
                .. report.Replaces is { } digest
                    ? new[] { $"replaces the report with inputs {digest}" }
                    : [],
                .. report.DecidedAgainAfter is { } before
                    ? new[]
                    {
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"decided again, after the decision of {before:yyyy-MM-dd}"
                        ),
                    }
                    : [],
            ]
        );
    }

    private static RegisterRow Today(
        StandingWindow item,
        string today,
        IEnumerable<StandingWindow> group
    )
    {
        var against = group.FirstOrDefault(other =>
            other.Standing is WindowStanding.Withdrawn or WindowStanding.EndedByNewDirector
        );
        var inDoubt = group.FirstOrDefault(other => other.Standing == WindowStanding.InDoubt);
        var declined = group.FirstOrDefault(other => other.Standing == WindowStanding.Declined);
        var tried = group.Any(other => other.Standing == WindowStanding.NotSupported);
        return new(
            [
                item.Window.Row.Analyte,
                item.Window.GroupName,
                item.Window.Row.Storage,
                today,
                "before",
                "",
                Short(item.Report),
            ],
            [
                "today's rule, not from a study"
                    + (
                        inDoubt is not null
                            ? $"; {AnswerWords.Time(inDoubt.Window.Approved)} is in doubt: see the notes"
                        : against?.TakenAwayBy is { } notice
                            ? $"; {AnswerWords.Time(against.Window.Approved)} was {RegisterWords.Word(against.Standing)} {AnswerWords.Day(notice.From)}: \"{notice.Notice.Reason}\""
                        : declined is not null
                            ? $"; longer was declined {AnswerWords.Day(declined.Report.From)}"
                        : tried ? "; the study supports no longer one"
                        : ""
                    ),
            ]
        );
    }

    /// <summary>The row for a patient whose group nobody knows, by the function that answers at the bench.</summary>
    private RegisterRow Unknown(
        ImmutableArray<StandingWindow> windows,
        (string Analyte, string Storage) cell
    )
    {
        var asked = Asked(windows, cell, null);
        var shortest = asked.Today;
        var answer = MayTest.AnswerFrom(
            windows,
            register,
            asked.Question with
            {
                Waited = shortest,
            }
        );
        var tests = answer.Verdict == BenchVerdict.Test;
        return new(
            [
                cell.Analyte,
                "unknown",
                cell.Storage,
                tests ? AnswerWords.Time(shortest) : "ask",
                "",
                "",
                "",
            ],
            [
                answer.Reason switch
                {
                    BenchReason.NoRuleForHeparin => "no rule for heparin is in the register",
                    _ when !tests => "see the notes",
                    _ => "the shortest of today's rules",
                },
            ]
        );
    }

    private BenchAnswer Asked(
        ImmutableArray<StandingWindow> windows,
        (string Analyte, string Storage) cell,
        string? group
    ) =>
        MayTest.AnswerFrom(
            windows,
            register,
            new BenchQuestion(cell.Analyte, day) { Group = group, Storage = cell.Storage }
        );

    private static string Short(RegisteredReport report) =>
        report.Name[(report.Name.LastIndexOf('-') + 1)..];
}
