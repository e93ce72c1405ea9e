using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Bench;

/// <summary>Labels on sheets or one by one, with a line by which the scale of the printer is checked.</summary>
internal sealed class LabelPages(BenchStudy study, BenchPart.Labels part)
{
    private const double LineLength = 100;
    private static readonly double s_strip = Mm(11);

    public ImmutableArray<Action<PageCanvas, string>> Sheets()
    {
        var labels = BenchLabel.Of(study, part.Specimens);
        return part.Stock.IsSingle ? Single(labels) : OnSheets(labels);
    }

    /// <summary>What the smallest label has to measure where those of the stock are too small, in words; null where all fit.</summary>
    public static string? Fault(BenchStudy study, BenchPart.Labels part) =>
        BenchLabel
            .Of(study, part.Specimens)
            .Select(label => label.Needs(part.Stock.Width, part.Stock.Height))
            .OfType<(double Width, double Height)>()
            .ToImmutableArray()
            is { IsEmpty: false } needed
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"a label has to be at least {Math.Ceiling(needed.Max(item => item.Width) * 10) / 10:0.0} mm wide and {Math.Ceiling(needed.Max(item => item.Height) * 10) / 10:0.0} mm high for its code, its time and its symbol. The symbol holds the study code, {study.Protocol.Code.Length} characters long: a shorter one makes it smaller. For the other pages alone name them with --page"
            )
            : null;

    private ImmutableArray<Action<PageCanvas, string>> Single(ImmutableArray<BenchLabel> labels)
    {
        var frame = new PageFrame(Mm(part.Stock.Width), Mm(part.Stock.Height));
        return
        [
            .. labels.Select(label =>
                (Action<PageCanvas, string>)(
                    (canvas, _) =>
                    {
                        canvas.Enter([]);
                        canvas.StartPage(frame);
                        label.Draw(canvas, 0, 0, part.Stock.Width);
                    }
                )
            ),
        ];
    }

    private ImmutableArray<Action<PageCanvas, string>> OnSheets(ImmutableArray<BenchLabel> labels)
    {
        var (stock, page) = (part.Stock, Upright(study.Paper));
        var below = page.Frame.Height - Mm(stock.Top + stock.AllDown);
        double? strip =
            Mm(stock.Top) >= s_strip ? Mm(5.5)
            : below >= s_strip ? page.Frame.Height - Mm(9.5)
            : null;
        var places = labels
            .Select((label, i) => (Label: label, Place: stock.FirstLabel - 1 + i))
            .GroupBy(item => item.Place / stock.PerSheet);
        return
        [
            .. strip is null
                ? ImmutableArray.Create<Action<PageCanvas, string>>(
                    (canvas, _) =>
                    {
                        canvas.Enter([]);
                        canvas.StartPage(page.Frame);
                        Strip(canvas, page, Mm(20), "plain paper first, ");
                    }
                )
                : [],
            .. places.Select(sheet =>
                (Action<PageCanvas, string>)(
                    (canvas, _) =>
                    {
                        canvas.Enter([]);
                        canvas.StartPage(page.Frame);
                        if (strip is { } y)
                        {
                            Strip(canvas, page, y, "");
                        }

                        foreach (var (label, place) in sheet)
                        {
                            var on = place % stock.PerSheet;
                            label.Draw(
                                canvas,
                                Mm(
                                    stock.Left
                                        + (on % stock.Columns * (stock.Width + stock.GapAcross))
                                ),
                                Mm(
                                    stock.Top
                                        + (on / stock.Columns * (stock.Height + stock.GapDown))
                                ),
                                stock.Width
                            );
                        }
                    }
                )
            ),
        ];
    }

    private void Strip(PageCanvas canvas, SheetPage page, double top, string where)
    {
        var style = SheetText.Running;
        var right = page.Frame.Width - Mm(12);
        var left = right - Mm(LineLength);
        const string measure = "this line is 100 mm:";
        var words = string.Create(
            CultureInfo.InvariantCulture,
            $"{(where.Length == 0 ? study.Invented : "")}day {part.Day} · {where}print at 100 %"
        );
        canvas.Tagged(
            "P",
            () =>
            {
                canvas.Text(words + " ", style, Mm(12), top);
                canvas.Text(measure + " ", style, left - Mm(1.5) - style.Width(measure), top);
            }
        );
        canvas.Artifact(() =>
        {
            var y = top + (style.Leading / 2);
            canvas.Line(left, y, right, y, 0.6, TextStyle.Ink);
            foreach (
                var (x, half) in new[] { (left, 4.0), ((left + right) / 2, 2.0), (right, 4.0) }
            )
            {
                canvas.Line(x, y - half, x, y + half, 0.6, TextStyle.Ink);
            }
        });
    }
}
