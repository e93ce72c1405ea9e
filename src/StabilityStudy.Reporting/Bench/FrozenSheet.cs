using PdfSharp.Drawing;
using StabilityStudy.Core.Bench;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Bench;

/// <summary>Freezing and thawing of the portions of a planned time. It is written at two sittings, so a thick upright divides them.</summary>
internal sealed class FrozenSheet
{
    private static readonly double s_usualRow = Mm(12.5);
    private static readonly double s_leastRow = Mm(8.6);

    private readonly BenchStudy _study;
    private readonly BenchPart.Frozen _part;
    private readonly SheetPage _page;
    private readonly WallClock _clock;

    public FrozenSheet(BenchStudy study, BenchPart.Frozen part)
    {
        (_study, _part, _page) = (study, part, Lying(study.Paper));
        _clock = new WallClock(study.Zone);
    }

    public ImmutableArray<Action<PageCanvas, string>> Sheets()
    {
        var room = SheetBlocks.Room(_page, Table(TimeSpan.Zero, TimeSpan.Zero), Notes);
        var most = (int)Math.Floor(room / s_leastRow);
        return
        [
            .. _part
                .Specimens.SelectMany(specimen =>
                    specimen
                        .Tubes.Where(tube =>
                            tube.Storage is { } storage && RunListPlan.IsFrozen(storage)
                        )
                        .Select(tube => (Specimen: specimen, Tube: tube))
                )
                .GroupBy(item => (item.Tube.Storage, item.Tube.Occasion))
                .OrderBy(group => group.Key.Occasion.TimePoint?.Delay)
                .SelectMany(group =>
                    group
                        .Chunk(EvenRows.Length(group.Count(), most))
                        .Select(rows =>
                            (Action<PageCanvas, string>)(
                                (canvas, sheet) => DrawOne(canvas, sheet, [.. rows], room)
                            )
                        )
                ),
        ];
    }

    private void DrawOne(
        PageCanvas canvas,
        string sheet,
        ImmutableArray<(BenchSpecimen Specimen, BenchTube Tube)> rows,
        double room
    )
    {
        var first = rows[0].Tube;
        var storage =
            first.Storage ?? throw new InvalidOperationException("A frozen portion has a storage.");
        _page.Start(
            canvas,
            new RunningHeader(
                _study.Left,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"day {_part.Day} · date ____ - __ - __ · storage {storage.Id}: plasma, {BenchWords.Range(storage)} °C · time point {first.Occasion}"
                ),
                $"{_study.Digest} · {_study.SeedWords} · portion A (fresh) stands on the draw sheet"
            ),
            sheet
        );
        var top = SheetBlocks.Opening(
            canvas,
            _page,
            $"Freeze and thaw: {(_study.IsPortions ? "portion" : "tube")} {BenchWords.Letters(rows.Select(row => row.Tube.Letter))}, {first.Occasion}",
            Mm(115),
            [
                (PlannedHandling.AtTheFreezer(_study.Protocol), false),
                ("Never thaw twice; never refreeze.", true),
                ("Thawed by itself or lost in the freezer: write it down. It counts.", false),
            ]
        );
        var height = Math.Min(s_usualRow, room / rows.Length);
        var end = Table(first.Earliest, first.Latest)
            .Draw(
                canvas,
                _page.Left,
                top,
                [
                    .. rows.Select(
                        (row, i) =>
                            new SheetRow(height, Cells(row.Specimen, row.Tube)) { IsHeavy = i == 0 }
                    ),
                ]
            );
        SheetBlocks.Notes(canvas, _page, end + Mm(3), Notes);
    }

    private FreezingRules? Freezing => _study.Protocol.Freezing;

    /// <summary>Where the protocol does not say, two spins are usual, and what is not done stays blank.</summary>
    private bool IsSpunOnce => _study.Protocol.Spin is { Spins: 1 };

    private string Platelets =>
        _study.Protocol.Spin?.PlateletsBelow is { } most
            ? $"{NumberText.Plain(most)} × 10⁹/L (protocol)"
            : "10 × 10⁹/L (common practice; your procedure prevails)";

    private static string Bath(CelsiusRange range) =>
        range.Lowest == range.Highest
            ? NumberText.Plain(range.Lowest)
            : $"{NumberText.Plain(range.Lowest)}–{NumberText.Plain(range.Highest)}";

    private SheetTable Table(TimeSpan earliest, TimeSpan latest)
    {
        var narrow = _page.IsLetter;
        var spin = Mm(narrow ? 15 : 17);
        return new([
            new(_study.IsPortions ? "Portion" : "Tube", Mm(20)),
            new("Collected", Mm(16)),
            new(IsSpunOnce ? "Spin\nbegan" : "1st spin\nbegan", spin) { Part = "Before freezing" },
            .. IsSpunOnce
                ? ImmutableArray<SheetColumn>.Empty
                : [new SheetColumn("2nd spin\nbegan", spin)],
            new("Platelets,\n10⁹/L", Mm(narrow ? 14 : 15)),
            new("Frozen", Mm(narrow ? 15 : 17)) { IsStrong = true },
            new("Freeze\nby", Mm(12)),
            new("Box,\nplace", Mm(narrow ? 17.5 : 18) + (IsSpunOnce ? spin : 0)),
            new("Thaw on or after\n(date and time)", Mm(narrow ? 34 : 38))
            {
                Part =
                    $"Between {BenchWords.Offset(earliest)} and {BenchWords.Offset(latest)} after collection",
            },
            new("Thaw\nbegan", Mm(narrow ? 15 : 17)) { IsStrong = true },
            new(Freezing is null ? "Bath,\n°C" : "Bath, °C\n" + Bath(Freezing.ThawCelsius), Mm(12)),
            new("Clear", Mm(narrow ? 9 : 10)),
            new("Test\nwithin", Mm(13)),
            new("Tested", Mm(narrow ? 15 : 17)),
            new("Run\norder", Mm(narrow ? 11.4 : 13)),
            new("Initials", Mm(narrow ? 17.5 : 17)),
        ]);
    }

    private ImmutableArray<SheetCell?> Cells(BenchSpecimen specimen, BenchTube tube)
    {
        var collected = _part.CollectedAt.TryGetValue(specimen.Code, out var at);
        return
        [
            SheetCell.Of(tube.Code, SheetText.TubeCode) with
            {
                IsHead = true,
            },
            collected
                ? SheetCell.Of(_clock.Words(at, DateOnly.MinValue), SheetText.Cell)
                : SheetCell.Clock,
            .. Enumerable.Repeat(SheetCell.Clock, IsSpunOnce ? 1 : 2),
            SheetCell.Number,
            SheetCell.Clock,
            SheetCell.Of(
                Freezing is null ? "+__:__"
                    : collected ? _clock.Words(at + Freezing.Within, _clock.DateOf(at))
                    : BenchWords.Offset(Freezing.Within),
                SheetText.Cell
            ),
            SheetCell.Number,
            collected
                ? SheetCell.Of(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{_clock.DateOf(at + tube.Earliest):yyyy-MM-dd} {_clock.Words(at + tube.Earliest, _clock.DateOf(at + tube.Earliest)).Replace('\n', ' ')}"
                    ),
                    SheetText.StrongCell
                )
                : new SheetCell(
                    (canvas, room) =>
                    {
                        var middle = room.Y + (room.Height / 2);
                        Boxes.Line(canvas, room.X, middle + Mm(1.8), Mm(16));
                        Boxes.Clock(canvas, room.X + Mm(17.5), middle);
                    }
                ),
            SheetCell.Clock,
            SheetCell.Number,
            SheetCell.Tick,
            SheetCell.Of(
                Freezing is null ? "____ h"
                    : Freezing.TestWithin is { } within ? DurationText.Format(within)
                    : "–",
                SheetText.Cell
            ),
            SheetCell.Clock,
            SheetCell.Of(
                tube.RunOrder.ToString(CultureInfo.InvariantCulture),
                SheetText.TubeCode,
                isCentered: true
            ),
            SheetCell.Line,
        ];
    }

    // Common practice: residual platelets under 10 × 10⁹/L; cold precipitates dissolve in the bath.
    private ImmutableArray<ImmutableArray<(string Text, bool IsStrong)>> Notes =>
        [
            [
                ("Platelets", true),
                (
                    $"under {Platelets} before freezing; otherwise spin again before freezing and note it.{PlannedHandling.AtTheCentrifuge(_study.Protocol)}",
                    false
                ),
            ],
            [
                ("Clear:", true),
                (
                    "no flakes after mixing. Flakes: back to the bath as your procedure says, then test and note it.",
                    false
                ),
            ],
            [
                ("Freezer record:", true),
                ("lowest and highest since the last reading, on the temperature sheet.", false),
            ],
        ];
}
