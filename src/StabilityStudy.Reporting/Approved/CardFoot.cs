using PdfSharp.Drawing;
using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Bench;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Approved.ApprovedWords;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Approved;

/// <summary>What holds for every row of the bench card, and where the card comes from.</summary>
internal sealed class CardFoot
{
    private static readonly double s_gap = Mm(7);
    private static readonly double s_symbol = Mm(10.8);
    private static readonly double s_signed = Mm(64);

    private readonly BenchRules _rules;
    private readonly SheetPage _page;
    private readonly ImmutableArray<RichText> _lines;
    private readonly RichText _source;

    public CardFoot(BenchRules rules, SheetPage page)
    {
        (_rules, _page) = (rules, page);
        _lines =
        [
            RichText.Break(
                $"No time of {Origin(rules)}:",
                "do not test. Ask for it, or for a new tube.",
                CardText.Cell,
                Width(0)
            ),
            RichText.Break(
                TradeWords.Capital(Unfit(rules)) + ":",
                "do not test.",
                CardText.Cell,
                Width(1)
            ),
            RichText.Break("Other lot, analyzer or tube:", Other(), CardText.Cell, Width(2)),
        ];
        _source = RichText.Break(
            [
                ("From report", false),
                (Reports(rules) + ".", true),
                (
                    $"{ApprovedBy(rules)} Made from the register as of {Day(rules.Day)}; a newer card replaces this one, and it ends when a report is withdrawn. Spin times leave this bench {Time(rules.SpinTakes)} to the test. {Modified(rules)}For qualified staff; the director decides. Local rules prevail.",
                    false
                ),
            ],
            CardText.Source,
            page.Width - s_symbol - Mm(5) - s_signed - Mm(6)
        );
    }

    /// <summary>Where it begins at the latest.</summary>
    public double Top => SourceTop - Mm(2.5) - _lines.Max(line => line.Height);

    /// <summary>The last of the three has most to say.</summary>
    private double Width(int line) => (_page.Width - (2 * s_gap)) * (line == 2 ? 0.44 : 0.28);

    private double SourceTop => _page.Frame.Height - Mm(10) - Math.Max(_source.Height, s_symbol);

    /// <summary>Draws what holds for all rows below them, and the source at the foot of the page.</summary>
    public void Draw(PageCanvas canvas, double top)
    {
        var left = _page.Left;
        foreach (var (i, line) in _lines.Index())
        {
            canvas.Tagged("P", () => line.Draw(canvas, left, Math.Min(top, Top)));
            left += Width(i) + s_gap;
        }

        canvas.Artifact(() =>
            canvas.Line(
                _page.Left,
                SourceTop - Mm(1.6),
                _page.Right,
                SourceTop - Mm(1.6),
                0.4,
                TextStyle.Hairline
            )
        );
        var text = _rules.Reports.FirstOrDefault()?.Name ?? _rules.Analyte;
        if (text.All(char.IsAscii))
        {
            var area = new XRect(_page.Left, SourceTop, s_symbol, s_symbol);
            canvas.Illustration(
                $"Data Matrix: {text}",
                area,
                () => DataMatrixSymbol.Of(text).Draw(canvas, area)
            );
        }

        canvas.Tagged(
            "P",
            () => _source.Draw(canvas, _page.Left + s_symbol + Mm(5), SourceTop - 1)
        );
        canvas.Tagged("P", () => Posted(canvas, _page.Right - s_signed, SourceTop));
    }

    private void Posted(PageCanvas canvas, double left, double top)
    {
        var style = CardText.Source;
        canvas.Text("Posted by ", style, left, top);
        var first = left + style.Width("Posted by ") + Mm(1);
        Boxes.Line(canvas, first, top + style.Leading - 1, Mm(22));
        canvas.Text("on ", style, first + Mm(23), top);
        var second = first + Mm(23) + style.Width("on ") + Mm(1);
        Boxes.Line(canvas, second, top + style.Leading - 1, _page.Right - second);
        var until = _rules.Until is { } day ? Day(day) : "____________";
        RichText
            .Break([("Take down by", false), (until, true)], style, s_signed)
            .Draw(canvas, left, top + style.Leading + 3);
    }

    private string Other()
    {
        var approved = ApprovedWindows(_rules);
        var longest = _rules.Rules.Max(rule => rule.Today);
        var shorter = _rules
            .Rules.Where(rule => !rule.IsOfOthers && rule.Today < longest)
            .GroupBy(rule => rule.Today)
            .OrderByDescending(same => same.Key)
            .Select(same =>
                $", {ScopeWords.List([.. same.Reverse().Select(rule => InSentence(rule.Name ?? "unknown"))])} {Short(same.Key)}"
            );
        return approved.IsEmpty
            ? "the same, by today's rule."
            : $"no {string.Join(" or ", approved.Select(Short))}. {Short(longest)}{string.Concat(shorter)}; past that ask the director.";
    }
}
