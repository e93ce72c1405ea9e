using PdfSharp.Drawing;
using StabilityStudy.Core.Bench;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Bench;

/// <summary>One label: code, planned time and symbol always; on small ones fewer lines to write on.</summary>
/// <param name="Code">Code of the tube.</param>
/// <param name="Time">Planned time.</param>
/// <param name="IsDelayed">Whether it waits.</param>
/// <param name="Second">Its place at the draw, or for which tube it is; empty for a portion.</param>
/// <param name="Started">What is written below: collected, or thawed.</param>
/// <param name="Study">Study code.</param>
internal sealed record BenchLabel(
    string Code,
    string Time,
    bool IsDelayed,
    string Second,
    string Started,
    string Study
)
{
    private const double Module = 0.6;
    private const double Quiet = 2;
    private const double LeastForSecond = 40;
    private const double LeastForStarted = 30;
    private static readonly TextStyle s_code = new(ReportFonts.Semibold, 10.5, 12.4, TextStyle.Ink);
    private static readonly TextStyle s_time = new(ReportFonts.Semibold, 8, 10, TextStyle.Ink);
    private static readonly TextStyle s_line = new(ReportFonts.Regular, 7.5, 9.2, TextStyle.Ink);
    private static readonly TextStyle s_study = new(ReportFonts.Regular, 6.5, 8, TextStyle.Ink);

    /// <summary>The labels of tubes, those of the spare ones last.</summary>
    public static ImmutableArray<BenchLabel> Of(
        BenchStudy study,
        ImmutableArray<BenchSpecimen> specimens
    )
    {
        var started = study.IsThawing ? "thawed" : "collected";
        var code = study.Protocol.Code;
        return
        [
            .. specimens
                .SelectMany(specimen => specimen.Tubes.GroupBy(tube => tube.Code))
                .Select(tube =>
                    tube.First() is var first && tube.Count() > 1
                        ? new BenchLabel(tube.Key, "all times", false, "", started, code)
                        : new BenchLabel(
                            tube.Key,
                            $"{first.Occasion}",
                            !first.Occasion.IsBaseline,
                            first.DrawPosition is { } position
                                ? "drawn " + BenchWords.Ordinal(position)
                                : "",
                            started,
                            code
                        )
                ),
            .. specimens
                .Select(specimen => specimen.Spare)
                .OfType<BenchTube>()
                .Select(spare => new BenchLabel(
                    spare.Code,
                    "spare",
                    false,
                    study.IsPortions ? "for portion ____" : "for tube ____",
                    started,
                    code
                )),
        ];
    }

    /// <summary>What the symbol says: study and tube, nothing else.</summary>
    public string Symbol => $"{Study}/{Code}";

    /// <summary>Width and height in millimeters that it needs where the label given is too small; null where it fits.</summary>
    public (double Width, double Height)? Needs(double width, double height)
    {
        var side = SymbolSide(DataMatrixSymbol.Of(Symbol));
        var text = Math.Max(s_code.Width(Code), TimeWidth);
        var leastWidth = PageFrame.ToMillimeters(text) + side + 1.2;
        var leastHeight = Math.Max(
            side,
            leastWidth > width ? 0 : PageFrame.ToMillimeters(TextHeight(width, side)) + 2
        );
        return leastWidth > width || leastHeight > height ? (leastWidth, leastHeight) : null;
    }

    /// <summary>Draws it; corner and outline are never printed.</summary>
    public void Draw(PageCanvas canvas, double left, double top, double width)
    {
        var symbol = DataMatrixSymbol.Of(Symbol);
        var side = SymbolSide(symbol);
        var area = new XRect(
            left + Mm(Quiet),
            top + Mm(Quiet),
            Mm(symbol.Size * Module),
            Mm(symbol.Size * Module)
        );
        canvas.Enter([new Tag("Div", isGrouping: true)]);
        canvas.Illustration($"Data Matrix: {Symbol}", area, () => symbol.Draw(canvas, area));
        var x = left + Mm(side);
        var right = left + Mm(width - 1.2);
        var y = top + Mm(1.4);
        canvas.Tagged("P", () => canvas.Text(Code + " ", s_code, x, y));
        var beside = IsBeside(width, side);
        canvas.Tagged(
            "P",
            () =>
                Boxes.Time(
                    canvas,
                    Time,
                    IsDelayed,
                    beside ? right - TimeWidth : x,
                    y + (beside ? s_code.Leading / 2 : s_code.Leading + (s_time.Leading / 2) + 1),
                    TimeWidth,
                    s_time
                )
        );
        y += s_code.Leading + (beside ? 0 : s_time.Leading + 2.5);
        foreach (var line in Lines(width))
        {
            canvas.Tagged("P", () => canvas.Text(line + " ", s_line, x, y));
            y += s_line.Leading;
        }

        canvas.Tagged("P", () => canvas.Lines(StudyLines(width, side), s_study, x, y + 0.5));
        canvas.Enter([]);
    }

    private double TimeWidth => s_time.Width(Time) + Mm(2);

    private static double SymbolSide(DataMatrixSymbol symbol) =>
        (symbol.Size * Module) + (2 * Quiet);

    private bool IsBeside(double width, double side) =>
        s_code.Width(Code) + Mm(0.4) + TimeWidth <= Mm(width - side - 1.2);

    private IEnumerable<string> Lines(double width)
    {
        if (width >= LeastForSecond && Second.Length > 0)
        {
            yield return Second;
        }

        if (width >= LeastForStarted)
        {
            yield return $"{Started} ___ : ___";
        }
    }

    private ImmutableArray<string> StudyLines(double width, double side) =>
        LineBreaking.Break($"{Study} · STUDY ONLY", s_study, Mm(width - side - 0.8));

    private double TextHeight(double width, double side) =>
        s_code.Leading
        + (IsBeside(width, side) ? 0 : s_time.Leading + 2.5)
        + (Lines(width).Count() * s_line.Leading)
        + 0.5
        + (StudyLines(width, side).Length * s_study.Leading);
}
