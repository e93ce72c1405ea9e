using PdfSharp.Drawing;
using StabilityStudy.Core.Bench;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Bench;

/// <summary>What is written once for a specimen: when it was collected and how.</summary>
/// <param name="study">The study.</param>
/// <param name="width">Room of the cell in points.</param>
internal sealed class DrawnSpecimenCell(BenchStudy study, double width)
{
    private static readonly double s_codeHeight = Mm(7.2);
    private static readonly double s_boxHeight = Mm(6);
    private static readonly double s_tickHeight = Mm(4.3);
    private static readonly double s_gap = Mm(1.4);

    private static readonly ImmutableArray<string> s_usualDevices =
    [
        "straight needle",
        "winged set",
    ];

    /// <summary>Lines below a name.</summary>
    public const int NameLines = 2;

    /// <summary>Height that it needs.</summary>
    public double Height =>
        s_codeHeight + Lines().Sum(line => line.Max(item => item.Height)) + Mm(0.8);

    /// <summary>Room for the name of a group.</summary>
    public double NameWidth(string code) => width - SheetText.Code.Width(code) - Mm(2);

    /// <summary>Draws it.</summary>
    public void Draw(PageCanvas canvas, BenchSpecimen specimen, XRect room)
    {
        var (code, name) = (specimen.Code, NameWidth(specimen.Code));
        canvas.Text(code + " ", SheetText.Code, room.X, room.Y + Mm(1));
        var lines = LineBreaking.Break(
            BenchWords.Group(specimen.Group, name, NameLines),
            SheetText.Small,
            name
        );
        canvas.Lines(
            lines,
            SheetText.Small,
            room.X + SheetText.Code.Width(code) + Mm(2),
            room.Y + Mm(lines.Length > 1 ? 0.8 : 2.1)
        );
        var y = room.Y + s_codeHeight;
        foreach (var line in Lines())
        {
            var (x, height) = (room.X, line.Max(item => item.Height));
            foreach (var item in line)
            {
                item.Draw(canvas, x, y + (height / 2));
                x += item.Width + s_gap;
            }

            y += height;
        }
    }

    private ImmutableArray<ImmutableArray<Item>> Lines()
    {
        var lines = ImmutableArray.CreateBuilder<ImmutableArray<Item>>();
        var line = ImmutableArray.CreateBuilder<Item>();
        foreach (var item in Items())
        {
            if (line.Count > 0 && line.Sum(before => before.Width + s_gap) + item.Width > width)
            {
                lines.Add(line.DrainToImmutable());
            }

            line.Add(item);
        }

        lines.Add(line.DrainToImmutable());
        return lines.ToImmutable();
    }

    private IEnumerable<Item> Items()
    {
        if (study.IsThawing)
        {
            yield return Boxed("thawed", Boxes.ClockWidth, Boxes.Clock, "");
            yield return Boxed("bath", Boxes.NumberWidth, Boxes.Number, "°C");
            yield return Written("by");
            yield break;
        }

        yield return Boxed("collected", Boxes.ClockWidth, Boxes.Clock, "");
        yield return Written("by");
        foreach (
            var device in study.Protocol.Draw is { Devices: { IsEmpty: false } devices }
                ? devices
                : s_usualDevices
        )
        {
            yield return Ticked(device);
        }

        if (study.Protocol.Draw is not { DiscardTube: DiscardTubeRule.Never })
        {
            yield return Ticked("discard tube: citrate / plain");
        }

        if (!study.IsDrawn)
        {
            yield return Boxed("fill", Boxes.NumberWidth, Boxes.Number, "%");
            yield return Boxed("inversions", Boxes.NumberWidth, Boxes.Number, "");
            yield return Ticked("clot");
        }

        yield return Boxed("hematocrit", Boxes.NumberWidth, Boxes.Number, "%");
    }

    private static Item Boxed(
        string before,
        double box,
        Action<PageCanvas, double, double> draw,
        string after
    )
    {
        var style = SheetText.Small;
        var at = style.Width(before) + Mm(1);
        return new(
            at + box + (after.Length > 0 ? Mm(0.8) + style.Width(after) : 0),
            s_boxHeight,
            (canvas, x, middle) =>
            {
                canvas.Text(before + " ", style, x, middle - (style.Leading / 2));
                draw(canvas, x + at, middle);
                canvas.Text(
                    after + (after.Length > 0 ? " " : ""),
                    style,
                    x + at + box + Mm(0.8),
                    middle - (style.Leading / 2)
                );
            }
        );
    }

    private static Item Ticked(string words)
    {
        var style = SheetText.Small;
        return new(
            Boxes.TickWidth + Mm(0.8) + style.Width(words),
            s_tickHeight,
            (canvas, x, middle) =>
            {
                Boxes.Tick(canvas, x, middle);
                canvas.Text(
                    words + " ",
                    style,
                    x + Boxes.TickWidth + Mm(0.8),
                    middle - (style.Leading / 2)
                );
            }
        );
    }

    private static Item Written(string words)
    {
        var style = SheetText.Small;
        var at = style.Width(words) + Mm(0.8);
        return new(
            at + Mm(8),
            s_boxHeight,
            (canvas, x, middle) =>
            {
                canvas.Text(words + " ", style, x, middle - (style.Leading / 2));
                Boxes.Line(canvas, x + at, middle + Mm(1.6), Mm(8));
            }
        );
    }

    private sealed record Item(
        double Width,
        double Height,
        Action<PageCanvas, double, double> Draw
    );
}
