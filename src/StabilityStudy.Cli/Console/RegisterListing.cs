using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Register;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>Writes what is in force on a day: counts, a table, what to attend to, what is not in force.</summary>
internal sealed class RegisterListing
{
    private const int MostRows = 10;
    private const string Detail = "    ";
    private const int DayWidth = 11;

    /// <summary>Columns as wide as their texts; two days and the report follow.</summary>
    private const int Measured = 4;

    private readonly Terminal _terminal;
    private readonly WindowRegister _register;
    private readonly ImmutableArray<StandingWindow> _windows;
    private readonly RegisterAttention _attention;

    public RegisterListing(
        Terminal terminal,
        WindowRegister register,
        DateOnly day,
        string? instrument,
        string? lot
    )
    {
        (_terminal, _register, Day) = (terminal, register, day);
        _windows = register.On(day);
        _attention = new RegisterAttention(register, day, instrument, lot);
        Attention = _attention.Faults;
    }

    /// <summary>The day.</summary>
    public DateOnly Day { get; }

    /// <summary>What does not count, or cannot hold as it stands.</summary>
    public ImmutableArray<string> Attention { get; }

    public void Write(bool all)
    {
        ImmutableArray<string> notes = [.. Attention, .. _attention.DueSoon];
        _terminal.Out.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{AnswerWords.Count(_windows.Count(item => item.Standing == WindowStanding.InForce), "window")} in force, {notes.Length} to attend to. {AnswerWords.Count(_register.Reports.Length, "report")}{(_register.Notices.IsEmpty ? "" : ", " + AnswerWords.Count(_register.Notices.Length, "notice"))}, as of {Day:yyyy-MM-dd}."
            )
        );
        WriteTable();
        WriteLines(notes, all, "! ");
        WriteOthers(all);
    }

    private void WriteTable()
    {
        var rows = new RegisterTable(_register, Day).Rows().ToImmutableArray();
        if (rows.IsEmpty)
        {
            return;
        }

        var widths = RegisterTable
            .Heads.Take(Measured)
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
            widths.Sum() + (2 * DayWidth) + rows.Max(row => TextLines.Length(row.Cells[^1]))
            <= _terminal.Width;
        if (isTable)
        {
            WriteRow(RegisterTable.Heads);
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
            : i < widths.Length + 2 ? DayWidth
            : 0;
    }

    private void WriteOthers(bool all)
    {
        var others = _windows
            .Where(item => item.Standing != WindowStanding.InForce)
            .GroupBy(item => item.Standing)
            .OrderByDescending(group => group.Key)
            .ToImmutableArray();
        var studies = _register.WithoutReport(Day);
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
            WrappedText.Write(_terminal, "  " + RegisterWords.Of(item), Detail);
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
}
