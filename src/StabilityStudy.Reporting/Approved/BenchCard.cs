using PdfSharp.Drawing;
using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Bench;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Approved.ApprovedWords;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Approved;

/// <summary>The card on the wall: the group that is not known first and in black, then from the shortest window to the longest, last every other group.</summary>
internal sealed class BenchCard
{
    private static readonly double s_padding = Mm(1.8);
    private static readonly double s_bleed = Mm(3);
    private static readonly double s_headHeight = Mm(6);
    private const int MostGroups = 5;
    private const double Rule = 1.4;

    private readonly BenchRules _rules;
    private readonly SheetPage _page;
    private readonly CardColumns _columns;
    private readonly CardFoot _foot;
    private readonly CardRow _unknown;
    private readonly ImmutableArray<CardRow> _rows;

    /// <summary>A card for some rules.</summary>
    public BenchCard(BenchRules rules, PaperSize paper)
    {
        _rules = rules;
        var frame = SheetPage.Lying(paper).Frame;
        _page = new SheetPage(frame, Mm(11), frame.Width - Mm(11));
        _columns = new CardColumns(_page.Left, _page.Width);
        _foot = new CardFoot(rules, _page);
        _unknown = new CardRow(rules, rules.Rules[0], _columns, isBlack: true);
        _rows =
        [
            .. rules
                .Rules.Skip(1)
                .Select(rule => new CardRow(rules, rule, _columns, isBlack: false)),
        ];
    }

    /// <summary>The sheets; each has the black row.</summary>
    public ImmutableArray<Action<PageCanvas, string>> Sheets() =>
        [
            .. Pages()
                .Select(rows =>
                    (Action<PageCanvas, string>)((canvas, sheet) => DrawOne(canvas, sheet, rows))
                ),
        ];

    private static double Top => SheetPage.Top + Mm(11);

    private ImmutableArray<ImmutableArray<CardRow>> Pages()
    {
        var room = _foot.Top - Mm(1) - Top - s_headHeight - Height(_unknown);
        var pages = ImmutableArray.CreateBuilder<ImmutableArray<CardRow>>();
        var page = ImmutableArray.CreateBuilder<CardRow>();
        foreach (var row in _rows)
        {
            if (
                page.Count > 0
                && (page.Count == MostGroups || page.Sum(Height) + Height(row) > room)
            )
            {
                pages.Add(page.DrainToImmutable());
            }

            page.Add(row);
        }

        pages.Add(page.DrainToImmutable());
        return pages.DrainToImmutable();
    }

    private static double Height(CardRow row) => row.Height + (2 * s_padding);

    private void DrawOne(PageCanvas canvas, string sheet, ImmutableArray<CardRow> rows)
    {
        _page.Start(
            canvas,
            new RunningHeader(
                $"{Invented(_rules)}bench card · {Subject(_rules)}",
                Valid(_rules),
                ""
            ),
            sheet
        );
        var title = $"{_rules.Analyte}: how old may the tube be?";
        canvas.Tagged(
            "H1",
            () => canvas.Text(title + " ", CardText.Title, _page.Left, SheetPage.Top - Mm(1))
        );
        var words = $"{Storage(_rules)}. Age = test − {Origin(_rules)}.";
        var left = _page.Left + CardText.Title.Width(title) + Mm(8);
        var lines = LineBreaking.Break(words, CardText.Cell, _page.Right - left);
        canvas.Tagged(
            "P",
            () =>
                canvas.Lines(
                    lines,
                    CardText.Cell,
                    _page.Right - lines.Max(CardText.Cell.Width),
                    SheetPage.Top + Mm(lines.Length > 1 ? -1.5 : 1.6)
                )
        );
        var table = new Tag("Table", isGrouping: true);
        canvas.Enter([table, new Tag("TR", isGrouping: true)]);
        _columns.DrawHeads(canvas, Top);
        var y = Top + s_headHeight;
        foreach (var (i, row) in rows.Prepend(_unknown).Index())
        {
            canvas.Enter([table, new Tag("TR", isGrouping: true)]);
            var top = y;
            canvas.Artifact(() =>
            {
                if (row.IsBlack)
                {
                    var band = new XGraphicsPath();
                    band.AddRectangle(
                        _page.Left - s_bleed,
                        top,
                        _page.Width + (2 * s_bleed),
                        Height(row)
                    );
                    canvas.Fill(band, TextStyle.Ink);
                }
                else if (i > 1)
                {
                    canvas.Line(_page.Left, top, _page.Right, top, Rule, TextStyle.Ink);
                }
            });
            row.Draw(canvas, y + s_padding);
            y += Height(row);
        }

        canvas.Artifact(() => canvas.Line(_page.Left, y, _page.Right, y, Rule, TextStyle.Ink));
        canvas.Enter([]);
        _foot.Draw(canvas, y + Mm(2));
    }
}
