using StabilityStudy.Core.Bench;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Bench;

/// <summary>The sheet at the draw and at the analyzer, printed before anything is known: one block a specimen, one row a test. A block is never split.</summary>
internal sealed class DrawSheet
{
    private static readonly double s_leastRow = Mm(7.1);
    private static readonly double s_usualRow = Mm(7.9);
    private const int MostBlocks = 6;

    private readonly BenchStudy _study;
    private readonly BenchPart.Draw _part;
    private readonly SheetPage _page;
    private readonly SheetTable _table;
    private readonly DrawnSpecimenCell _specimenCell;
    private readonly DrawNotes _notes;

    public DrawSheet(BenchStudy study, BenchPart.Draw part)
    {
        (_study, _part, _page) = (study, part, Lying(study.Paper));
        _table = new SheetTable(DrawColumns.Of(study, _page.IsLetter));
        _specimenCell = new(study, _table.Columns[0].Width - Mm(2));
        _notes = new DrawNotes(study, part.Specimens, _specimenCell);
    }

    public ImmutableArray<Action<PageCanvas, string>> Sheets()
    {
        var most = _part.Specimens.Max(specimen => Rows(specimen).Length);
        var room = SheetBlocks.Room(_page, _table, _notes.All());
        var least = Math.Max(most * s_leastRow, _specimenCell.Height);
        var fitting = Math.Clamp((int)Math.Floor(room / least), 1, MostBlocks);
        var blocks = EvenRows.Length(_part.Specimens.Length, fitting);
        var row = Math.Min(
            Math.Max(s_usualRow, _specimenCell.Height / most),
            room / (blocks * most)
        );
        var sheets = _part.Specimens.Chunk(blocks).ToImmutableArray();
        return
        [
            .. sheets.Select(
                (specimens, i) =>
                    (Action<PageCanvas, string>)(
                        (canvas, sheet) =>
                            DrawOne(canvas, sheet, [.. specimens], (i * blocks) + 1, row)
                    )
            ),
        ];
    }

    private void DrawOne(
        PageCanvas canvas,
        string sheet,
        ImmutableArray<BenchSpecimen> specimens,
        int first,
        double row
    )
    {
        var numbers = string.Create(
            CultureInfo.InvariantCulture,
            $"{(specimens.Length == 1 ? "specimen" : "specimens")} {first}{(specimens.Length > 1 ? $" to {first + specimens.Length - 1}" : "")}"
        );
        _page.Start(
            canvas,
            new RunningHeader(
                _study.Left,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"day {_part.Day} · date ____ - __ - __ · {sheet}: {numbers}"
                ),
                _study.Footer
            ),
            sheet
        );
        var top = SheetBlocks.Opening(
            canvas,
            _page,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{(_study.IsThawing ? "Thaw" : "Draw")} and test: day {_part.Day}, {numbers}"
            ),
            Mm(115),
            _notes.Opening
        );
        var end = _table.Draw(
            canvas,
            _page.Left,
            top,
            [.. specimens.SelectMany(specimen => Block(specimen, row))]
        );
        SheetBlocks.Notes(canvas, _page, end + Mm(3), _notes.All());
    }

    private static ImmutableArray<BenchTube> Rows(BenchSpecimen specimen) =>
        [
            .. specimen.Tubes.Where(tube =>
                tube.Storage is not { } storage || !RunListPlan.IsFrozen(storage)
            ),
        ];

    private IEnumerable<SheetRow> Block(BenchSpecimen specimen, double height)
    {
        var tubes = Rows(specimen);
        var row = Math.Max(height, _specimenCell.Height / tubes.Length);
        return tubes.Select(
            (tube, i) =>
                new SheetRow(
                    row,
                    [
                        i == 0
                            ? new SheetCell(
                                (canvas, room) => _specimenCell.Draw(canvas, specimen, room)
                            )
                            {
                                Rows = tubes.Length,
                                IsHead = true,
                            }
                            : null,
                        .. DrawColumns.Cells(_study, tube),
                    ]
                )
                {
                    IsHeavy = i == 0,
                }
        );
    }
}
