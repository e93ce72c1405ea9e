using PdfSharp.Drawing;
using StabilityStudy.Core.Bench;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Bench;

/// <summary>Where the tubes wait: the lowest and the highest temperature, which the study needs, and not only that of the moment.</summary>
internal sealed class TemperatureSheet(BenchStudy study)
{
    private static readonly double s_row = Mm(8.2);
    private static readonly double s_boxHeight = Mm(6.2);
    private static readonly double s_boxWidth = Mm(15);
    private static readonly double s_frameHeight = Mm(25);
    private static readonly TimeSpan s_day = TimeSpan.FromDays(1);

    private readonly SheetPage _page = Upright(study.Paper);

    public ImmutableArray<Action<PageCanvas, string>> Sheets() =>
        [
            .. study
                .Protocol.Storages.Where(storage => !Times(storage).IsEmpty)
                .SelectMany(storage =>
                {
                    var times = Times(storage);
                    var room = _page.Bottom - s_frameHeight - Mm(9) - Mm(57);
                    var most = Math.Max(1, (int)Math.Floor(room / ((times.Length + 1) * s_row)));
                    var planned = SpecimenCode.DaysOf(study.Protocol);
                    return Enumerable
                        .Range(1, planned)
                        .Chunk(EvenRows.Length(planned, most))
                        .Select(days =>
                            (Action<PageCanvas, string>)(
                                (canvas, sheet) => DrawOne(canvas, sheet, storage, times, days)
                            )
                        );
                }),
        ];

    private ImmutableArray<TimePoint> Times(Storage storage) =>
        [
            .. study
                .Protocol.Groups.SelectMany(group => DrawPlan.TestsOf(study.Protocol, group.Id))
                .Where(test => test.Storage == storage)
                .Select(test => test.Occasion.TimePoint)
                .OfType<TimePoint>()
                .Distinct()
                .OrderBy(time => time.Delay),
        ];

    private void DrawOne(
        PageCanvas canvas,
        string sheet,
        Storage storage,
        ImmutableArray<TimePoint> times,
        int[] days
    )
    {
        var range = BenchWords.Range(storage);
        _page.Start(
            canvas,
            new RunningHeader(
                study.Left,
                $"storage {storage.Id}: {TradeWords.Of(storage)}",
                study.Digest
            ),
            sheet
        );
        var y = SheetPage.Top + Mm(1);
        canvas.Tagged(
            "H1",
            () =>
                canvas.Text(
                    $"Temperature where the {Waiting(plural: true)} wait: {range} °C",
                    SheetText.Title,
                    _page.Left,
                    y
                )
        );
        var words = RichText.Break(
            "",
            $"Read at the first {Waiting(plural: false)}, and whenever a run begins. Write the lowest and the highest since the last reading, then reset.",
            TextStyle.Lead,
            _page.Width
        );
        canvas.Tagged("P", () => words.Draw(canvas, _page.Left, y + Mm(8)));
        Facts(canvas, y + Mm(20));
        var end = Table(range)
            .Draw(canvas, _page.Left, y + Mm(34), [.. days.SelectMany(day => Day(day, times))]);
        Frame(canvas, end + Mm(3.5));
    }

    private void Facts(PageCanvas canvas, double top)
    {
        var middle = _page.Left + Mm(92);
        Written(canvas, "Place (rack, room, freezer)", _page.Left, middle - Mm(7), top);
        Written(canvas, "Device, number", middle, _page.Right, top);
        Written(canvas, "Calibrated; valid until", _page.Left, middle - Mm(7), top + Mm(7));
        Written(
            canvas,
            "Clock of the device agrees with the analyzer within",
            middle,
            _page.Right,
            top + Mm(7)
        );
    }

    private static void Written(
        PageCanvas canvas,
        string words,
        double left,
        double right,
        double top
    ) =>
        canvas.Tagged(
            "P",
            () =>
            {
                canvas.Text(words + " ", SheetText.Note, left, top);
                var from = left + SheetText.Note.Width(words) + Mm(1.5);
                Boxes.Line(canvas, from, top + Mm(4), right - from);
            }
        );

    private static SheetTable Table(string range) =>
        new([
            new("Date", Mm(28)),
            new("When", Mm(21)),
            new("Time", Mm(17)),
            new("Now, °C", Mm(19)),
            new("Lowest, °C", Mm(19)) { IsStrong = true },
            new("Highest, °C", Mm(19)) { IsStrong = true },
            new("Reset", Mm(11)),
            new($"All {range}?", Mm(25)),
            new("Initials", Mm(17)),
        ]);

    private IEnumerable<SheetRow> Day(int day, ImmutableArray<TimePoint> times) =>
        Enumerable
            .Range(0, times.Length + 1)
            .Select(i => new SheetRow(
                s_row,
                [
                    i == 0
                        ? new SheetCell((canvas, room) => Date(canvas, day, room))
                        {
                            Rows = times.Length + 1,
                            IsHead = true,
                        }
                        : null,
                    i == 0
                        ? SheetCell.Of($"first {Waiting(plural: false)}", SheetText.Cell)
                        : SheetCell.Of(
                            $"{times[i - 1]} run"
                                + (times[i - 1].Delay >= s_day ? "\ndate _______" : ""),
                            SheetText.Cell
                        ),
                    SheetCell.Clock,
                    Box,
                    i == 0 ? SheetCell.Of("–", SheetText.Cell) : Box,
                    i == 0 ? SheetCell.Of("–", SheetText.Cell) : Box,
                    SheetCell.Tick,
                    SheetCell.Row(
                        (0, SheetCell.Tick),
                        (Mm(4.2), SheetCell.Of("yes", SheetText.Cell)),
                        (Mm(11), SheetCell.Tick),
                        (Mm(15.2), SheetCell.Of("no", SheetText.StrongCell))
                    ),
                    SheetCell.Line,
                ]
            )
            {
                IsHeavy = i == 0,
            });

    private string Waiting(bool plural) =>
        (study.IsPortions ? "portion" : "tube") + (plural ? "s" : "");

    private static SheetCell Box { get; } =
        new(
            (canvas, room) =>
                Boxes.Frame(canvas, room.X, room.Y + (room.Height / 2), s_boxWidth, s_boxHeight)
        );

    private static void Date(PageCanvas canvas, int day, XRect room)
    {
        canvas.Text(
            string.Create(CultureInfo.InvariantCulture, $"Day {day} "),
            SheetText.TubeCode,
            room.X,
            room.Y + Mm(1.6)
        );
        Boxes.Line(canvas, room.X, room.Y + Mm(13), room.Width - Mm(2));
    }

    private void Frame(PageCanvas canvas, double top)
    {
        var (left, width) = (_page.Left + Mm(2), _page.Width - Mm(4));
        canvas.Artifact(() =>
            Boxes.Frame(canvas, _page.Left, top + (s_frameHeight / 2), _page.Width, s_frameHeight)
        );
        var words = RichText.Break(
            [
                ("Any “no”:", true),
                (
                    $"leave the {Waiting(plural: true)} where they are until someone decides; do not write a nicer number. Note which {Waiting(plural: true)} and for how long. Tell the lab scientist in charge before the next run. Whether a pair is left out is decided and dated",
                    false
                ),
                ("before its result is known.", true),
            ],
            SheetText.Note,
            width
        );
        canvas.Tagged("P", () => words.Draw(canvas, left, top + Mm(1.4)));
        canvas.Tagged("P", () => Decision(canvas, left, top + s_frameHeight - Mm(5)));
        canvas.Tagged(
            "P",
            () =>
                canvas.Text(
                    "Blood is handled under standard precautions. Local rules prevail.",
                    TextStyle.Small,
                    _page.Left,
                    top + s_frameHeight + Mm(1.5)
                )
        );
    }

    private void Decision(PageCanvas canvas, double left, double middle)
    {
        var style = SheetText.Note;
        var x = left;
        Words(study.IsPortions ? "Portions" : "Tubes");
        Boxes.Line(canvas, x, middle + Mm(1.6), Mm(58));
        x += Mm(60);
        Words("from");
        Boxes.Clock(canvas, x, middle);
        x += Boxes.ClockWidth + Mm(1.5);
        Words("to");
        Boxes.Clock(canvas, x, middle);
        x += Boxes.ClockWidth + Mm(2.5);
        Words("decided by");
        Boxes.Line(canvas, x, middle + Mm(1.6), _page.Right - Mm(3) - x);

        void Words(string text)
        {
            canvas.Text(text + " ", style, x, middle - (style.Leading / 2));
            x += style.Width(text) + Mm(1.2);
        }
    }
}
