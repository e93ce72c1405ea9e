using PdfSharp.Drawing;
using StabilityStudy.Reporting.Fonts;

namespace StabilityStudy.Reporting.Pdf;

/// <summary>The evidence, and what to weigh.</summary>
internal sealed class DecisionEvidence
{
    private readonly DecisionRow _row;
    private readonly TextStyle _style;
    private readonly ImmutableArray<ImmutableArray<ImmutableArray<string>>> _evidence;
    private readonly ImmutableArray<ImmutableArray<string>> _remarks;
    private readonly ImmutableArray<RichText> _reservations;
    private readonly RichText? _now;

    public DecisionEvidence(DecisionRow row, bool isMany)
    {
        _row = row;
        _style = isMany ? TextStyle.Note : TextStyle.Reservation;
        _evidence =
        [
            .. row.Evidence.Select(line =>
                ImmutableArray.Create(
                    LineBreaking.Break(line.Waited, StyleOf(line), DecisionColumns.Evidence[0] - 3),
                    LineBreaking.Break(line.Change, StyleOf(line), DecisionColumns.Evidence[1] - 3),
                    LineBreaking.Break(line.Share, StyleOf(line), DecisionColumns.Evidence[2] - 3),
                    LineBreaking.Break(
                        line.Conclusion,
                        StyleOf(line),
                        DecisionColumns.Evidence[3] - 10
                    )
                )
            ),
        ];
        _remarks =
        [
            .. row.Remarks.Select(text =>
                LineBreaking.Break(text, TextStyle.Head, DecisionColumns.Middle)
            ),
        ];
        _reservations =
        [
            .. row.Reservations.Select(item =>
                RichText.Break(
                    item.Point,
                    item.Text,
                    _style,
                    DecisionColumns.Middle - DecisionColumns.Number
                )
            ),
        ];
        _now = row.DecideNow is { } now
            ? RichText.Break(DecisionTable.DecideNow, now, _style, DecisionColumns.Middle - 8)
            : null;
    }

    public double Height =>
        _evidence.Sum(HeightOf)
        + _remarks.Sum(lines => lines.Length * TextStyle.Head.Leading)
        + (_now is null ? 0 : _now.Height + 8)
        + (_reservations.IsEmpty ? 0 : 2)
        + _reservations.Sum(item => item.Height + 1);

    public void Draw(PageCanvas canvas, double left, double top)
    {
        var y = top;
        foreach (var (i, line) in _row.Evidence.Index())
        {
            DrawEvidence(canvas, line, _evidence[i], left, y);
            y += HeightOf(_evidence[i]);
        }

        foreach (var lines in _remarks)
        {
            var at = y;
            canvas.Tagged("P", () => canvas.Lines(lines, TextStyle.Head, left, at));
            y += lines.Length * TextStyle.Head.Leading;
        }

        if (_now is { } now)
        {
            var at = y + 2;
            canvas.Artifact(() =>
            {
                var frame = new XGraphicsPath();
                frame.AddRectangle(new XRect(left, at, DecisionColumns.Middle, now.Height + 4));
                canvas.Stroke(frame, TextStyle.Ink, 0.7);
            });
            canvas.Tagged("P", () => now.Draw(canvas, left + 4, at + 2));
            y += now.Height + 8;
        }

        y += 2;
        foreach (var (i, item) in _reservations.Index())
        {
            var (at, number) = (y, NumberText(i + 1));
            canvas.Tagged(
                "P",
                () =>
                {
                    canvas.Text(number + " ", _style, left, at);
                    item.Draw(canvas, left + DecisionColumns.Number, at);
                }
            );
            y += item.Height + 1;
        }
    }

    private static string NumberText(int number) =>
        number.ToString(CultureInfo.InvariantCulture) + ".";

    private static void DrawEvidence(
        PageCanvas canvas,
        EvidenceLine line,
        ImmutableArray<ImmutableArray<string>> cells,
        double left,
        double top
    )
    {
        var x = left;
        for (var i = 0; i < cells.Length; i++)
        {
            var (cell, place) = (cells[i], x);
            if (i == cells.Length - 1)
            {
                VerdictGlyph.Draw(line.Shape, x, top + 1.5, 7.5, canvas);
                place += 10.5;
            }

            canvas.Tagged("P", () => canvas.Lines(cell, StyleOf(line), place, top));
            x += DecisionColumns.Evidence[i];
        }
    }

    private static double HeightOf(ImmutableArray<ImmutableArray<string>> cells) =>
        cells.Max(cell => cell.Length) * TextStyle.Note.Leading;

    private static TextStyle StyleOf(EvidenceLine line) =>
        line.IsMuted ? TextStyle.Note with { Face = ReportFonts.Italic } : TextStyle.Note;
}
