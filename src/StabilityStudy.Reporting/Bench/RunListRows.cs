using PdfSharp.Drawing;
using StabilityStudy.Core.Bench;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Bench;

/// <summary>Columns of the run list.</summary>
internal static class RunListColumns
{
    /// <summary>Room for the name of a group.</summary>
    public static readonly double GroupWidth = Mm(31);

    /// <summary>The columns; on the narrower paper the remark gives way.</summary>
    public static ImmutableArray<SheetColumn> Of(BenchStudy study, bool isNarrow) =>
        [
            new("Run", Mm(27)),
            new(study.IsPortions ? "Portion" : "Tube", Mm(21)),
            new("Group", Mm(33)),
            new(study.IsThawing ? "Thawed" : "Col-\nlected", Mm(11.5)),
            new("Spin\nfrom", Mm(13)) { IsStrong = true },
            new("Test\nfrom", Mm(13)) { IsStrong = true },
            new("Last\ntime", Mm(13)) { IsStrong = true },
            new("Load\ntogether", Mm(16)) { Part = "" },
            new("Run\norder", Mm(11)),
            new("Spin\nbegan", Mm(16)),
            new("Tested", Mm(16)),
            new("Hemol-\nysis", Mm(16)),
            new("Clot", Mm(8)),
            new("Remark", Mm(isNarrow ? 22.9 : 40)),
            new("Initials", Mm(isNarrow ? 14 : 14.5)),
        ];
}

/// <summary>Rows of the run list.</summary>
/// <param name="study">The study.</param>
/// <param name="clock">The clock on the wall.</param>
internal sealed class RunListRows(BenchStudy study, WallClock clock)
{
    private static readonly double s_row = Mm(6.15);
    private static readonly double s_tallRow = Mm(8.8);
    private static readonly double s_runName = Mm(6.8);
    private static readonly double s_runTicks = Mm(14.6);

    /// <summary>The rows of a page.</summary>
    public ImmutableArray<SheetRow> Of(RunListPage page) =>
        [.. WithoutTime(page), .. page.Runs.SelectMany(run => Rows(run, page.Date))];

    /// <summary>Their height.</summary>
    public double HeightOf(RunListPage page) => Of(page).Sum(row => row.Height);

    private IEnumerable<SheetRow> WithoutTime(RunListPage page) =>
        page.WithoutTime.Select(
            (tube, i) =>
            {
                var (from, until) = (
                    tube.TimePoint.Delay - study.Protocol.Tolerance.Early,
                    tube.TimePoint.Delay + study.Protocol.Tolerance.LateAt(tube.TimePoint)
                );
                var spin = SpinTime.Of(study.Protocol, tube.Group, tube.Storage, tube.TimePoint);
                return new SheetRow(
                    s_row,
                    [
                        SheetCell.Of($"{tube.TimePoint}, time missing", SheetText.Small) with
                        {
                            IsHead = true,
                        },
                        .. Named(tube),
                        SheetCell.Of("__:__", SheetText.Cell),
                        Time(spin.From is { } begin ? BenchWords.Offset(begin) : "–"),
                        Time(BenchWords.Offset(from)),
                        Time(BenchWords.Offset(until)),
                        SheetCell.Of("–", SheetText.Cell),
                        SheetCell.Of("–", SheetText.Cell, isCentered: true),
                        .. ToWrite(spin.From is not null),
                    ]
                )
                {
                    IsHeavy = i == 0,
                };
            }
        );

    private IEnumerable<SheetRow> Rows(RunPart part, DateOnly date)
    {
        var texts = part
            .Tubes.Select(tube => Times(tube, date).ToImmutableArray())
            .ToImmutableArray();
        var isFirst = part.Run.IsFirst && !part.IsContinued;
        var least = (s_runName + (isFirst && HasTicks ? s_runTicks : 0)) / part.Tubes.Length;
        var starts = part.Loads.Aggregate(
            ImmutableArray<(int At, Load Load)>.Empty,
            (all, load) => all.Add((all.Sum(item => item.Load.Count), load))
        );
        return part.Tubes.Select(
            (tube, i) =>
                new SheetRow(
                    Math.Max(
                        texts[i].Any(text => text.Contains('\n', StringComparison.Ordinal))
                            ? s_tallRow
                            : s_row,
                        least
                    ),
                    [
                        i == 0
                            ? new SheetCell((canvas, room) => DrawRun(canvas, part, isFirst, room))
                            {
                                Rows = part.Tubes.Length,
                                IsHead = true,
                            }
                            : null,
                        .. Named(tube.Waiting),
                        SheetCell.Of(texts[i][0], SheetText.Cell),
                        .. texts[i].Skip(1).Select(Time),
                        starts.FirstOrDefault(item => item.At == i) is { Load: { } load }
                            ? SheetCell.Of(
                                Span(load, date),
                                load.Count == 1 ? SheetText.StrongSmall : SheetText.StrongCell
                            ) with
                            {
                                Rows = load.Count,
                            }
                            : null,
                        SheetCell.Of(
                            tube.RunOrder.ToString(CultureInfo.InvariantCulture),
                            SheetText.TubeCode,
                            isCentered: true
                        ),
                        .. ToWrite(tube.SpinFrom is not null),
                    ]
                )
                {
                    IsHeavy = i == 0,
                }
        );
    }

    private bool HasTicks => study.Protocol.Controls == ControlRule.EveryRun;

    private IEnumerable<string> Times(DueTube tube, DateOnly date) =>
        [
            clock.Words(tube.StartedAt, date),
            tube.SpinFrom is { } spin ? clock.Words(spin, date) : "–",
            clock.Words(tube.From, date),
            clock.Words(tube.Until, date),
        ];

    private string Span(Load load, DateOnly date) =>
        $"{clock.Words(load.From, date).Replace('\n', ' ')} to {clock.Words(load.Until, date).Replace('\n', ' ')}";

    private static SheetCell Time(string text) =>
        text.Contains('\n', StringComparison.Ordinal)
            ? SheetCell.Of(text, SheetText.StrongCell)
            : SheetCell.Of(text, SheetText.TubeCode);

    private static ImmutableArray<SheetCell?> Named(WaitingTube tube) =>
        [
            SheetCell.Of(
                tube.Tube is { } code
                    ? code + (tube.InPlaceOf is { } other ? $" for {other}" : "")
                    : $"{tube.Specimen}-__",
                tube.InPlaceOf is null ? SheetText.TubeCode : SheetText.StrongHead
            ),
            SheetCell.Of(
                BenchWords.Group(tube.Group, RunListColumns.GroupWidth, 1),
                SheetText.Small
            ),
        ];

    private static ImmutableArray<SheetCell?> ToWrite(bool isSpun) =>
        [
            isSpun ? SheetCell.Clock : SheetCell.Of("–", SheetText.Cell),
            SheetCell.Clock,
            SheetCell.Grades,
            SheetCell.Tick,
            SheetCell.Line,
            SheetCell.Line,
        ];

    private void DrawRun(PageCanvas canvas, RunPart part, bool isFirst, XRect room)
    {
        var name = $"{part.Run.TimePoint}";
        canvas.Text(name + " ", SheetText.RunName, room.X, room.Y + Mm(0.4));
        var words =
            (study.Protocol.Storages.Length > 1 ? part.Run.Storage.Id : "")
            + (isFirst ? "" : " continued");
        canvas.Text(
            SheetText.Shortened(
                words.Trim(),
                SheetText.Small,
                room.Width - SheetText.RunName.Width(name) - Mm(1.5)
            ) + " ",
            SheetText.Small,
            room.X + SheetText.RunName.Width(name) + Mm(1.5),
            room.Y + Mm(1.8)
        );
        if (!isFirst || !HasTicks)
        {
            return;
        }

        var y = room.Y + Mm(6.2);
        foreach (var ticked in new[] { "controls in range", "bridging plasma" })
        {
            canvas.Text(ticked + " ", SheetText.Small, room.X, y);
            for (var i = 0; i < 2; i++)
            {
                var (x, middle) = (room.X + (i * Mm(8)), y + Mm(5.2));
                Boxes.Tick(canvas, x, middle);
                canvas.Text(
                    i == 0 ? "1 " : "2 ",
                    SheetText.Small,
                    x + Boxes.TickWidth + Mm(0.8),
                    middle - (SheetText.Small.Leading / 2)
                );
            }

            y += Mm(7.1);
        }
    }
}
