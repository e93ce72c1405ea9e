using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Report.Notices;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>Writes what is in force on a day: counts, a table, what to attend to, what is not in force.</summary>
internal sealed class RegisterListing
{
    /// <summary>A review that is due within so many days is named.</summary>
    private const int DueSoonDays = 30;

    private const int MostRows = 10;
    private const string Detail = "    ";
    private const int Day = 11;

    private readonly Terminal _terminal;
    private readonly WindowRegister _register;
    private readonly DateOnly _day;
    private readonly ImmutableArray<StandingWindow> _windows;
    private readonly ImmutableArray<StandingWindow> _inForce;

    public RegisterListing(Terminal terminal, WindowRegister register, DateOnly day)
    {
        (_terminal, _register, _day) = (terminal, register, day);
        _windows = register.On(day);
        _inForce = [.. _windows.Where(item => item.Standing == WindowStanding.InForce)];
        Attention = [.. AttentionOf().Distinct()];
    }

    /// <summary>What does not count, or cannot hold as it stands.</summary>
    public ImmutableArray<string> Attention { get; }

    public void Write(bool all)
    {
        ImmutableArray<string> notes = [.. Attention, .. DueSoon()];
        _terminal.Out.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Count(_inForce.Length, "window")} in force, {notes.Length} to attend to. {Count(_register.Reports.Length, "report")}{(_register.Notices.IsEmpty ? "" : ", " + Count(_register.Notices.Length, "notice"))}, as of {_day:yyyy-MM-dd}."
            )
        );
        WriteTable();
        WriteLines(notes, all, "! ");
        WriteOthers(all);
    }

    private void WriteTable()
    {
        var rows = Rows().ToImmutableArray();
        if (rows.IsEmpty)
        {
            return;
        }

        string[] heads = ["analyte", "group", "storage", "window"];
        var widths = heads
            .Select(
                (head, i) =>
                    Math.Max(
                        TextLines.Length(head),
                        rows.Max(row => TextLines.Length(row.Cells[i]))
                    ) + 1
            )
            .ToImmutableArray();
        _terminal.Out.WriteLine();
        // Long names leave no room for columns: a list then.
        var isTable =
            widths.Sum() + (2 * Day) + rows.Max(row => TextLines.Length(row.Cells[^1]))
            <= _terminal.Width;
        if (isTable)
        {
            WriteRow([.. heads, "from", "review by", "report"]);
        }

        foreach (var row in rows)
        {
            WriteRow(row.Cells);
            foreach (var line in row.Details)
            {
                WrappedText.Write(_terminal, Detail + line, Detail);
            }
        }

        void WriteRow(ImmutableArray<string> cells)
        {
            var text = isTable
                ? string.Concat(
                        cells.Select((cell, i) => TextLines.Padded(cell, Width(i), atRight: true))
                    )
                    .TrimEnd()
                : string.Join(", ", cells.Where(cell => cell.Length > 0));
            WrappedText.Write(_terminal, text, Detail);
        }

        int Width(int i) =>
            i < widths.Length ? widths[i]
            : i < widths.Length + 2 ? Day
            : 0;
    }

    private IEnumerable<Row> Rows()
    {
        foreach (
            var cell in _windows
                .Where(item => item.Report.Counts && item.Standing != WindowStanding.Superseded)
                .GroupBy(item => (item.Window.Row.Analyte, item.Window.Row.Storage))
        )
        {
            foreach (var group in cell.GroupBy(item => item.Window.Row.Group))
            {
                var inForce = group
                    .Where(item => item.Standing == WindowStanding.InForce)
                    .ToImmutableArray();
                foreach (var item in inForce)
                {
                    yield return InForce(item);
                }

                if (inForce.IsEmpty && Asked(cell.Key, group.Key).Today is { } today)
                {
                    yield return Today(group.First(), DurationText.FormatWindow(today), group);
                }
            }

            yield return Unknown(cell.Key);
        }
    }

    private static Row InForce(StandingWindow item)
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
                    : BenchWords.Time(window.Approved ?? window.Interim),
                BenchWords.Day(report.From),
                item.Review is { } review ? BenchWords.Day(review) : "none set",
                Short(report),
            ],
            [
                $"instrument {BenchWords.Codes(row.Instruments)}; lot {BenchWords.Codes(row.Reagents)}; decided by {report.DecidedBy}",
                .. window.Interim is null
                    ? []
                    : new[] { $"interim rule, shorter than today's {BenchWords.Time(row.Today)}" },
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

    private static Row Today(StandingWindow item, string today, IEnumerable<StandingWindow> group)
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
                            ? $"; {BenchWords.Time(inDoubt.Window.Approved)} is in doubt: see below"
                        : against?.TakenAwayBy is { } notice
                            ? $"; {BenchWords.Time(against.Window.Approved)} was {RegisterWords.Word(against.Standing)} {BenchWords.Day(notice.From)}: \"{notice.Notice.Reason}\""
                        : declined is not null
                            ? $"; longer was declined {BenchWords.Day(declined.Report.From)}"
                        : tried ? "; the study supports no longer one"
                        : ""
                    ),
            ]
        );
    }

    /// <summary>The row for a patient whose group nobody knows, by the function that answers at the bench.</summary>
    private Row Unknown((string Analyte, string Storage) cell)
    {
        var shortest = Asked(cell, null).Today;
        var answer = MayTest.AnswerFrom(
            _windows,
            _register,
            Asked(cell, null).Question with
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
                tests ? BenchWords.Time(shortest) : "ask",
                "",
                "",
                "",
            ],
            [
                answer.Reason switch
                {
                    BenchReason.NoRuleForHeparin => "no rule for heparin is in the register",
                    _ when !tests => "see below",
                    _ => "the shortest of today's rules",
                },
            ]
        );
    }

    private BenchAnswer Asked((string Analyte, string Storage) cell, string? group) =>
        MayTest.AnswerFrom(
            _windows,
            _register,
            new BenchQuestion(cell.Analyte, _day) { Group = group, Storage = cell.Storage }
        );

    private IEnumerable<string> AttentionOf()
    {
        foreach (var report in _register.Reports)
        {
            if (report.Standing == ReportStanding.NotTrusted)
            {
                yield return $"{report.File}: not counted. {report.Why}";
            }
            else if (report.Standing == ReportStanding.NotDecided)
            {
                yield return $"{report.File}: nothing in force. {report.Why}";
            }
        }

        foreach (var (notice, why) in _register.NoticesWithoutEffect())
        {
            yield return $"{notice.File}, {NoticeWords.Title(notice.Notice.Kind)}: not applied. {why}";
        }

        foreach (var item in _windows.Where(item => item.Standing == WindowStanding.InDoubt))
        {
            yield return $"{RegisterWords.Named(item)}: in doubt, and not to be relied on until somebody has found out; ask the director. {item.Doubt}";
        }

        foreach (var item in _windows.Where(item => item.Standing == WindowStanding.PastReview))
        {
            yield return $"{RegisterWords.Named(item)}: to be reviewed by {BenchWords.Day(item.Review)}; until then ask the director.";
        }

        foreach (var item in _inForce.Where(item => !item.AlsoClaimedBy.IsEmpty))
        {
            yield return $"{RegisterWords.Named(item)}: also claimed by {string.Join(", ", item.AlsoClaimedBy)}, and neither says that it replaces the other. The shorter holds.";
        }

        foreach (var item in _inForce.Where(item => item.Window.IsInWordsOnly))
        {
            yield return $"{RegisterWords.Named(item)}: decided in words only, which no program can read. Ask the director.";
        }
    }

    private IEnumerable<string> DueSoon() =>
        _inForce
            .SelectMany(item =>
                item.Coming.Select(notice =>
                    $"{RegisterWords.Named(item)}: {NoticeWords.Title(notice.Notice.Kind)} takes effect on {BenchWords.Day(notice.From)} ({notice.File})."
                )
            )
            .Concat(ReviewsDueSoon());

    private IEnumerable<string> ReviewsDueSoon() =>
        _inForce
            .Where(item =>
                item.Review is { } review && review.DayNumber - _day.DayNumber <= DueSoonDays
            )
            .Select(item =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{RegisterWords.Named(item)}: review is due in {Count(item.Review!.Value.DayNumber - _day.DayNumber, "day")}."
                )
            );

    private void WriteOthers(bool all)
    {
        var others = _windows
            .Where(item => item.Standing != WindowStanding.InForce)
            .GroupBy(item => item.Standing)
            .OrderByDescending(group => group.Key)
            .ToImmutableArray();
        var studies = _register.WithoutReport(_day);
        if (others.IsEmpty && studies.IsEmpty)
        {
            return;
        }

        _terminal.Out.WriteLine();
        WrappedText.Write(
            _terminal,
            "not in force: "
                + string.Join(
                    ", ",
                    others
                        .Select(group =>
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"{group.Count()} {RegisterWords.Word(group.Key)}"
                            )
                        )
                        .Concat(
                            studies
                                .GroupBy(study => study.Stage)
                                .Select(group =>
                                    string.Create(
                                        CultureInfo.InvariantCulture,
                                        $"{group.Count()} {(group.Count() == 1 ? "study" : "studies")} {RegisterWords.Word(group.Key)}"
                                    )
                                )
                        )
                )
                + (all ? "" : "  (--all)"),
            Detail
        );
        foreach (var item in all ? others.SelectMany(group => group) : [])
        {
            WrappedText.Write(
                _terminal,
                $"  {RegisterWords.Named(item)}: {RegisterWords.Word(item.Standing)}{RegisterWords.More(item)}",
                Detail
            );
        }

        foreach (var study in all ? studies : [])
        {
            WrappedText.Write(_terminal, "  " + RegisterWords.Of(study), Detail);
        }
    }

    private void WriteLines(ImmutableArray<string> lines, bool all, string mark)
    {
        if (!lines.IsEmpty)
        {
            _terminal.Out.WriteLine();
        }

        foreach (var line in all ? lines : [.. lines.Take(MostRows)])
        {
            WrappedText.Write(_terminal, mark + line, new string(' ', mark.Length));
        }

        if (!all && lines.Length > MostRows)
        {
            _terminal.Out.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"and {lines.Length - MostRows} more: --all"
                )
            );
        }
    }

    private static string Short(RegisteredReport report) =>
        report.Name[(report.Name.LastIndexOf('-') + 1)..];

    private static string Count(int number, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {what}{(number == 1 ? "" : "s")}");

    private sealed record Row(ImmutableArray<string> Cells, ImmutableArray<string> Details);
}
