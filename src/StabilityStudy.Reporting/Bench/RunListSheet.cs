using StabilityStudy.Core.Bench;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Bench;

/// <summary>The delayed tubes of a day by the clock, in the order in which they fall due.</summary>
internal sealed class RunListSheet
{
    private const int MostRows = 24;
    private readonly BenchStudy _study;
    private readonly BenchPart.DueTubes _part;
    private readonly SheetPage _page;
    private readonly SheetTable _table;
    private readonly WallClock _clock;
    private readonly RunListRows _rows;
    private readonly double _room;

    public RunListSheet(BenchStudy study, BenchPart.DueTubes part)
    {
        (_study, _part, _page) = (study, part, Lying(study.Paper));
        _clock = new WallClock(study.Zone);
        _table = new SheetTable(RunListColumns.Of(study, _page.IsLetter));
        _rows = new RunListRows(study, _clock);
        _room = _page.Bottom - (SheetPage.Top + Mm(14)) - _table.HeadHeight - Mm(5);
    }

    public ImmutableArray<Action<PageCanvas, string>> Sheets() =>
        [
            .. Pages()
                .Select(page =>
                    (Action<PageCanvas, string>)((canvas, sheet) => DrawOne(canvas, sheet, page))
                ),
        ];

    private void DrawOne(PageCanvas canvas, string sheet, RunListPage page)
    {
        var clocks = string.Join(
            ", ",
            _study
                .Clocks.Where(clock => clock.Column is "collected_at" or "thawed_at" or "tested_at")
                .Select(clock =>
                    $"{clock.Description} ({(clock.Column == "tested_at" ? "test" : clock.Column == "thawed_at" ? "thawing" : "collection")})"
                )
        );
        _page.Start(
            canvas,
            new RunningHeader(
                _study.Left,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"day {_part.Day} · {_part.List.Day:yyyy-MM-dd} · printed after the {(_study.IsThawing ? "times of thawing" : "collection times")} were entered"
                ),
                $"{_study.Digest} · {_study.SeedWords}{(clocks.Length > 0 ? " · clock: " + clocks : "")}"
            ),
            sheet
        );
        var top = SheetBlocks.Opening(
            canvas,
            _page,
            (_study.IsPortions ? "Delayed portions by the clock: " : "Delayed tubes by the clock: ")
                + BenchWords.Date(page.Date),
            Mm(125),
            [.. Warnings(page), .. Words()]
        );
        var end = _table.Draw(canvas, _page.Left, top, _rows.Of(page));
        if (BenchWords.Keys(page.Groups, RunListColumns.GroupWidth, 1) is { Length: > 0 } keys)
        {
            SheetBlocks.Notes(
                canvas,
                _page,
                end + Mm(1.5),
                [
                    [(keys.Trim(), false)],
                ]
            );
        }
    }

    private IEnumerable<(string, bool)> Warnings(RunListPage page)
    {
        if (_part.Unread > 0)
        {
            yield return (
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{_part.Unread} {(_part.Unread == 1 ? "row" : "rows")} of tubes could not be read: tubes may be missing here."
                ),
                true
            );
        }

        if (page.WithoutTime.Length > 0)
        {
            yield return (
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Time missing: {page.WithoutTime.Length} {(page.WithoutTime.Length == 1 ? "tube" : "tubes")}, in the first rows; their times count from collection."
                ),
                true
            );
        }

        if (page.Runs.SelectMany(run => run.Tubes).Any(Changes))
        {
            yield return (
                "Clocks are changed while these tubes wait: the times are those on the wall.",
                true
            );
        }
    }

    private bool Changes(DueTube tube) => _clock.Changes(tube.StartedAt, tube.Until);

    private IEnumerable<(string, bool)> Words() =>
        [
            ("Top to bottom is the order in which tubes fall due. Tubes beside one", false),
            ("load together", true),
            ("time go as one load, lowest run order first.", false),
            ("If a tube is about to pass its last time, test it first", true),
            (
                "and say why."
                    + (_study.IsThawing ? "" : PlannedHandling.AtTheCentrifuge(_study.Protocol)),
                false
            ),
        ];

    /// <summary>Whole loads, at most so many rows a page, and a page for each date.</summary>
    private ImmutableArray<RunListPage> Pages()
    {
        var pages = ImmutableArray.CreateBuilder<RunListPage>();
        var page = new RunListPage(_part.List.Day, [], []);
        var waiting = _part.List.WithoutTime;
        for (var i = 0; i < waiting.Length; i++)
        {
            if (page.WithoutTime.Length == MostRows)
            {
                pages.Add(page);
                page = page with { WithoutTime = [] };
            }

            page = page with { WithoutTime = page.WithoutTime.Add(waiting[i]) };
        }

        foreach (var run in _part.List.Runs)
        {
            var begun = false;
            foreach (var load in run.Loads.SelectMany(Parts))
            {
                var tubes = run.Tubes.Slice(load.First, load.Count);
                var date = _clock.DateOf(tubes[0].From);
                var longer = page.With(run, tubes, load, begun);
                if (
                    page.IsEmpty
                    || date == page.Date
                        && longer.Count <= MostRows
                        && _rows.HeightOf(longer) <= _room
                )
                {
                    page = longer with
                    {
                        Date = page.IsEmpty && page.WithoutTime.IsEmpty ? date : page.Date,
                    };
                }
                else
                {
                    pages.Add(page);
                    page = new RunListPage(date, [], []).With(run, tubes, load, begun);
                }

                begun = true;
            }
        }

        pages.Add(page);
        return pages.ToImmutable();
    }

    /// <summary>A load that a page cannot hold is written in parts with the same span.</summary>
    private static IEnumerable<Load> Parts(Load load) =>
        Enumerable
            .Range(0, (load.Count + MostRows - 1) / MostRows)
            .Select(i =>
                load with
                {
                    First = load.First + (i * MostRows),
                    Count = Math.Min(MostRows, load.Count - (i * MostRows)),
                }
            );
}
